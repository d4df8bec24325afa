#pragma once

#include <functional>
#include <gtest/gtest.h>
#include <initializer_list>

#include <QAbstractButton>
#include <QApplication>
#include <QDialog>
#include <QElapsedTimer>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "app/session/document_session.h"
#include "core/document/json_document.h"
#include "tests/support/sanitizers.h"

namespace roundwright::app {

/// Lets events through until something holds; false after ten seconds, or a hundred under a sanitizer.
inline bool wait_until(const std::function<bool()>& holds) {
    QElapsedTimer timer;
    timer.start();
    while (!holds()) {
        if (timer.elapsed() > test::slowdown * 10'000) return false;
        QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
        QTest::qSleep(1);
    }
    return true;
}

inline bool wait_for_shape(const DocumentSession& session) {
    return wait_until([&] { return session.is_up_to_date(session.current_piece()) && !session.solving(); });
}

inline Piece piece_of(std::initializer_list<int> counts, const char* name = "Head") {
    Piece piece;
    piece.name = name;
    for (const int stitches : counts) {
        Round round;
        round.working = WorkedEvenly{stitches};
        piece.rounds.push_back(round);
    }
    return piece;
}

inline Toy toy_of(std::initializer_list<int> counts) {
    Toy toy;
    toy.title = "Seal pup";
    toy.gauge = GivenGauge{{5, 5, 0.25, 0.25}};
    toy.yarns.push_back({});
    toy.yarns.back().name = "Fog grey";
    toy.yarns.back().colour = {200, 206, 210};
    toy.yarns.push_back({});
    toy.yarns.back().name = "Tide blue";
    toy.yarns.back().colour = {60, 90, 140};
    toy.pieces.push_back(piece_of(counts));
    return toy;
}

inline std::vector<int> counts_of(const Piece& piece) {
    std::vector<int> counts;
    for (const auto& round : piece.rounds) {
        const auto* evenly = std::get_if<WorkedEvenly>(&round.working);
        counts.push_back(evenly ? evenly->stitches : -1);
    }
    return counts;
}

/// Presses the button whose words hold `words` in the next dialog that opens, or rejects the dialog if it has
/// none such. `seen` gets the dialog's text.
inline void answer_next_dialog(const QString& words, QString* seen = nullptr) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, words, seen] {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (!dialog) return;
        timer->stop();
        timer->deleteLater();
        if (seen) {
            *seen = dialog->property("text").toString() + QLatin1Char('\n') +
                    dialog->property("informativeText").toString();
        }
        for (auto* button : dialog->findChildren<QAbstractButton*>()) {
            if (button->text().remove(u'&').contains(words)) return button->click();
        }
        ADD_FAILURE() << "no button “" << words.toStdString() << "”";
        dialog->reject();
    });
    timer->start(5);
}

}  // namespace roundwright::app
