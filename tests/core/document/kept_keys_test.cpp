#include <gtest/gtest.h>
#include <string>

#include "core/document/json_document.h"
#include "core/toy/edits.h"

namespace roundwright {
namespace {

const std::string newer = R"({"format":"roundwright","version":2,"tides":{"high":[1, 2.50,1e999]},"hook_mm":4,
 "gauge":{"from":"estimate","weight":"light","washed":true},
 "yarns":[{"name":"Foam","colour":"#faf8f0","weight":"light","dye":{"lot":12345678901234567890123}}],
 "text":{"mood":"calm","written_for":[{"piece":1,"stitches":"6","page":3}]},"making":{"hours":3},
 "pieces":[{"id":1,"felted":false,"name":"Head","start":{"kind":"magic_ring","knot":"double"},"end":"left_open",
   "worked":{"rounds":0,"stitches":0,"by":"me"},
   "features":[{"kind":"safety_eye","pair":true,"round":0,"stitches_apart":6,"width_mm":8,"glow":null}],
   "rounds":[{"stitches":6,"bead":["a b"]},{"stitches":12},{"words":"inc around","turn":1}]}]})";

Toy toy_of_newer() { return read_document(newer).toy; }

bool says(const Toy& toy, const std::string& text) {
    return write_document(toy).find(text) != std::string::npos;
}

TEST(KeptKeys, AreWrittenBackIntoTheirObjects) {
    const Toy toy = toy_of_newer();
    for (const char* there :
         {R"("tides": {"high":[1,2.50,1e999]})",
          R"("gauge": {"from":"estimate","weight":"light","washed":true})",
          R"("brushed":false,"dye":{"lot":12345678901234567890123}})", R"("mood": "calm")",
          R"({"piece":1,"stitches":"6","page":3})", R"("making": {"hours":3})", R"("felted": false)",
          R"("start": {"kind":"magic_ring","knot":"double"})",
          R"("worked": {"rounds":0,"stitches":0,"by":"me"})", R"("height_mm":8.0,"glow":null})",
          R"({"stitches":6,"bead":["a b"]})", R"({"words":"inc around","turn":1})"})
        EXPECT_TRUE(says(toy, there)) << there << "\n" << write_document(toy);
    EXPECT_EQ(read_document(write_document(toy)).toy, toy);
}

TEST(KeptKeys, AreNamedAsNotUnderstood) {
    const ReadDocument read = read_document(newer);
    ASSERT_EQ(read.unread.size(), 12u);
    EXPECT_EQ(read.unread.front().place, "/tides");
    EXPECT_EQ(read.unread.back().place, "/pieces/0/rounds/2/turn");
}

TEST(KeptKeys, MoveWithTheirRound) {
    const Toy toy = toy_of_newer();
    const Piece& piece = toy.pieces[0];
    const Round plain{WorkedEvenly{9}, 0, false, ""};
    const Piece longer = insert_rounds(piece, 0, std::vector{plain}).value;
    EXPECT_TRUE(longer.rounds[0].kept.empty());
    EXPECT_EQ(longer.rounds[1].kept.json(), R"({"bead":["a b"]})");
    EXPECT_EQ(longer.rounds[3].kept, piece.rounds[2].kept);
    EXPECT_EQ(remove_rounds(piece, std::vector{0}).rounds[1].kept, piece.rounds[2].kept);
    EXPECT_EQ(move_rounds(piece, std::vector{0}, 1).rounds[1].kept, piece.rounds[0].kept);
    EXPECT_EQ(duplicate_rounds(piece, std::vector{0}).value.rounds[1].kept, piece.rounds[0].kept);
    EXPECT_EQ(set_counts(piece, std::vector{0}, 7).value.rounds[0].kept, piece.rounds[0].kept);
    EXPECT_EQ(longer.kept, piece.kept);
}

TEST(KeptKeys, ArePartOfTheToyAndCopiedWithAPiece) {
    Toy toy = toy_of_newer();
    Toy other = toy;
    other.pieces[0].rounds[0].kept = {};
    EXPECT_NE(other, toy);
    toy.pieces.insert(toy.pieces.cend(), Piece(std::as_const(toy).pieces[0]));
    EXPECT_EQ(toy.pieces[1], toy.pieces[0]);
    const std::string text = write_document(toy);
    EXPECT_NE(text.find("felted"), text.rfind("felted"));
}

TEST(KeptKeys, GiveWayToTheObjectsOwnKeys) {
    // "stitches" means nothing beside "words"; in a round worked evenly it is the count.
    Toy toy = read_document(R"({"format":"roundwright","version":2,"hook_mm":4,"yarns":[],"pieces":[{"id":1,
        "name":"Head","start":{"kind":"magic_ring"},"end":"left_open",
        "rounds":[{"words":"inc around","stitches":12}]}]})")
                  .toy;
    EXPECT_TRUE(says(toy, R"({"words":"inc around","stitches":12})"));
    toy.pieces[0].rounds[0].working = WorkedEvenly{7};
    EXPECT_TRUE(says(toy, R"({"stitches":7})")) << write_document(toy);
}

TEST(KeptKeys, OfANewerFormatAreReadToo) {
    std::string text = newer;
    text.replace(text.find("\"version\":2"), 11, "\"version\":3");
    const ReadDocument read = read_document(text);
    EXPECT_TRUE(read.newer);
    EXPECT_EQ(read.toy, toy_of_newer());
}

TEST(KeptKeys, MoreThanAnyProgramPutsInAreRefused) {
    std::string rounds;
    for (int i = 0; i < 2'000; ++i) {
        rounds += (i == 0 ? "" : ",") + std::string(R"({"stitches":6)");
        for (int key = 0; key < 401; ++key) rounds += ",\"k" + std::to_string(key) + "\":1";
        rounds += "}";
    }
    try {
        (void)read_document(
            R"({"format":"roundwright","version":2,"hook_mm":4,"yarns":[],"pieces":[{"id":1,"name":"",
        "start":{"kind":"magic_ring"},"end":"left_open","rounds":[)" +
            rounds + "]}]}");
        ADD_FAILURE();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.fault(), DocumentFault::too_many_values);
        EXPECT_GT(error.line(), 0);
    }
}

}  // namespace
}  // namespace roundwright
