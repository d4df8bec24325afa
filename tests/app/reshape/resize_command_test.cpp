#include <gtest/gtest.h>

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>

#include "core/document/json_document.h"

namespace roundwright::app {
namespace {

const auto pup = QStringLiteral(ROUNDWRIGHT_SOURCE "/samples/seal-pup.roundwright");

struct Ended {
    int exit_code = -1;
    QString out;
    QString err;
};

/// The program as a process of its own, with no display.
Ended resize(QStringList arguments) {
    QProcess program;
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.remove(QStringLiteral("DISPLAY"));
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(ROUNDWRIGHT_PROGRAM), QStringList{QStringLiteral("resize")} + arguments);
    EXPECT_TRUE(program.waitForFinished(30'000));
    return {program.exitCode(), QString::fromUtf8(program.readAllStandardOutput()),
            QString::fromUtf8(program.readAllStandardError())};
}

QStringList words(const char* text) { return QString::fromLatin1(text).split(u' '); }

Toy read_toy(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return read_document(file.readAll().toStdString()).toy;
}

TEST(ResizeCommand, SaysWhatToUndoAndSavesTheNewToy) {
    const QTemporaryDir folder;
    const QString made = folder.filePath(QStringLiteral("small.roundwright"));
    const Ended run =
        resize(QStringList{pup, QStringLiteral("-o"), made} + words("--piece Head --width 60mm --worked 11"));
    EXPECT_EQ(run.exit_code, 0) << run.err.toStdString();
    EXPECT_TRUE(run.out.contains(QStringLiteral("Keep rounds 1 to 6, undo 5 rounds (234 stitches).")))
        << run.out.toStdString();
    const Toy toy = read_toy(made);
    EXPECT_LT(toy.pieces[0].rounds.size(), read_toy(pup).pieces[0].rounds.size());
    EXPECT_EQ(toy.pieces[0].worked.rounds, 6);
    EXPECT_EQ(toy.pieces[1], read_toy(pup).pieces[1]);
}

TEST(ResizeCommand, AnswersMachines) {
    const Ended run =
        resize(QStringList{pup} + words("--piece 1 --width 6cm --worked 11+3 --ways-on 2 --json"));
    EXPECT_EQ(run.exit_code, 0) << run.err.toStdString();
    const QJsonObject json = QJsonDocument::fromJson(run.out.toUtf8()).object();
    const QJsonObject piece = json[QStringLiteral("pieces")].toArray()[0].toObject();
    EXPECT_EQ(piece[QStringLiteral("code")].toString().toStdString(), "met");
    EXPECT_EQ(piece[QStringLiteral("wanted")].toObject()[QStringLiteral("width_mm")].toDouble(), 60);
    EXPECT_NEAR(piece[QStringLiteral("reached")].toObject()[QStringLiteral("width_mm")].toDouble(), 60, 2.5);
    const QJsonObject back = piece[QStringLiteral("frog_back")].toObject();
    EXPECT_EQ(back[QStringLiteral("keep_rounds")].toInt(), 6);
    EXPECT_EQ(back[QStringLiteral("undo_rounds")].toInt(), 6);
    EXPECT_EQ(back[QStringLiteral("undo_stitches")].toInt(), 237);
    EXPECT_EQ(piece[QStringLiteral("ways_on")].toArray().size(), 3);
}

TEST(ResizeCommand, AnotherHookFitsAllPieces) {
    const Ended run = resize(QStringList{pup} + words("--hook 5 --json"));
    const QJsonObject json = QJsonDocument::fromJson(run.out.toUtf8()).object();
    EXPECT_EQ(json[QStringLiteral("pieces")].toArray().size(), 4);
    EXPECT_LE(run.exit_code, 1) << run.err.toStdString();
}

TEST(ResizeCommand, SaysWhatIsWrong) {
    const std::pair<const char*, const char*> cases[] = {
        {"--width 60mm", "Which piece?"},
        {"--piece Fin --width 60mm", "There is no piece \"Fin\""},
        {"--piece 1 --width wide", "--width takes a length"},
        {"--piece 1 --width 60mm --worked x", "--worked takes rounds"},
        {"--piece 1 --hook 0", "--hook takes a hook"},
        {"--piece 1 --scale -2", "--scale takes a number"},
        {"--piece 1 --width 60mm --scale 2", "A scale says width and height at once"},
        {"--piece 1 --width 1mm", "smaller than a few stitches"},
        {"--piece 1", "Say how wide or how tall"},
    };
    for (const auto& [arguments, said] : cases) {
        const Ended run = resize(QStringList{pup} + words(arguments));
        EXPECT_EQ(run.exit_code, 2) << arguments;
        EXPECT_TRUE(run.err.contains(QString::fromLatin1(said)))
            << arguments << ": " << run.err.toStdString();
    }
}

TEST(ResizeCommand, AFileThatCannotBeReadIsNamed) {
    const Ended run =
        resize({QStringLiteral("/nowhere/toy.roundwright"), QStringLiteral("--scale"), QStringLiteral("2")});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_TRUE(run.err.contains(QStringLiteral("/nowhere/toy.roundwright")));
}

}  // namespace
}  // namespace roundwright::app
