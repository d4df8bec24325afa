#include "app/window/run_window.h"

#include <QApplication>
#include <QLocale>

#include "app/files/end_signals.h"
#include "app/session/document_session.h"
#include "app/window/main_window.h"
#include "render/wording/translations.h"
#include "render/wording/us_spelling.h"

namespace roundwright::app {

int run_window(int argc, char** argv) {
    qputenv("QT3D_RENDERER", "opengl");  // without OpenGL the other renderer ends the program
    QApplication application(argc, argv);
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
    EndSignals end_signals;
    QObject::connect(&end_signals, &EndSignals::asked_to_end, &window, [&window](int number) {
        window.autosave().keep_now();
        EndSignals::end_by(number);
    });
    window.show();
    const auto arguments = QApplication::arguments();
    window.begin(arguments.size() > 1 ? arguments.at(1) : QString());
    return QApplication::exec();
}

}  // namespace roundwright::app
