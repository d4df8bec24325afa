#include "app/read_pattern/pattern_text_actions.h"

#include <functional>

#include <QClipboard>
#include <QFileDialog>
#include <QGuiApplication>
#include <QMenu>
#include <QMessageBox>

#include "app/kit/action_maker.h"
#include "app/read_pattern/pattern_review.h"
#include "app/storage/disk_words.h"
#include "app/storage/whole_file.h"
#include "core/base/limits.h"
#include "core/language/pattern/write_pattern.h"

namespace roundwright::app {

namespace {

/// What is larger is another file picked by mistake.
constexpr auto most_text_bytes = static_cast<qint64>(max_text_bytes);

}  // namespace

PatternTextActions::PatternTextActions(DocumentSession& session, QWidget* window)
    : QObject(window), session_(session), window_(window) {}

void PatternTextActions::fill(QMenu* menu) {
    const std::pair<const char*, std::function<void()>> actions[] = {
        {"pattern.open-text", [this] { open_text(); }},
        {"pattern.paste-text", [this] { paste_text(); }},
        {"pattern.copy-piece", [this] { copy_piece(); }},
        {"pattern.copy-toy", [this] { copy_toy(); }}};
    for (const auto& [id, act] : actions) {
        auto* action = make_action(window_, id);
        connect(action, &QAction::triggered, this, act);
        menu->addAction(action);
    }
}

void PatternTextActions::review(const QString& text) {
    PatternReview dialog(session_, text, window_);
    dialog.exec();
}

void PatternTextActions::open_text() {
    const QString path = QFileDialog::getOpenFileName(window_, tr("Open pattern text"), {},
                                                      tr("Text (*.txt *.md);;All files (*)"));
    if (path.isEmpty()) return;
    const ReadFile file = read_whole(path, most_text_bytes);
    const auto refuse = [&](const QString& why) {
        QMessageBox::warning(window_, tr("Open pattern text"), tr("%1 could not be read: %2").arg(path, why));
    };
    if (file.fault) return refuse(disk_fault_words(*file.fault));
    if (file.bytes.size() > most_text_bytes)
        return refuse(tr("it is larger than %1 MiB, too large for a pattern.").arg(most_text_bytes >> 20));
    review(QString::fromUtf8(file.bytes));
}

void PatternTextActions::paste_text() { review(QGuiApplication::clipboard()->text()); }

void PatternTextActions::copy_piece() const {
    if (session_.piece() == nullptr) return;
    QGuiApplication::clipboard()->setText(
        QString::fromStdString(write_piece(*session_.piece(), session_.preferences().terms())));
}

void PatternTextActions::copy_toy() const {
    QGuiApplication::clipboard()->setText(
        QString::fromStdString(write_toy(session_.toy(), session_.preferences().terms())));
}

}  // namespace roundwright::app
