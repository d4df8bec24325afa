#include "render/wording/translations.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>

namespace roundwright {
namespace {

/// "de_AT", "de".
QStringList names_of(const QString& language) {
    QStringList parts = language.split(QLatin1Char('-'));
    QStringList names;
    for (; !parts.isEmpty(); parts.removeLast()) names += parts.join(QLatin1Char('_'));
    return names;
}

QStringList folders() {
    const QString own = qEnvironmentVariable("ROUNDWRIGHT_TRANSLATIONS");
    QStringList all{QStringLiteral(":/translations")};
    if (!own.isEmpty()) all.prepend(own);
    return all;
}

void install(const QString& file) {
    auto* translator = new QTranslator(QCoreApplication::instance());
    if (translator->load(file)) QCoreApplication::installTranslator(translator);
}

}  // namespace

QString translation_file(const QStringList& languages, const QStringList& folders) {
    for (const QString& language : languages) {
        for (const QString& name : names_of(language)) {
            for (const QString& folder : folders) {
                const QString file = QStringLiteral("%1/roundwright_%2.qm").arg(folder, name);
                if (QFileInfo::exists(file)) return file;
            }
        }
        if (names_of(language).last() == QLatin1String("en")) return {};
    }
    return {};
}

void speak_language_of_system() {
    const QString file = translation_file(QLocale::system().uiLanguages(), folders());
    if (file.isEmpty()) return;
    const QString language = QFileInfo(file).completeBaseName().section(QLatin1Char('_'), 1);
    install(QStringLiteral("%1/qtbase_%2.qm")
                .arg(QLibraryInfo::path(QLibraryInfo::TranslationsPath),
                     language.section(QLatin1Char('_'), 0, 0)));
    install(file);
}

}  // namespace roundwright
