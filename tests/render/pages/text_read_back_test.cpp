#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

#include "core/document/json_document.h"
#include "core/language/pattern/read_pattern.h"
#include "core/rounds/piece_graph.h"
#include "render/pages/text_export.h"
#include "tests/core/language/pattern/random_pattern_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::render {
namespace {

// The whole pattern with its sections (materials, gauge, abbreviations, assembly, notes) is read back: the
// pieces of the toy, and no others. Which yarn is which stands in other words there, so stitches are compared
// without their yarns.

StitchGraph without_yarns(StitchGraph graph) {
    for (GraphRound& round : graph.rounds)
        for (GraphStitch& made : round.stitches) made.stitch.yarn = 0;
    return graph;
}

std::string difference(const Piece& piece, const Piece& read) {
    if (read.name != piece.name) return "name " + read.name + " of " + piece.name;
    if (read.make != piece.make) return "make";
    if (read.start != piece.start) return "start";
    if (read.end != piece.end) return "end";
    if (read.joining != piece.joining) return "joining";
    if (read.starts_at_top != piece.starts_at_top) return "top";
    if (read.area_stretch != piece.area_stretch) return "stuffing";
    const bool same = without_yarns(piece_graph(read).graph) == without_yarns(piece_graph(piece).graph);
    return same ? "" : "stitches";
}

::testing::AssertionResult reads_back(const Toy& toy, Terms terms, TextForm form) {
    PatternOptions options;
    options.terms = terms;
    const std::string text = pattern_text(toy, options, form).toStdString();
    const ReadPattern read = read_pattern(text);
    auto failure = ::testing::AssertionFailure() << text;
    for (const ReadDiagnostic& d : read.diagnostics)
        failure << read_code_name(d.code) << " at " << d.where.line << ":" << d.where.column << "\n";
    for (const Piece& piece : read.pieces) failure << "piece " << piece.name << "\n";
    if (!read.proved() || read.terms != terms || read.pieces.size() != toy.pieces.size()) return failure;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        const std::string found = difference(toy.pieces[i], read.pieces[i]);
        if (!found.empty()) return failure << "differs in " << found << " of piece " << i + 1 << "\n";
    }
    return ::testing::AssertionSuccess();
}

void expect_read_back(const Toy& toy, const std::string& what) {
    for (const Terms terms : {Terms::us, Terms::uk})
        for (const TextForm form : {TextForm::plain, TextForm::markdown})
            EXPECT_TRUE(reads_back(toy, terms, form)) << what;
}

TEST(TextReadBack, GivesThePiecesOfEachSample) {
    for (const char* name : {"puffin", "seal-pup", "starfish"}) {
        std::ifstream file(std::string(SAMPLES) + "/" + name + ".roundwright");
        ASSERT_TRUE(file) << name;
        std::ostringstream json;
        json << file.rdbuf();
        expect_read_back(read_document(json.str()).toy, name);
    }
}

TEST(TextReadBack, GivesThePiecesOfRandomToys) {
    const auto count = static_cast<unsigned>(roundwright::testing::random_cases(2'000));
    for (unsigned seed = 0; seed < count && !HasFailure(); ++seed)
        expect_read_back(roundwright::testing::RandomPatternToy(seed).toy(), "seed " + std::to_string(seed));
}

TEST(TextReadBack, GivesStuffingInPartAndPellets) {
    Toy toy = roundwright::testing::RandomPatternToy(3).toy();
    toy.pieces.resize(1);
    Piece& piece = toy.pieces[0];
    while (piece.rounds.size() < 4) piece.rounds.push_back(piece.rounds.back());
    piece.make = 1;
    piece.weight_grams = 40;
    for (const double stretch : {light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch}) {
        piece.area_stretch = stretch;
        piece.stuffed_rounds = RoundSpan{0, 2};
        for (const Terms terms : {Terms::us, Terms::uk})
            for (const TextForm form : {TextForm::plain, TextForm::markdown}) {
                PatternOptions options;
                options.terms = terms;
                const std::string text = pattern_text(toy, options, form).toStdString();
                EXPECT_NE(text.find("Pellets: 40 g of plastic pellets"), std::string::npos) << text;
                const ReadPattern read = read_pattern(text);
                ASSERT_EQ(read.pieces.size(), 1u) << text;
                EXPECT_EQ(read.pieces[0].weight_grams, 40) << text;
                EXPECT_EQ(read.pieces[0].stuffed_rounds, piece.stuffed_rounds) << text;
                EXPECT_EQ(read.pieces[0].area_stretch, stretch) << text;
            }
    }
}

TEST(TextReadBack, OddNotesArePartOfNoPiece) {
    const auto count = static_cast<unsigned>(roundwright::testing::random_cases(500));
    for (unsigned seed = 0; seed < count && !HasFailure(); ++seed) {
        Toy toy = roundwright::testing::RandomPatternToy(seed).toy();
        roundwright::testing::RandomPiece random(seed);
        for (Piece& piece : toy.pieces) {
            // What notes say of stuffing, joining and ends would be heard.
            const std::vector<std::string> odd{"Rnd 5: odd note", "(12)", "Head", "Legs (make 2)",
                                               "3. Sew on."};
            for (Round& round : piece.rounds)
                round.note = random.chance(40) ? odd[static_cast<std::size_t>(random.between(0, 4))] : "";
        }
        expect_read_back(toy, "seed " + std::to_string(seed));
    }
}

}  // namespace
}  // namespace roundwright::render
