#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "app/session/document_file.h"
#include "render/wording/translations.h"
#include "tests/app/translation/found_texts.h"
#include "tests/app/translation/marked_texts.h"
#include "tests/app/translation/nameless_toy.h"

namespace roundwright::test {
namespace {

QStringList languages(const char* names) { return QString::fromLatin1(names).split(QLatin1Char(' ')); }

TEST(TranslationFile, IsThatOfTheFirstLanguageWithOne) {
    const QTemporaryDir folder;
    for (const char* name : {"roundwright_de.qm", "roundwright_pt_BR.qm"}) {
        QFile file(folder.filePath(QLatin1String(name)));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    }
    const auto found = [&](const char* names) {
        return QDir(folder.path())
            .relativeFilePath(translation_file(languages(names), {folder.path()}))
            .toStdString();
    };
    EXPECT_EQ(found("de-AT de"), "roundwright_de.qm");
    EXPECT_EQ(found("pt-BR pt"), "roundwright_pt_BR.qm");
    EXPECT_EQ(found("fr-FR fr de-DE"), "roundwright_de.qm");
    EXPECT_EQ(translation_file(languages("en-GB de-DE"), {folder.path()}), QString())
        << "the program is in English";
    EXPECT_EQ(translation_file(languages("pt-PT pt"), {folder.path()}), QString());
    EXPECT_EQ(translation_file({}, {folder.path()}), QString());
}

/// The real program with a file beside it, on a system in German.
class TranslatedProgram : public ::testing::Test {
  protected:
    void SetUp() override { write_marked_translation(folder.path()); }

    /// What the program says on both outputs.
    QStringList lines_of(const QStringList& arguments) {
        QProcess program;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "LC_ALL", "LC_MESSAGES"})
            environment.remove(QLatin1String(name));
        environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
        environment.insert(QStringLiteral("LANG"), QStringLiteral("de_DE.UTF-8"));
        environment.insert(QStringLiteral("LANGUAGE"), QStringLiteral("de"));
        environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), folder.path());
        environment.insert(QStringLiteral("ROUNDWRIGHT_TRANSLATIONS"), folder.path());
        program.setProcessEnvironment(environment);
        program.setProcessChannelMode(QProcess::MergedChannels);
        program.setWorkingDirectory(QStringLiteral(ROUNDWRIGHT_SOURCE "/samples"));
        program.start(QStringLiteral(ROUNDWRIGHT_PROGRAM), arguments);
        EXPECT_TRUE(program.waitForFinished(120'000));
        return QString::fromUtf8(program.readAll()).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    }

    QTemporaryDir folder;
};

TEST_F(TranslatedProgram, AnswersOnTheCommandLineInIt) {
    const QString toy = folder.filePath(QStringLiteral("1.roundwright"));
    ASSERT_FALSE(app::save_document_file(toy, app::nameless_toy()).has_value());
    for (const char* command : {"check", "shape"}) {
        const QStringList lines = lines_of({QLatin1String(command), toy});
        EXPECT_GE(lines.size(), 3) << command;
        for (QString line : lines)
            EXPECT_FALSE(says_english(line.remove(folder.path()))) << command << ": " << line.toStdString();
    }
}

/// Rounds, and the sentences about them, are the trade's own language: core writes them and reads them back.
QString without_rounds(QString text) {
    static const QRegularExpression rounds(
        QStringLiteral("^ *(Rnds? \\d|Ch \\d).*$|Work in a spiral without joining;[^.]*\\."),
        QRegularExpression::MultilineOption);
    return text.remove(rounds);
}

TEST_F(TranslatedProgram, WritesThePatternInItButForTheRounds) {
    const QString toy = folder.filePath(QStringLiteral("1.roundwright"));
    ASSERT_FALSE(app::save_document_file(toy, app::nameless_toy()).has_value());
    const QStringList lines =
        lines_of({QStringLiteral("write"), QStringLiteral("--form"), QStringLiteral("pattern"), toy});
    int said = 0;
    const QString pattern = without_rounds(outside_marks(lines.join(QLatin1Char('\n'))));
    for (const QString& line : pattern.split(QLatin1Char('\n'))) {
        EXPECT_FALSE(says_english(line)) << line.toStdString();
        ++said;
    }
    EXPECT_GT(said, 20);
}

TEST_F(TranslatedProgram, RefusesAndHelpsInIt) {
    for (const QStringList& arguments :
         {QStringList{QStringLiteral("help")},
          QStringList{QStringLiteral("resize"), QStringLiteral("--help")},
          QStringList{QStringLiteral("reshape")}, QStringList{QStringLiteral("check")},
          QStringList{QStringLiteral("check"), QStringLiteral("missing.roundwright")}}) {
        const QString said = lines_of(arguments).join(QLatin1Char('\n'));
        EXPECT_TRUE(said.contains(opening_mark))
            << arguments.join(QLatin1Char(' ')).toStdString() << said.toStdString();
    }
}

}  // namespace
}  // namespace roundwright::test
