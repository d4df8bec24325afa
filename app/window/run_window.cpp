#include "app/window/run_window.h"

#include <cstdio>
#include <cstdlib>

#include <QLocale>

#include "app/files/display_gone.h"
#include "app/files/end_signals.h"
#include "app/kit/guarded_application.h"
#include "app/kit/out_of_memory.h"
#include "app/session/document_session.h"
#include "app/window/main_window.h"
#include "render/background/workers.h"
#include "render/wording/translations.h"
#include "render/wording/us_spelling.h"

namespace roundwright::app {

namespace {

/// What the maker left is in its files by now, so work that hears no request to stop does not hold the
/// program open; and nothing it uses may go before it does.
void leave_unless_all_has_ended(int exit_code) {
    if (render::Workers::shared().finish(render::patience_at_the_end)) return;
    std::fflush(nullptr);
    std::_Exit(exit_code);
}

int run_window_of(GuardedApplication& application, DisplayGone& display_gone) {
    DocumentSession session;
    MainWindow window(session);
    EndSignals end_signals;
    QObject::connect(&end_signals, &EndSignals::asked_to_end, &window, [&window](int number) {
        window.autosave().keep_now();
        EndSignals::end_by(number);
    });
    display_gone.keep_by([&window] { return keep_and_say(window.autosave()); });
    window.show();
    const auto arguments = QApplication::arguments();
    application.guard([&] { window.begin(arguments.size() > 1 ? arguments.at(1) : QString()); });
    const int exit_code = QApplication::exec();
    display_gone.keep_by(nullptr);
    return exit_code;
}

}  // namespace

int run_window(int argc, char** argv) {
    constexpr int without_memory = 1;
    end_in_words_without_memory(without_memory);
    qputenv("QT3D_RENDERER", "opengl");  // without OpenGL the other renderer ends the program
    DisplayGone display_gone;
    GuardedApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("roundwright"));
    QApplication::setOrganizationName(QStringLiteral("roundwright"));
    QApplication::setApplicationDisplayName(QStringLiteral("Roundwright"));
    QApplication::setApplicationVersion(QStringLiteral(ROUNDWRIGHT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("roundwright"));
    UsSpelling us_spelling;
    if (wants_us_spelling(QLocale::system().uiLanguages())) QApplication::installTranslator(&us_spelling);
    speak_language_of_system();

    const int exit_code = run_window_of(application, display_gone);
    leave_unless_all_has_ended(exit_code);
    return exit_code;
}

}  // namespace roundwright::app
