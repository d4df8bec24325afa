#include <algorithm>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

/// A folder of the test's own, with files put into it.
class CommandLine : public testing::Test {
  protected:
    [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    QString file(const char* name, const std::string& bytes) const {
        std::ofstream(path(name).toStdString(), std::ios::binary) << bytes;
        return path(name);
    }

    QString toy(const char* name, const std::vector<int>& counts) const {
        Toy toy;
        toy.gauge = GivenGauge{{5, 5, 0, 0}};
        Piece& piece = toy.pieces.emplace_back();
        piece.name = "Fin";
        piece.end = End::drawn_closed;
        for (const int count : counts) piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
        return file(name, write_document(toy));
    }

    /// The toy in words, in a file.
    QString text_of(const QString& toy_file, const char* terms) const {
        const QString text = path(terms);
        EXPECT_EQ(
            run_program({"write", toy_file, "--terms", terms, "-o", text + ".txt", "--force"}).exit_code, 0);
        return text + ".txt";
    }

    QTemporaryDir folder_;
};

TEST_F(CommandLine, HelpNamesEveryCommand) {
    const ProgramRun run = run_program({"--help"});
    EXPECT_EQ(run.exit_code, 0);
    EXPECT_EQ(run.err, "");
    for (const char* command :
         {"check", "shape", "read", "write", "resize", "gauge", "pdf", "image", "mesh"}) {
        EXPECT_THAT(run.out, HasSubstr(command));
        const ProgramRun help = run_program({command, "--help"});
        EXPECT_EQ(help.exit_code, 0);
        EXPECT_THAT(help.out, HasSubstr(std::string("Usage: roundwright ") + command));
    }
    EXPECT_THAT(run_program({"--version"}).out, testing::StartsWith("roundwright "));
}

TEST_F(CommandLine, HelpIsACommandToo) {
    EXPECT_EQ(run_program({"help"}).out, run_program({"--help"}).out);
    EXPECT_EQ(run_program({"help", "resize"}).out, run_program({"resize", "--help"}).out);
    EXPECT_EQ(run_program({"help"}).exit_code, 0);
    const ProgramRun unknown = run_program({"help", "knit"});
    EXPECT_EQ(unknown.exit_code, 2);
    EXPECT_THAT(unknown.err, HasSubstr("There is no command knit."));
}

TEST_F(CommandLine, EmptyNamesAreCalledEmpty) {
    const QString pup = sample("seal-pup.roundwright");
    for (const char* command : {"check", "shape", "read", "write", "pdf"}) {
        for (const QStringList& names : {QStringList{""}, QStringList{pup, ""}}) {
            const ProgramRun run = run_program(QStringList{command} + names);
            EXPECT_EQ(run.exit_code, 2) << command;
            EXPECT_EQ(run.out, "") << command;
            EXPECT_THAT(run.err, HasSubstr("The name of a file is empty.")) << command;
        }
    }
    EXPECT_THAT(run_program({"pdf", pup, "-o", ""}).err, HasSubstr("-o needs the name of a file."));
    const ProgramRun window = run_program({""});
    EXPECT_EQ(window.exit_code, 2);
    EXPECT_THAT(window.err, HasSubstr("The name of a file is empty."));
}

TEST_F(CommandLine, NamesInAToyThatMeanNothingAreNamedWithTheirPlace) {
    const QString fin =
        file("fin.roundwright", R"({"format":"roundwright","version":1,"hook_mm":3.5,"colour":"red",
        "yarns":[],"pieces":[{"name":"Fin","start":{"kind":"magic_ring"},"end":"drawn_closed","area_strech":0.08,
        "rounds":[{"stitches":6,"notes":"a"},{"stitches":12,"notes":"b"},{"stitches":6,"notes":"c"}]}]})");
    const ProgramRun run = run_program({"check", fin});
    EXPECT_EQ(run.exit_code, 0);
    EXPECT_THAT(run.err, HasSubstr("fin.roundwright: at /colour: kept, but not understood."));
    EXPECT_THAT(run.err, HasSubstr("at /pieces/0/area_strech: kept, but not understood. "
                                   "Did you mean “area_stretch”?"));
    EXPECT_THAT(run.err, HasSubstr("at /pieces/0/rounds/0/notes: kept, but not understood. "
                                   "Did you mean “note”? (2 more like it.)"));
    for (const char* clean : {"seal-pup.roundwright", "puffin.roundwright", "starfish.roundwright"})
        EXPECT_EQ(run_program({"check", sample(clean)}).err, "") << clean;
}

TEST_F(CommandLine, CountsAreReadAsTheyAreTyped) {
    const QString text = file("counts.txt",
                              "6, 12 +6\n24x2; \xE2\x80\x93"
                              "6 \xC3\x97 2\n=*2, -6, +6x2, \xE2\x88\x92"
                              "6\n");
    const ProgramRun run = run_program({"read", "--json", text});
    EXPECT_EQ(run.exit_code, 0) << run.err;
    EXPECT_EQ(json::parse(run.out).at("pieces").at(0).at("stitches"),
              json({6, 12, 18, 24, 24, 18, 12, 12, 12, 6, 12, 18, 12}));
}

TEST_F(CommandLine, EveryCommandAnswersMachines) {
    const QString fin = toy("fin.roundwright", {6, 12, 18, 18, 12, 6});
    const QString text = file("fin.txt", "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (13)\n");
    const std::vector<QStringList> commands{{"check", fin},
                                            {"shape", fin},
                                            {"write", fin},
                                            {"write", fin, "-o", path("fin-again.txt")},
                                            {"read", text},
                                            {"resize", "--scale", "1.2", fin},
                                            {"gauge", "--width", "30mm", fin},
                                            {"pdf", fin, "-o", path("fin.pdf")},
                                            {"image", "--size", "40x40", fin, "-o", path("fin.png")},
                                            {"mesh", fin, "-o", path("fin.stl")}};
    for (const QStringList& words : commands) {
        const ProgramRun run = run_program(words + QStringList{"--json"});
        EXPECT_LE(run.exit_code, 1) << words.join(u' ').toStdString() << run.err;
        const json said = json::parse(run.out, nullptr, false);
        ASSERT_TRUE(said.is_object()) << words.join(u' ').toStdString() << run.out;
        EXPECT_THAT(said.at("file").get<std::string>(), HasSubstr("fin.")) << words[0].toStdString();
        if (words.contains("-o")) {
            EXPECT_EQ(said.at("output"), words.last().toStdString());
        }
    }
    const json read = json::parse(run_program({"read", "--json", text}).out);
    EXPECT_EQ(read.at("pieces").at(0).at("stitches"), json({6, 12}));
    EXPECT_EQ(read.at("findings").at(0).at("code"), "count_differs");
    EXPECT_EQ(read.at("findings").at(0).at("line"), 2);
    EXPECT_THAT(json::parse(run_program({"write", "--json", fin}).out).at("text").get<std::string>(),
                HasSubstr("(12)"));
}

TEST_F(CommandLine, BadUsageEndsWithTwoAndSaysWhy) {
    const std::vector<std::pair<QStringList, std::string>> cases{
        {{"chekc", "toy"}, "There is no command and no file chekc."},
        {{"check"}, "No file was named."},
        {{"check", "--jason", "x"}, "There is no option --jason."},
        {{"check", "--units", "ft", "x"}, "--units takes mm or in"},
        {{"pdf", "--date", "tomorrow", sample("puffin.roundwright")}, "--date takes a date"},
        {{"pdf", "-o", "x.pdf", "a", "b"}, "-o takes one file at a time."},
        {{"mesh", sample("puffin.roundwright")},
         "Say with -o where to save it, ending in .obj or .stl or .glb."},
        {{"mesh", "-o", "x.ply", sample("puffin.roundwright")},
         "x.ply does not end in .obj or .stl or .glb."},
        {{"mesh", "-o", "x.obj", "--triangles", "5", "a"}, "--triangles takes a whole number from 100"},
        {{"image", "-o", "x.png", "--size", "0x9", "a"}, "--size takes pixels"},
        {{"image", "-o", "x.png", "--background", "sea", "a"}, "--background takes a colour"},
        {{"image", "-o", "x.png", "--view", "below", "a"}, "--view takes front or side"},
        {{"gauge", sample("puffin.roundwright"), "--piece", "Body"}, "Say what was measured"},
        {{"gauge", sample("puffin.roundwright"), "--width", "80"}, "Which piece?"},
        {{"gauge", sample("puffin.roundwright"), "--piece", "Body", "--width", "wide"},
         "--width takes a length such as 82mm or 82mm+-1mm, not \"wide\"."},
        {{"gauge", sample("puffin.roundwright"), "--piece", "Body", "--round", "99=250mm"},
         "There is no round 99"},
        {{"image", "-o", "x.png", "--piece", "Hat", sample("puffin.roundwright")},
         "There is no piece \"Hat\"; there are: "},
    };
    for (const auto& [arguments, says] : cases) {
        const ProgramRun run = run_program(arguments);
        EXPECT_EQ(run.exit_code, 2) << says;
        EXPECT_EQ(run.out, "") << says;
        EXPECT_THAT(run.err, HasSubstr(says));
    }
}

TEST_F(CommandLine, FilesThatCannotBeReadAreNamedWithThePlace) {
    const QString torn = file("torn.roundwright", "{");
    const QString words = file("words.txt", "Rnd 1: 6 sc in magic ring (6)\n");
    const QString wrong = file(
        "wrong.roundwright", R"({"format":"roundwright","version":1,"hook_mm":"E","yarns":[],"pieces":[]})");
    const ProgramRun run =
        run_program({"check", path("none.roundwright"), torn, words, wrong, sample("puffin.roundwright")});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_THAT(run.err, HasSubstr("none.roundwright: "));
    EXPECT_THAT(run.err,
                HasSubstr("torn.roundwright: The end of the file is missing: it breaks off in line 1."));
    EXPECT_THAT(run.err, HasSubstr("words.txt: This is not a toy file."));
    EXPECT_THAT(run.err, Not(HasSubstr("JSON")));
    EXPECT_THAT(run.err, HasSubstr("wrong.roundwright: at /hook_mm (line 1, column 47): expected a number "
                                   "from 0.5 to 50, found \"E\""));
    EXPECT_THAT(run.out, HasSubstr("Puffin"));  // the others are still looked at
}

const std::vector<int> ruffling{8, 16, 24, 32, 40, 48};

TEST_F(CommandLine, CheckEndsWithOneForAnErrorOnly) {
    EXPECT_EQ(run_program({"check", toy("good.roundwright", {6, 12, 6})}).exit_code, 0);
    EXPECT_EQ(run_program({"check", toy("frill.roundwright", ruffling)}).exit_code, 0);  // a warning
    const ProgramRun run = run_program({"check", toy("wrong.roundwright", {6, 13, 12})});
    EXPECT_EQ(run.exit_code, 1);
    EXPECT_THAT(run.out, HasSubstr("Round 2 has 13 stitches over 6."));
}

TEST_F(CommandLine, WhatCannotBeWorkedIsNamedWhereAPatternIsHandedOut) {
    const QString wrong = toy("wrong.roundwright", {6, 13, 12});
    for (const QStringList& arguments :
         {QStringList{"pdf", wrong, "-o", path("wrong.pdf")}, QStringList{"write", wrong},
          QStringList{"write", "--form", "pattern", wrong, "-o", path("wrong.txt")}}) {
        const ProgramRun run = run_program(arguments);
        EXPECT_EQ(run.exit_code, 1) << arguments[0].toStdString();
        EXPECT_THAT(run.err, HasSubstr("wrong.roundwright: Fin: Round 2 has 13 stitches over 6."));
    }
    EXPECT_TRUE(QFileInfo::exists(path("wrong.pdf")));  // handed out nevertheless
    EXPECT_TRUE(QFileInfo::exists(path("wrong.txt")));
    EXPECT_EQ(run_program({"write", toy("good.roundwright", {6, 12, 6})}).exit_code, 0);
}

TEST_F(CommandLine, WordsThatNameLostRoundsAreNamedAfterAResize) {
    // The pup as it was before its pieces were joined, with sewing steps in the maker's own words.
    const QString smaller = path("smaller.roundwright");
    const QString own_words = sample("../tests/core/document/version_1/seal-pup.roundwright");
    EXPECT_EQ(
        run_program({"resize", own_words, "--piece", "Head", "--width", "60mm", "-o", smaller}).exit_code, 0);
    const ProgramRun run = run_program({"check", smaller});
    EXPECT_THAT(run.out,
                HasSubstr("Assembly step 1 says “rounds 19 and 20”: that was written for 23 rounds"));
    EXPECT_EQ(run.exit_code, 0);  // a warning
    EXPECT_EQ(run_program({"check", own_words}).out.find("says “"), std::string::npos);
}

TEST_F(CommandLine, ShapeTellsOfAPieceThatLiesFlat) {
    Toy ear;
    ear.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = ear.pieces.emplace_back();
    piece.name = "Ear";
    piece.end = End::sewn_straight;
    piece.area_stretch = unstuffed_stretch;
    for (const int count : {6, 12, 18, 24, 24, 24, 24, 24})
        piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    const ProgramRun run = run_program({"shape", "--json", file("ear.roundwright", write_document(ear))});
    EXPECT_EQ(run.exit_code, 0);
    const json said = json::parse(run.out)["pieces"][0];
    EXPECT_EQ(said.at("flattened"), true);
    EXPECT_EQ(said.at("stuffed"), false);
    EXPECT_EQ(said.at("end"), "sewn_straight");
    EXPECT_NEAR(said.at("width_mm").get<double>(), 60, 1e-6);
    EXPECT_NEAR(said.at("depth_mm").get<double>(), 3.5, 1e-6);
    const json& last = said.at("rounds").back();
    EXPECT_NEAR(last.at("width_mm").get<double>(), 60, 1e-6);
    EXPECT_EQ(last.at("bend_degrees"), 0);
    EXPECT_FALSE(
        json::parse(run_program({"shape", "--json", sample("puffin.roundwright")}).out)["pieces"][0].at(
            "flattened"));
}

TEST_F(CommandLine, CheckAsJson) {
    const ProgramRun run = run_program({"check", "--json", toy("wrong.roundwright", {6, 13, 12})});
    const json said = json::parse(run.out);
    EXPECT_EQ(said.at("file"), path("wrong.roundwright").toStdString());
    ASSERT_GE(said.at("checks").size(), 1);
    const json& check = said["checks"][0];
    EXPECT_EQ(check.at("code"), "too_many_increases");
    EXPECT_EQ(check.at("severity"), "error");
    EXPECT_EQ(check.at("piece"), "Fin");
    EXPECT_EQ(check.at("round"), 2);
    EXPECT_THAT(check.at("message").get<std::string>(), HasSubstr("5\u00a0mm"));
    EXPECT_THAT(check.at("message").get<std::string>(), HasSubstr("Work 12 instead?"));
}

TEST_F(CommandLine, CheckInInches) {
    const ProgramRun run = run_program({"check", "--units", "in", toy("frill.roundwright", ruffling)});
    EXPECT_THAT(run.out, HasSubstr("\u00a0in to spare"));
}

// Arithmetic: each toy is one line of JSON, with the pieces and rounds of the file.
TEST_F(CommandLine, ShapeAsJsonHasEveryPieceAndRound) {
    const ProgramRun run =
        run_program({"shape", "--json", sample("seal-pup.roundwright"), sample("puffin.roundwright")});
    EXPECT_EQ(run.exit_code, 0);
    const std::size_t end = run.out.find('\n');
    ASSERT_EQ(run.out.find('\n', end + 1), run.out.size() - 1);
    const json seal = json::parse(run.out.substr(0, end));
    const json puffin = json::parse(run.out.substr(end));
    EXPECT_EQ(puffin.at("title"), "Puffin");
    const json& head = seal.at("pieces").at(0);
    EXPECT_EQ(head.at("name"), "Head");
    EXPECT_EQ(head.at("termination"), "converged");
    EXPECT_EQ(head.at("rounds").size(), 23);
    for (const char* measure : {"width_mm", "height_mm", "volume_mm3", "surface_mm2", "area_stretch"}) {
        EXPECT_GT(head.at(measure), 0) << measure;
    }
    double widest = 0;
    for (const json& round : head.at("rounds")) {
        widest = std::max(widest, 2 * round.at("radius_mm").get<double>());
        for (const char* key : {"round", "stitches", "z_mm", "course_stretch", "wale_stretch", "lie"}) {
            EXPECT_TRUE(round.contains(key)) << key;
        }
    }
    EXPECT_NEAR(widest, head.at("width_mm").get<double>(), 1e-9);
    EXPECT_EQ(head.at("rounds").at(7).at("stitches"), 48);
    EXPECT_FALSE(head.at("rounds").at(7).contains("worked"));
}

TEST_F(CommandLine, ShapeWithStitchesTellsTheLoopsOfEachStitch) {
    const json said =
        json::parse(run_program({"shape", "--json", "--stitches", toy("fin.roundwright", {6, 12, 6})}).out);
    const json& rounds = said.at("pieces").at(0).at("rounds");
    ASSERT_EQ(rounds.at(1).at("worked").size(), 12);
    EXPECT_EQ(rounds.at(1).at("loops_below"), 6);
    EXPECT_EQ(rounds.at(1).at("worked").at(11).at("first_foot"), 5);
    EXPECT_EQ(rounds.at(2).at("worked").at(0).at("feet"), 2);
}

TEST_F(CommandLine, ShapeInWords) {
    const ProgramRun run = run_program({"shape", sample("seal-pup.roundwright")});
    EXPECT_THAT(run.out, HasSubstr("Head: 23 rounds, "));
    EXPECT_THAT(run.out, HasSubstr("mm wide"));
}

// What the program says of a piece is measured on it: the gauge comes back, and the saved toy has it.
TEST_F(CommandLine, GaugeFromAFinishedPiece) {
    const QString fin = toy("fin.roundwright", {6, 12, 18, 24, 30, 30, 30, 30, 24, 18, 12, 6});
    const json shape = json::parse(run_program({"shape", "--json", fin}).out).at("pieces").at(0);
    const QString width = QString::number(shape.at("width_mm").get<double>()) + QStringLiteral("mm+-1mm");
    const QString height = QString::number(shape.at("height_mm").get<double>());
    const QStringList measured{"gauge", fin, "--width", width, "--height", height, "--with-stuffing"};
    const ProgramRun words = run_program(measured);
    EXPECT_EQ(words.exit_code, 0) << words.err;
    EXPECT_THAT(words.out, HasSubstr("A stitch is 5.0\u00a0mm ("));
    EXPECT_THAT(words.out, HasSubstr("Typical difference from your measurements: 0.0\u00a0mm"));
    EXPECT_THAT(run_program(measured + QStringList{"--units", "in", "--height", "3in"}).out,
                HasSubstr("\u00a0in ("));
    const json found =
        json::parse(run_program(measured + QStringList{"--json", "-o", path("found.roundwright")}).out);
    EXPECT_NEAR(found.at("stitch_width_mm").get<double>(), 5, 0.01);
    EXPECT_NEAR(found.at("round_height_mm").get<double>(), 5, 0.01);
    EXPECT_EQ(found.at("notes").size(), 0);
    EXPECT_EQ(found.at("measured").at(0).at("error_mm"), 1);
    std::ifstream saved(path("found.roundwright").toStdString());
    const json toy = json::parse(saved);
    EXPECT_EQ(toy.at("gauge").at("from"), "given");
    EXPECT_EQ(toy.at("gauge").at("found_on"), "Fin");
}

// Two circles, and two pieces that measure as their shapes say at 5 mm: weighed together.
TEST_F(CommandLine, GaugeOfSeveralPiecesAndCircles) {
    Toy two;
    two.gauge = GivenGauge{{5, 5, 0, 0}};
    for (const char* name : {"Fin", "Flipper"}) {
        Piece& piece = two.pieces.emplace_back();
        piece.name = name;
        piece.end = End::drawn_closed;
        for (const int count : {6, 12, 18, 24, 30, 30, 30, 30, 24, 18, 12, 6})
            piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    }
    const QString path_of_two = file("two.roundwright", write_document(two));
    const json shape = json::parse(run_program({"shape", "--json", path_of_two}).out).at("pieces").at(0);
    const QString width = QString::number(shape.at("width_mm").get<double>());
    const QString height = QString::number(shape.at("height_mm").get<double>());
    const QStringList measured{
        "gauge",     path_of_two,
        "--circle",  "5=50mm,5=50.5mm+-2mm",
        "--lengths", QStringLiteral("fin:width=%1mm,Fin:height=%2mm+-1mm,2:6=150mm").arg(width, height)};
    const ProgramRun words = run_program(measured);
    EXPECT_EQ(words.exit_code, 0) << words.err;
    EXPECT_THAT(words.out, HasSubstr("Together: A stitch is "));
    EXPECT_THAT(words.out, HasSubstr("The finished Fin"));
    EXPECT_THAT(words.out, HasSubstr("counts for "));
    const json found =
        json::parse(run_program(measured + QStringList{"--json", "-o", path("both.roundwright")}).out);
    EXPECT_NEAR(found.at("stitch_width_mm").get<double>(), 5, 0.15);
    EXPECT_NEAR(found.at("round_height_mm").get<double>(), 5, 0.15);
    ASSERT_EQ(found.at("measurements").size(), 4);
    double shares = 0;
    for (const json& one : found.at("measurements")) shares += one.at("share").get<double>();
    EXPECT_NEAR(shares, 1, 1e-9);
    EXPECT_FALSE(found.contains("disagrees"));
    EXPECT_EQ(found.at("pieces").size(), 2);
    EXPECT_FALSE(found.at("next").empty());
    std::ifstream saved(path("both.roundwright").toStdString());
    EXPECT_EQ(json::parse(saved).at("gauge").at("from"), "several");

    const json odd =
        json::parse(run_program({"gauge", path_of_two, "--circle", "5=50mm,5=50mm,5=60mm", "--json"}).out);
    EXPECT_EQ(odd.at("disagrees"), 2);
    EXPECT_EQ(odd.at("measurements").at(2).at("measurement"), "the circle “5=60mm”");
    EXPECT_EQ(run_program({"gauge", path_of_two, "--circle", "50"}).exit_code, 2);
    EXPECT_EQ(run_program({"gauge", path_of_two, "--lengths", "Fin=5"}).exit_code, 2);
    EXPECT_EQ(run_program({"gauge", path_of_two, "--lengths", "Hat:width=5"}).exit_code, 2);
}

TEST_F(CommandLine, GaugeSaysWhatOneLengthCannotTell) {
    const QString fin = toy("fin.roundwright", {6, 12, 18, 24, 30, 30, 30, 30, 24, 18, 12, 6});
    const ProgramRun run = run_program({"gauge", fin, "--round", "6=150mm+-1mm"});
    EXPECT_EQ(run.exit_code, 0) << run.err;
    EXPECT_THAT(run.out, HasSubstr("say little about how tall a round is"));
    const json found = json::parse(run_program({"gauge", fin, "--round", "6=150mm+-1mm", "--json"}).out);
    EXPECT_EQ(found.at("notes").at(0).at("code"), "left_free");
}

TEST_F(CommandLine, ShapeSaysWhatIsNotRoundAndWhatWaves) {
    Toy oval;
    oval.gauge = GivenGauge{{5, 5, 0, 0}};
    oval.pieces.resize(2);
    oval.pieces[0].name = "Sole";
    oval.pieces[0].start = OvalChain{10};
    oval.pieces[1].name = "Frill";
    for (Piece& piece : oval.pieces) piece.area_stretch = 0;
    for (const int count : {26, 32, 38, 44})
        oval.pieces[0].rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    for (const int count : {8, 16, 24, 32, 40})
        oval.pieces[1].rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    const QString path = file("oval.roundwright", write_document(oval));
    const std::string words = run_program({"shape", path}).out;
    EXPECT_THAT(words, HasSubstr(" deep"));
    EXPECT_THAT(words, HasSubstr("Worked out stitch by stitch"));
    EXPECT_THAT(words, Not(HasSubstr("round piece")));
    EXPECT_THAT(words, HasSubstr("flat, edge waves "));
    const json said = json::parse(run_program({"shape", "--json", path}).out);
    const json& sole = said.at("pieces").at(0);
    EXPECT_FALSE(sole.at("equivalent_round"));
    EXPECT_FALSE(sole.contains("oval"));
    EXPECT_GT(sole.at("width_mm").get<double>(), 1.5 * sole.at("depth_mm").get<double>());
    EXPECT_EQ(sole.at("depth_range_mm").size(), 2);
    const json& frill = said.at("pieces").at(1);
    EXPECT_FALSE(frill.at("equivalent_round"));
    EXPECT_FALSE(frill.contains("oval"));
    EXPECT_GT(frill.at("wave_height_mm"), 1);
    EXPECT_GT(frill.at("rounds").at(4).at("waves"), 1);
    EXPECT_EQ(frill.at("width_range_mm").size(), 2);
}

TEST_F(CommandLine, EmptyPieceHasNoShapeAndIsNoError) {
    const ProgramRun run = run_program({"shape", toy("empty.roundwright", {})});
    EXPECT_EQ(run.exit_code, 0);
    EXPECT_THAT(run.out, HasSubstr("Fin: 0 rounds, no shape"));
}

// What no stitch can be has no shape that one may rely on, and the answer says so.
TEST_F(CommandLine, ShapeSaysWhyThereIsNone) {
    Toy odd;
    odd.gauge = GivenGauge{{154.739, 0.00214025, 0, 0}};
    Piece& tube = odd.pieces.emplace_back();
    tube.name = "Fin";
    tube.start = OpenTube{44};
    tube.end = End::drawn_closed;
    for (const int count : {44, 62, 71, 71}) tube.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    const QString flat = file("flat.roundwright", write_document(odd));
    for (const QStringList& options : {QStringList{}, QStringList{"--json"}}) {
        const ProgramRun run = run_program(QStringList{"shape", flat} + options);
        EXPECT_EQ(run.exit_code, 1);
        EXPECT_THAT(run.err, HasSubstr("Fin: No settled shape was found for these 4 rounds: by the gauge, a "
                                       "stitch is 72,299 times as wide as it is high."));
    }
    const ProgramRun image = run_program({"image", flat, "-o", path("flat.png")});
    EXPECT_EQ(image.exit_code, 1);
    EXPECT_THAT(image.err, HasSubstr("Fin has no shape to draw."));
    const QString vast = toy("vast.roundwright", std::vector<int>(40, 20'000));
    const ProgramRun run = run_program({"shape", vast});
    EXPECT_EQ(run.exit_code, 1);
    EXPECT_THAT(run.err, HasSubstr("This piece has 800,000 stitches, and the limit is 200,000."));
}

TEST_F(CommandLine, PdfGoesWhereItIsToldAndIsTheSameEveryTime) {
    for (const char* name : {"one.pdf", "two.pdf"}) {
        const ProgramRun run =
            run_program({"pdf", sample("puffin.roundwright"), "-o", path(name), "--date", "2026-05-01"});
        EXPECT_EQ(run.exit_code, 0) << run.err;
        EXPECT_EQ(run.out, path(name).toStdString() + "\n");
    }
    QFile one(path("one.pdf"));
    QFile two(path("two.pdf"));
    ASSERT_TRUE(one.open(QIODevice::ReadOnly) && two.open(QIODevice::ReadOnly));
    const QByteArray bytes = one.readAll();
    EXPECT_TRUE(bytes.startsWith("%PDF-"));
    EXPECT_EQ(bytes, two.readAll());
}

TEST_F(CommandLine, PdfBesideTheToyIsNotWrittenOverUnasked) {
    const QString fin = toy("fin.roundwright", {6, 12, 6});
    file("fin.pdf", "precious");
    const ProgramRun refused = run_program({"pdf", fin});
    EXPECT_EQ(refused.exit_code, 2);
    EXPECT_THAT(refused.err, HasSubstr("exists already"));
    QFile kept(path("fin.pdf"));
    ASSERT_TRUE(kept.open(QIODevice::ReadOnly));
    EXPECT_EQ(kept.readAll(), "precious");
    EXPECT_EQ(run_program({"pdf", fin, "--force"}).exit_code, 0);
    EXPECT_EQ(run_program({"pdf", fin, "-o", "/no/such/folder/x.pdf"}).exit_code, 2);
}

TEST_F(CommandLine, PatternIsReadProvedAndKept) {
    const QString pattern = file("ball.txt",
                                 "Ball\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n"
                                 "Rnd 3: [sc, inc] x 6 (18)\nRnd 4: sc around (18)\n");
    const ProgramRun run = run_program({"read", pattern, "-o", path("ball.roundwright")});
    EXPECT_EQ(run.exit_code, 0) << run.out << run.err;
    EXPECT_THAT(run.out, HasSubstr("4 rounds, the last of 18 stitches"));
    const json shape = json::parse(run_program({"shape", "--json", path("ball.roundwright")}).out);
    EXPECT_EQ(shape.at("pieces").at(0).at("rounds").at(3).at("stitches"), 18);
}

TEST_F(CommandLine, PatternThatDoesNotComeOutIsNamedByLineAndEndsWithOne) {
    const QString pattern = file("ball.txt",
                                 "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n"
                                 "Rnd 3: [sc, inc] x 5 (18)\n");
    const ProgramRun run = run_program({"read", pattern, "-o", path("ball.roundwright")});
    EXPECT_EQ(run.exit_code, 1);
    EXPECT_THAT(run.out, HasSubstr("ball.txt:3:"));
    EXPECT_THAT(run.out, HasSubstr("There are 12 stitches below and the words use 10: 2 left over."));
    // The toy has the round as its mend says, so that a round after it would stand on 18.
    EXPECT_THAT(run.out, HasSubstr("3 rounds, the last of 18 stitches (2 sure, 1 mended, 0 refused)"));
    EXPECT_EQ(run_program({"read", path("none.txt")}).exit_code, 2);
    EXPECT_EQ(run_program({"read", file("empty.txt", "")}).exit_code, 2);
}

TEST_F(CommandLine, LinesThatWereNotReadEndWithOne) {
    const std::string ball = "Ball\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n";
    for (const char* line : {"Reihe 3: 6 fM (6)", "Ears: same as the nose", "Legs (make 2)", "12 odd things",
                             "Rnd 4: sc around (12)"}) {
        const ProgramRun run = run_program({"read", file("ball.txt", ball + "\n" + line + "\n")});
        EXPECT_EQ(run.exit_code, 1) << line;
        EXPECT_THAT(run.out, HasSubstr("ball.txt:5:")) << line;
    }
    EXPECT_EQ(run_program({"read", file("ball.txt", ball + "Sew it on between rounds 3 and 4.\n")}).exit_code,
              0);
}

TEST_F(CommandLine, TheSameMessageIsNotRepeatedThousandsOfTimes) {
    std::string text = "Ball\nRnd 1: 6 sc in magic ring (6)\n";
    for (int i = 0; i < 3'000; ++i) text += "Reihe " + std::to_string(i) + ": alle fM (6)\n";
    const ProgramRun run = run_program({"read", file("many.txt", text)});
    EXPECT_EQ(run.exit_code, 1);
    EXPECT_LT(std::count(run.out.begin(), run.out.end(), '\n'), 50);
    EXPECT_THAT(run.out, HasSubstr("more like this.)"));
}

TEST_F(CommandLine, ATextThatIsTooLongIsRefused) {
    const ProgramRun run = run_program({"read", file("long.txt", std::string(6'000'000, '('))});
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_THAT(run.err, HasSubstr("long.txt: larger than 4 MiB, too large for a pattern."));
    const ProgramRun line =
        run_program({"read", file("line.txt", "Rnd 1: 6 sc in MR (6)\n" + std::string(2'000'000, '('))});
    EXPECT_EQ(line.exit_code, 1);
    EXPECT_THAT(line.out, HasSubstr("line.txt:2:1: This line has"));
}

// Reading what was written gives the same stitches: the counts and the loops of every stitch.
TEST_F(CommandLine, WrittenRoundsAreReadBack) {
    for (const char* terms : {"us", "uk"}) {
        const ProgramRun written = run_program(
            {"write", sample("puffin.roundwright"), "--terms", terms, "-o", path("puffin.txt"), "--force"});
        EXPECT_EQ(written.exit_code, 0) << written.err;
        const ProgramRun read =
            run_program({"read", path("puffin.txt"), "-o", path("again.roundwright"), "--force"});
        EXPECT_EQ(read.exit_code, 0) << terms << read.out << read.err;
        const json one = json::parse(run_program({"shape", "--json", sample("puffin.roundwright")}).out);
        const json two = json::parse(run_program({"shape", "--json", path("again.roundwright")}).out);
        ASSERT_EQ(one.at("pieces").size(), two.at("pieces").size());
        for (std::size_t piece = 0; piece < one.at("pieces").size(); ++piece) {
            const json& rounds = one["pieces"][piece]["rounds"];
            const json& again = two["pieces"][piece]["rounds"];
            ASSERT_EQ(rounds.size(), again.size()) << piece;
            for (std::size_t round = 0; round < rounds.size(); ++round) {
                EXPECT_EQ(rounds[round]["stitches"], again[round]["stitches"]) << piece << " " << round;
            }
        }
    }
}

TEST_F(CommandLine, WritesTheFormsOfAPattern) {
    const auto text = [](const char* form) {
        return run_program({"write", sample("seal-pup.roundwright"), "--form", form}).out;
    };
    EXPECT_THAT(text("pattern"), HasSubstr("choking"));
    EXPECT_THAT(text("markdown"), testing::StartsWith("# Seal pup"));
    EXPECT_THAT(text("csv"), testing::StartsWith("piece,round,"));
    EXPECT_THAT(run_program({"write", sample("seal-pup.roundwright"), "--terms", "uk"}).out, HasSubstr("dc"));
}

TEST_F(CommandLine, WritesAndReadsTermsOfOtherLanguages) {
    const QString pup = sample("seal-pup.roundwright");
    const json us = json::parse(run_program({"read", "--json", text_of(pup, "us")}).out);
    for (const char* terms : {"de", "fr", "es", "nl", "da", "pt", "it"}) {
        const json read = json::parse(run_program({"read", "--json", text_of(pup, terms)}).out);
        EXPECT_EQ(read.at("terms"), terms);
        EXPECT_EQ(read.at("pieces"), us.at("pieces")) << terms;
        EXPECT_TRUE(read.at("findings").empty()) << read.dump(1);
        EXPECT_EQ(run_program({"pdf", pup, "--terms", terms, "-o", path("pup.pdf"), "--force"}).exit_code, 0);
    }
    EXPECT_THAT(run_program({"read", text_of(pup, "de")}).out, HasSubstr("Read in German terms."));
    EXPECT_EQ(run_program({"write", pup, "--terms", "xx"}).exit_code, 2);
}

TEST_F(CommandLine, WritesEveryRoundForMachines) {
    const json said =
        json::parse(run_program({"write", "--json", "--terms", "de", sample("seal-pup.roundwright")}).out);
    EXPECT_EQ(said.at("terms"), "de");
    const json& piece = said.at("pieces").at(0);
    EXPECT_FALSE(piece.at("name").get<std::string>().empty());
    const json& first = piece.at("rounds").at(0);
    EXPECT_EQ(first.at("first"), 1);
    EXPECT_EQ(first.at("words"), "6 fM in den Fadenring");
    EXPECT_EQ(first.at("stitches"), 6);
    int next = 1;
    for (const json& rounds : piece.at("rounds")) {
        EXPECT_EQ(rounds.at("first"), next);
        next = rounds.at("last").get<int>() + 1;
        EXPECT_THAT(said.at("text").get<std::string>(), HasSubstr(rounds.at("words").get<std::string>()));
    }
}

TEST_F(CommandLine, PictureHasTheSizeAskedFor) {
    const ProgramRun run =
        run_program({"image", sample("seal-pup.roundwright"), "-o", path("seal.png"), "--size", "300x200"});
    EXPECT_EQ(run.exit_code, 0) << run.err;
    QFile png(path("seal.png"));
    ASSERT_TRUE(png.open(QIODevice::ReadOnly));
    const QByteArray bytes = png.readAll();
    // Width and height stand big-endian in bytes 16 to 23 (PNG specification, IHDR).
    EXPECT_EQ(bytes.mid(16, 8), QByteArray::fromHex("0000012c000000c8"));
    EXPECT_EQ(run_program({"image", sample("seal-pup.roundwright"), "-o", path("seal.svg")}).exit_code, 0);
    QFile svg(path("seal.svg"));
    ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
    EXPECT_TRUE(svg.readAll().contains("<svg"));
}

TEST_F(CommandLine, MeshesAreWrittenInEachKindOfFile) {
    const auto mesh = [this](const char* name, const QStringList& options) {
        const ProgramRun run =
            run_program(QStringList{"mesh", sample("puffin.roundwright"), "-o", path(name)} + options);
        EXPECT_EQ(run.exit_code, 0) << run.err;
        QFile written(path(name));
        EXPECT_TRUE(written.open(QIODevice::ReadOnly));
        return written.readAll();
    };
    const QStringList coarse{"--smooth", "--triangles", "2000"};
    EXPECT_TRUE(mesh("puffin.glb", coarse).startsWith("glTF"));
    const QByteArray all = mesh("puffin.obj", coarse);
    EXPECT_TRUE(all.contains("Wing"));
    EXPECT_TRUE(all.contains("o Eye\n"));
    const QByteArray beak = mesh("beak.obj", QStringList{"--piece", "Beak"} + coarse);
    EXPECT_FALSE(beak.contains("Wing"));
    // Binary STL: 84 bytes of header and count, 50 a triangle.
    EXPECT_EQ((mesh("puffin.stl", coarse).size() - 84) % 50, 0);
}

TEST_F(CommandLine, PieceWithoutAShapeIsNotDrawn) {
    const QString empty = toy("empty.roundwright", {});
    for (const char* name : {"x.png", "x.svg", "x.glb"}) {
        const char* command = QString::fromLatin1(name).endsWith(QLatin1String("glb")) ? "mesh" : "image";
        const ProgramRun run = run_program({command, empty, "-o", path(name)});
        EXPECT_EQ(run.exit_code, 1);
        EXPECT_THAT(run.err, HasSubstr("Fin has no shape"));
        EXPECT_FALSE(QFile::exists(path(name)));
    }
}

}  // namespace
}  // namespace roundwright
