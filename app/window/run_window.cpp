#include "app/window/run_window.h"

#include <QApplication>
#include <QLocale>

#include "app/kit/lasting_application.h"
#include "app/kit/out_of_memory.h"
#include "app/session/document_session.h"
#include "app/window/main_window.h"
#include "render/wording/translations.h"
#include "render/wording/us_spelling.h"

namespace roundwright::app {

int run_window(int argc, char** argv) {
    constexpr int without_memory = 1;
    end_in_words_without_memory(without_memory);
    qputenv("QT3D_RENDERER", "opengl");  // without OpenGL the other renderer ends the program
    LastingApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("roundwright"));
    QApplication::setOrganizationName(QStringLiteral("roundwright"));
    QApplication::setApplicationDisplayName(QStringLiteral("Roundwright"));
    QApplication::setApplicationVersion(QStringLiteral(ROUNDWRIGHT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("roundwright"));
    UsSpelling us_spelling;
    if (wants_us_spelling(QLocale::system().uiLanguages())) QApplication::installTranslator(&us_spelling);
    speak_language_of_system();

    DocumentSession session;
    MainWindow window(session);
    application.set_tell([&session](const QString& why) { session.refuse(why); });
    window.show();
    const auto arguments = QApplication::arguments();
    window.begin(arguments.size() > 1 ? arguments.at(1) : QString());
    const int exit_code = QApplication::exec();
    application.set_tell({});
    return exit_code;
}

}  // namespace roundwright::app
