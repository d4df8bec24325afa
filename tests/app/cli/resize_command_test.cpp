#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <QFile>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;
using nlohmann::json;
using testing::HasSubstr;

const QString pup = sample("seal-pup.roundwright");

ProgramRun resize(const QStringList& arguments) { return run_program(QStringList{"resize"} + arguments); }

QStringList words(const char* text) { return QString::fromLatin1(text).split(u' '); }

Toy read_toy(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return read_document(file.readAll().toStdString()).toy;
}

TEST(ResizeCommand, SaysWhatToUndoAndSavesTheNewToy) {
    const QTemporaryDir folder;
    const QString made = folder.filePath(QStringLiteral("small.roundwright"));
    const ProgramRun run =
        resize(QStringList{pup, "-o", made} + words("--piece Head --width 60mm --worked 11"));
    EXPECT_EQ(run.exit_code, 0) << run.err;
    EXPECT_THAT(run.out, HasSubstr("Keep rounds 1 to 6, undo 5 rounds (234 stitches)."));
    EXPECT_THAT(run.out, HasSubstr("\n    6, 12, 18, 24, 30, 36, "));
    EXPECT_THAT(run.out, HasSubstr("Saved as " + made.toStdString()));
    const Toy toy = read_toy(made);
    EXPECT_LT(toy.pieces[0].rounds.size(), read_toy(pup).pieces[0].rounds.size());
    EXPECT_EQ(toy.pieces[0].worked.rounds, 6);
    EXPECT_EQ(toy.pieces[1], read_toy(pup).pieces[1]);
}

TEST(ResizeCommand, AnswersMachines) {
    const ProgramRun run =
        resize(QStringList{pup} + words("--piece 1 --width 6cm --worked 11+3 --ways-on 2 --json"));
    EXPECT_EQ(run.exit_code, 0) << run.err;
    const json piece = json::parse(run.out).at("pieces").at(0);
    EXPECT_EQ(piece.at("code"), "met");
    EXPECT_EQ(piece.at("wanted").at("width_mm"), 60);
    EXPECT_NEAR(piece.at("reached").at("width_mm").get<double>(), 60, 2.5);
    EXPECT_EQ(piece.at("frog_back").at("keep_rounds"), 6);
    EXPECT_EQ(piece.at("frog_back").at("undo_rounds"), 6);
    EXPECT_EQ(piece.at("frog_back").at("undo_stitches"), 237);
    const json& ways = piece.at("ways_on");
    ASSERT_EQ(ways.size(), 3u);
    EXPECT_EQ(ways[0].at("frog_back").at("yarn_mm").at("likely"), 0);
    EXPECT_GT(ways[2].at("frog_back").at("yarn_mm").at("likely"), 0);
}

TEST(ResizeCommand, AnotherHookFitsAllPieces) {
    const ProgramRun run = resize(QStringList{pup} + words("--hook 5 --json"));
    EXPECT_EQ(json::parse(run.out).at("pieces").size(), 5u);
    EXPECT_LE(run.exit_code, 1) << run.err;
}

// 3.5 to 7 mm: every length doubles.
TEST(ResizeCommand, TheSameRoundsWithAnotherHookComeOutAtAnotherSize) {
    const ProgramRun run = resize(QStringList{pup} + words("--hook 7 --keep-rounds --piece Head --json"));
    EXPECT_EQ(run.exit_code, 0) << run.err;
    const json piece = json::parse(run.out).at("pieces").at(0);
    EXPECT_NEAR(piece.at("reached").at("width_mm").get<double>(),
                2 * piece.at("before").at("width_mm").get<double>(), 1e-3);
    EXPECT_EQ(piece.at("stitches").size(), 23u);
    EXPECT_EQ(piece.at("stitches").at(7), 48);
}

TEST(ResizeCommand, TheOtherPiecesMayFollowOne) {
    const ProgramRun run = resize(QStringList{pup} + words("--piece Head --width 61mm --alike --json"));
    EXPECT_LE(run.exit_code, 1) << run.err;
    const json pieces = json::parse(run.out).at("pieces");
    ASSERT_EQ(pieces.size(), 5u);
    const auto width = [](const json& size) { return size.at("width_mm").get<double>(); };
    const double scale = 61 / width(pieces[0].at("before"));
    for (const json& piece : pieces)
        EXPECT_NEAR(width(piece.at("wanted")), scale * width(piece.at("before")), 1e-6);
}

TEST(ResizeCommand, SaysWhatIsWrong) {
    const std::pair<const char*, const char*> cases[] = {
        {"--width 60mm", "Which piece?"},
        {"--piece Fin --width 60mm", "There is no piece \"Fin\""},
        {"--piece 1 --width wide", "--width takes a length"},
        {"--piece 1 --width 60mm --worked x", "--worked takes rounds"},
        {"--piece 1 --hook 0", "--hook takes a hook"},
        {"--piece 1 --scale -2", "--scale takes a number"},
        {"--piece 1 --width 60mm --scale 2", "A scale sets width and height at once"},
        {"--piece 1 --width 1mm", "too small to work in this yarn"},
        {"--piece 1", "Enter a width or a height"},
        {"--piece 1 --alike --width 60mm --height 60mm", "--alike takes a width or a height"},
        {"--piece 1 --keep-rounds", "goes with another hook"},
        {"--piece 1 --keep-rounds --hook 5 --width 60mm", "leave the sizes out"},
        {"--piece 1 --keep-rounds --hook 5 --ways-on 3", "--ways-on does not work with --keep-rounds"},
    };
    for (const auto& [arguments, said] : cases) {
        const ProgramRun run = resize(QStringList{pup} + words(arguments));
        EXPECT_EQ(run.exit_code, 2) << arguments;
        EXPECT_THAT(run.err, HasSubstr(said)) << arguments;
    }
}

TEST(ResizeCommand, AFileThatCannotBeReadIsNamed) {
    const ProgramRun run = resize({"/nowhere/toy.roundwright", "--scale", "2"});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_THAT(run.err, HasSubstr("/nowhere/toy.roundwright"));
}

}  // namespace
}  // namespace roundwright
