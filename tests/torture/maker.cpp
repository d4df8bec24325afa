#include "tests/torture/maker.h"

#include <unistd.h>

#include <QApplication>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QSocketNotifier>
#include <QStatusBar>
#include <QTest>
#include <QThread>
#include <QTimer>

#include "app/kit/notice_bar.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "core/document/json_document.h"
#include "tests/torture/child_words.h"
#include "tests/torture/journal.h"

namespace roundwright::torture {
namespace {

constexpr int watch_ms = 15;
constexpr int late_ms = 200;
constexpr std::int64_t shortest_wait_told_ns = 20'000'000;

QString toys_folder() { return qEnvironmentVariable(toys_variable) + u'/'; }

std::string utf8(const QString& text) { return text.toStdString(); }

/// What is typed and not entered: in the line of next rounds, and in a cell.
std::string typed_in(app::MainWindow& window) {
    QString typed = window.fast_entry().line()->text();
    if (const auto cell = window.rounds_view().typed())
        typed += QStringLiteral(" [round %1: %2]").arg(cell->round).arg(cell->text);
    return utf8(typed);
}

QList<QPushButton*> buttons_of_notices(const app::MainWindow& window) {
    QList<QPushButton*> buttons;
    for (const auto* bar : window.findChildren<app::NoticeBar*>()) {
        for (auto* button : bar->findChildren<QPushButton*>())
            if (button->isVisible() && button->isEnabled()) buttons << button;
    }
    return buttons;
}

/// Whether the loop of events that is running is the program's own, and not that of a dialog.
bool in_the_programs_loop() {
    return QThread::currentThread()->loopLevel() == 1 && QApplication::activeModalWidget() == nullptr;
}

}  // namespace

Maker::Maker(app::MainWindow& window)
    : QObject(&window), window_(window), random_(qEnvironmentVariable(seed_variable).toUInt()) {
    const auto pauses = qEnvironmentVariable(pauses_variable).split(u'-');
    shortest_pause_ms_ = pauses.value(0).toInt();
    longest_pause_ms_ = pauses.value(1).toInt();
    typing_ = !qEnvironmentVariableIsSet(rests_variable);
    for (const QString& rule : qEnvironmentVariable(answers_variable).split(u';', Qt::SkipEmptyParts))
        answers_.emplace_back(rule.section(u'>', 0, 0), rule.section(u'>', 1));
    hands_.pressing = [this] { tell("key"); };
    follow();
    auto* notifier = new QSocketNotifier(commands_file, QSocketNotifier::Read, this);
    connect(notifier, &QSocketNotifier::activated, this, [this] { obey(); });
    watch();
}

// --- what is told

void Maker::tell(const std::string& kind, std::vector<std::string> fields) {
    const std::string line = written({now_ns(), kind, std::move(fields)});
    [[maybe_unused]] const auto count = ::write(journal_file, line.data(), line.size());
}

void Maker::tell_state() {
    const auto& session = window_.session();
    if (toy_hash_.empty() || !(session.said_toy() == said_)) {
        said_ = session.said_toy();
        toy_hash_ = hash_of(write_document(said_));
    }
    const Moment now{0, {toy_hash_, typed_in(window_)}, utf8(session.path()), session.modified()};
    const bool same = now.work == told_.work && now.path == told_.path && now.modified == told_.modified;
    if (same && !(given_up_ && window_.isVisible())) return;  // what was given up is still there
    given_up_ = false;
    told_ = now;
    tell("state", {now.work.toy, now.work.typed, now.path, now.modified ? "modified" : ""});
}

void Maker::tell_file() {
    tell_state();
    if (told_.modified || told_.path.empty()) return;
    tell(saving_ ? "saved" : "stands", {told_.path, told_.work.toy});
}

void Maker::follow() {
    const auto& session = window_.session();
    connect(&session, &app::DocumentSession::toy_changed, this, [this] { tell_state(); });
    connect(&session, &app::DocumentSession::modified_changed, this, [this] { tell_state(); });
    connect(&session, &app::DocumentSession::file_changed, this, [this] { tell_file(); });
    connect(window_.fast_entry().line(), &QLineEdit::textChanged, this, [this] { tell_state(); });
    connect(&window_.rounds_view(), &app::RoundsView::typed_changed, this, [this] { tell_state(); });
    connect(window_.statusBar(), &QStatusBar::messageChanged, this, [this](const QString& words) {
        if (!words.isEmpty()) tell("told", {utf8(words)});
    });
}

void Maker::tell_notices() {
    QString words;
    for (const auto* bar : window_.findChildren<app::NoticeBar*>()) {
        for (const QString& cause : bar->causes()) words += bar->words(cause) + u' ';
    }
    if (words == told_notice_) return;
    told_notice_ = words;
    tell("told", {utf8(words)});
}

// --- what is watched

/// Goes on inside a dialog's loop too: each look is an event of its own.
void Maker::watch() {
    const std::int64_t now = now_ns();
    const std::int64_t gap_ms = watched_ns_ == 0 ? 0 : (now - watched_ns_) / 1'000'000;
    watched_ns_ = now;
    if (gap_ms > late_ms) tell("late", {std::to_string(gap_ms)});
    if (const auto waited = waited_ns(0); waited > told_wait_ns_ + shortest_wait_told_ns) {
        told_wait_ns_ = waited;
        tell("waited", {std::to_string(waited)});
    }
    QTimer::singleShot(watch_ms, this, [this] { watch(); });
    auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    if (dialog != nullptr && dialog->isVisible() && dialog != answering_) {
        answering_ = dialog;
        return answer(*dialog);
    }
    if (!settled_) return settle();
    static int round = 0;
    if (++round % 8 == 0) tell_notices();
}

void Maker::settle() {
    quiet_ = in_the_programs_loop() ? quiet_ + 1 : 0;
    if (quiet_ < 2) return;
    settled_ = true;
    tell_file();
    toy_hash_.clear();
    told_ = {};
    tell_state();
    tell("settled");
    QTimer::singleShot(0, this, [this] { step(); });
}

void Maker::answer(QDialog& dialog) {
    const Question question = question_of(dialog);
    const QString chosen = choice(question);
    const auto* files = qobject_cast<QFileDialog*>(&dialog);
    tell("asked", {utf8(question.kind), utf8(question.words), utf8(question.answers.join(u'|')),
                   utf8(files ? wanted_path_ : chosen)});
    if (files) return answer_file_dialog(dialog);
    if (chosen.contains(QStringLiteral("don't"), Qt::CaseInsensitive)) {
        tell("given_up");
        given_up_ = true;
    } else if (chosen.contains(QStringLiteral("save"), Qt::CaseInsensitive) ||
               chosen.contains(QStringLiteral("mine"), Qt::CaseInsensitive)) {
        saving_ = true;
        tell("saving");
    }
    if (chosen.isEmpty() || !give_answer(dialog, chosen)) dialog.reject();
}

/// What the driver wants is answered as it said; the rest as a maker would, at random where either is sound.
QString Maker::choice(const Question& question) {
    const auto offers = [&](const char* words) {
        return question.answers.filter(QString::fromLatin1(words), Qt::CaseInsensitive).size() > 0;
    };
    for (const auto& [find, chosen] : answers_) {
        if (question.answers.filter(find, Qt::CaseInsensitive).size() > 0) return chosen;
    }
    if (offers("bring")) return QStringLiteral("bring");
    if (offers("don't")) {
        if (thinks_better_of_it_) return QStringLiteral("cancel");
        const QString answers[] = {QStringLiteral("save"), QStringLiteral("don't"), QStringLiteral("cancel")};
        return answers[pick(0, 2)];
    }
    if (offers("yes")) return QStringLiteral("yes");
    if (offers("ok")) return QStringLiteral("ok");
    QStringList sound = question.answers;
    sound.removeIf(
        [](const QString& words) { return words.contains(QStringLiteral("delete"), Qt::CaseInsensitive); });
    return sound.isEmpty() ? QString() : sound[pick(0, static_cast<int>(sound.size()) - 1)];
}

void Maker::answer_file_dialog(QDialog& dialog) {
    auto* name = dialog.findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    const bool saves = static_cast<QFileDialog&>(dialog).acceptMode() == QFileDialog::AcceptSave;
    if (saves && wanted_path_.isEmpty()) wanted_path_ = toys_folder() + QStringLiteral("pup-4.roundwright");
    if (name == nullptr || wanted_path_.isEmpty()) return dialog.reject();
    if (saves) {
        saving_ = true;
        tell("saving");
    }
    // The dialog fills its line once more when it has read the folder.
    for (int more = 0; more < 20 && name->text() != wanted_path_; ++more) {
        name->selectAll();
        name->insert(wanted_path_);  // as if it had been typed
        QTest::qWait(20);
    }
    wanted_path_.clear();
    QTest::keyClick(name, Qt::Key_Return);
    if (dialog.isVisible()) dialog.reject();
}

void Maker::obey() {
    char bytes[4096];
    const auto count = ::read(commands_file, bytes, sizeof bytes);
    if (count <= 0) return QApplication::exit(3);  // the driver is gone
    unread_.append(bytes, static_cast<qsizetype>(count));
    for (qsizetype end = unread_.indexOf('\n'); end >= 0; end = unread_.indexOf('\n')) {
        const QString command = QString::fromUtf8(unread_.left(end));
        unread_.remove(0, end + 1);
        if (command.startsWith(QStringLiteral("answer "))) {
            answers_.insert(answers_.begin(), {command.section(u' ', 1, 1), command.section(u' ', 2)});
        } else {
            commands_.push_back(command);
        }
    }
}

void Maker::obey(const QString& command) {
    tell("doing", {utf8(command)});
    if (command == QStringLiteral("type")) typing_ = true;
    if (command == QStringLiteral("rest")) typing_ = false;
    if (command == QStringLiteral("save")) save();
    if (command == QStringLiteral("undo")) hands_.press(Qt::Key_Z, Qt::ControlModifier);
    if (command == QStringLiteral("close")) hands_.press(Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
    if (command.startsWith(QStringLiteral("save as "))) save_as(command.mid(8));
    if (command.startsWith(QStringLiteral("open "))) open(command.mid(5));
    tell("done", {utf8(command)});
}

// --- what is done

/// One key, or one command; then the hand rests.
void Maker::step() {
    if (in_the_programs_loop()) {
        // Where there is no window manager the window may never be told that it is the active one.
        waits_ = window_.isActiveWindow() || waits_ > 3 ? 0 : waits_ + 1;
        if (!window_.isActiveWindow()) window_.activateWindow();
        if (waits_ > 0) {
            // The keyboard comes back a moment after a dialog has gone.
        } else if (!commands_.empty()) {
            const QString command = commands_.front();
            commands_.pop_front();
            obey(command);
        } else if (typing_) {
            if (plan_.empty()) plan();
            const auto act = std::move(plan_.front());
            plan_.pop_front();
            act();
        }
        tell_state();
    }
    QTimer::singleShot(pick(shortest_pause_ms_, longest_pause_ms_), this, [this] { step(); });
}

void Maker::type(const QString& text) {
    for (const QChar letter : text) later([this, letter] { hands_.type(letter); });
}

void Maker::press(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    later([this, key, modifiers] { hands_.press(key, modifiers); });
}

void Maker::plan() {
    saving_ = false;
    thinks_better_of_it_ = false;
    if (auto* popup = QApplication::activePopupWidget()) popup->close();
    const int rounds =
        window_.session().piece() ? static_cast<int>(window_.session().piece()->rounds.size()) : 0;
    if (rounds > 30) {
        press(Qt::Key_7, Qt::AltModifier);
        press(Qt::Key_A, Qt::ControlModifier);
        return press(Qt::Key_Delete);
    }
    const int which = pick(1, 100);
    if (which <= 34) return plan_line();
    if (which <= 60) return plan_cell();
    if (which <= 66) return plan_words();
    if (which <= 78) return plan_undo();
    if (which <= 86) return plan_places();
    if (which <= 90 && !buttons_of_notices(window_).isEmpty()) return later([this] { answer_notice(); });
    plan_files();
}

void Maker::plan_line() {
    press(Qt::Key_J, Qt::ControlModifier);
    press(Qt::Key_A, Qt::ControlModifier);
    const QString texts[] = {QStringLiteral("+6"),
                             QStringLiteral("%1x2, %2").arg(pick(4, 40)).arg(pick(4, 40)),
                             QStringLiteral("=x3"), QStringLiteral("%1").arg(pick(4, 60))};
    type(texts[pick(0, 3)]);
    if (one_in(5)) return;  // and leaves it standing there
    press(Qt::Key_Return);
}

void Maker::plan_cell() {
    later([this] {
        auto& table = window_.rounds_view();
        const int row = pick(0, std::max(0, table.model()->rowCount() - 1));
        const auto index = table.model()->index(row, static_cast<int>(app::RoundColumn::stitches));
        table.scrollTo(index);
        Hands::click(table.viewport(), table.visualRect(index).center());
    });
    type(QString::number(pick(4, 60)));
    const Qt::Key ends[] = {Qt::Key_Return, Qt::Key_Down, Qt::Key_Up, Qt::Key_Tab};
    press(ends[pick(0, 3)]);
}

void Maker::plan_words() {
    later([this] {
        auto& table = window_.rounds_view();
        const auto index = table.model()->index(pick(0, std::max(0, table.model()->rowCount() - 1)),
                                                static_cast<int>(app::RoundColumn::stitches));
        Hands::click(table.viewport(), table.visualRect(index).center());
    });
    press(Qt::Key_F2);
    press(Qt::Key_A, Qt::ControlModifier);
    type(QStringLiteral("sc 2, inc, sc %1").arg(pick(1, 9)));
    later([this] {
        if (auto* popup = QApplication::activePopupWidget()) popup->close();
        hands_.press(Qt::Key_Return);
    });
}

void Maker::plan_undo() {
    press(Qt::Key_7, Qt::AltModifier);
    for (int more = pick(1, 4); more > 0; --more) press(Qt::Key_Z, Qt::ControlModifier);
    for (int more = pick(0, 2); more > 0; --more) press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
}

void Maker::plan_places() {
    if (one_in(2)) return press(one_in(2) ? Qt::Key_PageDown : Qt::Key_PageUp, Qt::ControlModifier);
    if (one_in(3)) return press(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    if (one_in(2)) {
        return later([this] {
            thinks_better_of_it_ = true;
            if (window_.session().modified()) hands_.press(Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
        });
    }
    later([this] { QTest::qWait(pick(200, 900)); });
}

void Maker::plan_files() {
    const QString folder = toys_folder();
    const int which = pick(1, 14);
    if (which <= 8) return later([this] { save(); });
    if (which <= 10)
        return later(
            [this, folder] { save_as(folder + QStringLiteral("pup-%1.roundwright").arg(pick(1, 3))); });
    if (which == 11) return press(Qt::Key_N, Qt::ControlModifier);
    const QString files[] = {QStringLiteral("pup.roundwright"), QStringLiteral("fin.roundwright"),
                             QStringLiteral("broken.roundwright")};
    later([this, path = folder + files[pick(0, 2)]] { open(path); });
}

/// Whatever it leads to: another save, their toy, another name.
void Maker::answer_notice() {
    const auto buttons = buttons_of_notices(window_);
    if (buttons.isEmpty()) return;
    auto* button = buttons[pick(0, static_cast<int>(buttons.size()) - 1)];
    const QString words = button->text().remove(u'&');
    tell("asked", {"NoticeBar", utf8(told_notice_), "", utf8(words)});
    saving_ = true;
    tell("saving");
    Hands::click(button, button->rect().center());
}

void Maker::save() {
    saving_ = true;
    tell("saving");
    hands_.press(Qt::Key_S, Qt::ControlModifier);
}

void Maker::save_as(const QString& path) {
    wanted_path_ = path;
    hands_.press(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
}

void Maker::open(const QString& path) {
    wanted_path_ = path;
    hands_.press(Qt::Key_O, Qt::ControlModifier);
}

// --- the process

namespace {

void look_for_the_window() {
    for (QWidget* widget : QApplication::topLevelWidgets()) {
        if (auto* window = qobject_cast<app::MainWindow*>(widget); window && window->isVisible()) {
            new Maker(*window);
            return;
        }
    }
    QTimer::singleShot(5, qApp, look_for_the_window);
}

}  // namespace

static void put_a_maker_at_the_window() {
    if (qEnvironmentVariableIsSet(seed_variable)) QTimer::singleShot(0, qApp, look_for_the_window);
}

Q_COREAPP_STARTUP_FUNCTION(put_a_maker_at_the_window)

}  // namespace roundwright::torture
