#include "app/files/display_gone.h"

#include <algorithm>
#include <cstdlib>
#include <unistd.h>
#include <utility>

#include <QCoreApplication>
#include <QThread>

#include "app/files/autosave.h"
#include "app/files/keeping_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

struct DisplayGoneText {
    Q_DECLARE_TR_FUNCTIONS(DisplayGone)
};

DisplayGone* in_place = nullptr;
QtMessageHandler otherwise = nullptr;

// Qt's words, as of 6.4: QXcbConnection, QWaylandDisplay; QGuiApplication, which aborts after them.
constexpr const char* gone_words[] = {"The X11 connection broke", "The Wayland connection "};
constexpr auto none_words = "This application failed to start because no Qt platform plugin";

bool is_gone(const QString& said) {
    return std::ranges::any_of(gone_words,
                               [&](const char* words) { return said.startsWith(QLatin1String(words)); });
}

void take_message(QtMsgType type, const QMessageLogContext& context, const QString& said) {
    if (in_place != nullptr && is_gone(said)) in_place->end();
    if (in_place != nullptr && said.startsWith(QLatin1String(none_words))) DisplayGone::end_without();
    if (otherwise != nullptr) otherwise(type, context, said);
}

/// What a library does without a word. By now exit() has destroyed what was made since the program began, so
/// words come first where there are any.
void end_at_exit() {
    if (in_place != nullptr) in_place->end();
}

bool is_windows_thread() {
    const auto* application = QCoreApplication::instance();
    return application != nullptr && QThread::currentThread() == application->thread();
}

void say(const QString& words) {
    const QByteArray line = "roundwright: " + plain_message(words).toLocal8Bit() + '\n';
    static_cast<void>(!::write(STDERR_FILENO, line.constData(), static_cast<std::size_t>(line.size())));
}

}  // namespace

DisplayGone::DisplayGone() {
    in_place = this;
    otherwise = qInstallMessageHandler(take_message);
    [[maybe_unused]] static const int told = std::atexit(end_at_exit);
}

DisplayGone::~DisplayGone() {
    in_place = nullptr;
    qInstallMessageHandler(std::exchange(otherwise, nullptr));
}

void DisplayGone::keep_by(std::function<QString()> keep) { keep_ = std::move(keep); }

/// In another thread the toy may be changing at this very moment: there, what was kept within the last second
/// is what is left.
void DisplayGone::end() {
    in_place = nullptr;  // keeping may meet the same end once more
    QString words = DisplayGoneText::tr("The display is gone.");
    if (keep_ && is_windows_thread()) words += u' ' + keep_();
    say(words);
    ::_exit(exit_code);
}

void DisplayGone::end_without() {
    say(
        DisplayGoneText::tr("There is no display to open the window on. The commands work without one, see "
                            "roundwright --help."));
    ::_exit(exit_code);
}

QString keep_and_say(Autosave& autosave) {
    autosave.keep_now();
    if (autosave.all_kept())
        return DisplayGoneText::tr(
            "What was not saved is kept, and is offered when Roundwright starts again.");
    const QString why = autosave.fault() ? keeping_fault_words(*autosave.fault()) : QString();
    return DisplayGoneText::tr("What was not saved could not be kept. %1").arg(why).trimmed();
}

}  // namespace roundwright::app
