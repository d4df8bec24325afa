#include "app/toy/toy_details.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy told_toy() {
    Toy toy = toy_of({6, 12, 18, 12, 6});
    toy.designer = "Lantern Quay (invented)";
    toy.notes = "Notes.\n\nMore.";
    toy.private_notes = "Try a smaller nose.";
    toy.text = {Level::intermediate, "Hello.", "Needle\nPins", "Sew.\nTurn.", "Steam.", "Share it."};
    return toy;
}

/// The field whose label holds some words.
template <class Field>
Field* field(const QDialog& dialog, const QString& words) {
    for (auto* label : dialog.findChildren<QLabel*>()) {
        if (label->text().remove(u'&') == words) return qobject_cast<Field*>(label->buddy());
    }
    return nullptr;
}

TEST(ToyDetails, WhatIsNotChangedStays) {
    const Toy toy = told_toy();
    EXPECT_EQ(ToyDetailsDialog(toy).applied_to(toy), toy);
    const Toy untold = toy_of({6, 12});
    EXPECT_EQ(ToyDetailsDialog(untold).applied_to(untold), untold);
}

TEST(ToyDetails, EveryWordCanBeSaid) {
    const Toy wanted = told_toy();
    const Toy untold = toy_of({6, 12, 18, 12, 6});
    ToyDetailsDialog dialog(untold);
    field<QLineEdit>(dialog, QStringLiteral("Designer"))->setText(QStringLiteral("Lantern Quay (invented)"));
    field<QComboBox>(dialog, QStringLiteral("Level"))->setCurrentText(QStringLiteral("Intermediate"));
    for (const auto& [name, text] : {std::pair{"Printed notes", wanted.notes},
                                     {"Notes to yourself", wanted.private_notes},
                                     {"Introduction", wanted.text.introduction},
                                     {"Notions", wanted.text.notions},
                                     {"Assembly", wanted.text.assembly},
                                     {"Finishing", wanted.text.finishing},
                                     {"Copyright", wanted.text.copyright}}) {
        auto* box = field<QPlainTextEdit>(dialog, QLatin1String(name));
        ASSERT_NE(box, nullptr) << name;
        box->setPlainText(QString::fromStdString(text));
    }
    EXPECT_EQ(dialog.applied_to(untold), wanted);
}

TEST(ToyDetails, IsOneStepThatCanBeTakenBack) {
    DocumentSession session;
    const Toy before = toy_of({6, 12, 18, 12, 6});
    session.start(before);
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<ToyDetailsDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        field<QPlainTextEdit>(*dialog, QStringLiteral("Assembly"))->setPlainText(QStringLiteral("Sew."));
        field<QLineEdit>(*dialog, QStringLiteral("Title"))->setText(QStringLiteral("Pup"));
        dialog->accept();
    });
    ask_toy_details(session, nullptr);
    EXPECT_EQ(session.toy().text.assembly, "Sew.");
    EXPECT_EQ(session.toy().title, "Pup");
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), before);
}

TEST(ToyDetails, CancelChangesNothing) {
    DocumentSession session;
    session.start(told_toy());
    QTimer::singleShot(0, [] {
        auto* dialog = qobject_cast<ToyDetailsDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        field<QLineEdit>(*dialog, QStringLiteral("Title"))->setText(QStringLiteral("Pup"));
        dialog->reject();
    });
    ask_toy_details(session, nullptr);
    EXPECT_EQ(session.toy(), told_toy());
    EXPECT_FALSE(session.undo_stack().canUndo());
}

}  // namespace
}  // namespace roundwright::app
