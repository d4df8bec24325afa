#include <gtest/gtest.h>
#include <random>

#include "core/document/json_document.h"
#include "tests/core/document/random_toy.h"

namespace roundwright {
namespace {

TEST(Document, RandomToysComeBackTheSameAndInTheSameBytes) {
    std::mt19937 random(20240611);
    for (int i = 0; i < 2'000; ++i) {
        const Toy toy = test::random_toy(random);
        const std::string text = write_document(toy);
        const ReadDocument read = read_document(text);
        EXPECT_TRUE(read.unread.empty()) << text;
        ASSERT_EQ(read.toy, toy) << text;
        ASSERT_EQ(write_document(read.toy), text);
        ASSERT_EQ(read.version, document_version);
        ASSERT_FALSE(read.newer);
    }
}

TEST(Document, RandomToysBringBackKeysThatAreNotKnown) {
    std::mt19937 random(31);
    for (int i = 0; i < 2'000; ++i) {
        const Toy toy = test::with_unknown_keys(test::random_toy(random), random);
        const std::string text = write_document(toy);
        const ReadDocument read = read_document(text);
        ASSERT_EQ(read.toy, toy) << text;
        ASSERT_EQ(write_document(read.toy), text);
    }
}

TEST(Document, IsWrittenInAFixedOrderOneRoundALine) {
    Toy toy;
    toy.title = "Pup";
    toy.yarns.resize(1);
    toy.yarns[0].name = "Foam";
    toy.yarns[0].colour = {250, 248, 240};
    Piece piece;
    piece.name = "Head";
    piece.rounds = {Round{WorkedEvenly{6}, 0, true, ""}, Round{AsWritten{"inc around"}, 0, false, "twelve"}};
    toy.pieces.push_back(piece);
    EXPECT_EQ(write_document(toy), R"({
  "format": "roundwright",
  "version": 2,
  "title": "Pup",
  "designer": "",
  "notes": "",
  "hook_mm": 3.5,
  "gauge": null,
  "yarns": [
    {"name":"Foam","colour":"#faf8f0","weight":"light","brushed":false}
  ],
  "pieces": [
    {
      "id": 1,
      "name": "Head",
      "start": {"kind":"magic_ring"},
      "end": "left_open",
      "joining": "spiral",
      "area_stretch": 0.04,
      "starts_at_top": false,
      "make": 1,
      "rounds": [
        {"stitches":6,"lies_flat":true},
        {"words":"inc around","note":"twelve"}
      ]
    }
  ]
}
)");
}

TEST(Document, NotesForPrintAndNotesToOneselfAreTwoFields) {
    // What an older program wrote as notes was printed, and stays so.
    const Toy old =
        read_document(R"({"format":"roundwright","version":1,"notes":"From the harbour.","hook_mm":4,
        "yarns":[],"pieces":[]})")
            .toy;
    EXPECT_EQ(old.notes, "From the harbour.");
    EXPECT_EQ(old.private_notes, "");
    Toy toy = old;
    EXPECT_EQ(write_document(toy).find("private_notes"), std::string::npos);
    toy.private_notes = "The nose is too big.";
    const std::string text = write_document(toy);
    EXPECT_NE(text.find("\"private_notes\": \"The nose is too big.\""), std::string::npos) << text;
    EXPECT_EQ(read_document(text).toy, toy);
}

TEST(Document, CountsThatWordsWereWrittenForStandAsTheyAreTyped) {
    Toy toy;
    toy.text.assembly = "Sew it on at round 3.";
    toy.text.written_for = {{PieceId{1}, {6, 12, 18, 18, 18}}, {PieceId{4}, {}}};
    const std::string text = write_document(toy);
    EXPECT_NE(text.find("{\"piece\":1,\"stitches\":\"6, 12, 18x3\"}"), std::string::npos) << text;
    EXPECT_EQ(read_document(text).toy, toy);
    try {
        (void)read_document(R"({"format":"roundwright","version":2,"hook_mm":4,"yarns":[],"pieces":[],
            "text":{"written_for":[{"piece":1,"stitches":"6, many"}]}})");
        FAIL();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.path(), "/text/written_for/0/stitches");
    }
}

TEST(Document, TextThatIsNotUtf8IsWrittenReadably) {
    Toy toy;
    toy.title = "seal \xff pup";
    EXPECT_EQ(read_document(write_document(toy)).toy.title, "seal \xEF\xBF\xBD pup");
}

TEST(Document, SparseDocumentTakesTheUsualValues) {
    const Toy toy = read_document(R"({"format":"roundwright","version":1,"hook_mm":4,"yarns":[],"pieces":[
        {"name":"Fin","start":{"kind":"magic_ring"},"end":"left_open","rounds":[{"stitches":6}]}]})")
                        .toy;
    Toy expected;
    expected.hook_mm = 4;
    Piece fin;
    fin.name = "Fin";
    fin.rounds = {Round{WorkedEvenly{6}, 0, false, ""}};
    expected.pieces = {fin};
    EXPECT_EQ(toy, expected);
}

TEST(Document, NewerVersionIsReadForLookingAt) {
    const ReadDocument read = read_document(
        R"({"format":"roundwright","version":7,"hook_mm":4,"yarns":[],"pieces":[],"tides":{"high":true}})");
    EXPECT_TRUE(read.newer);
    EXPECT_EQ(read.version, 7);
    EXPECT_EQ(read.toy.hook_mm, 4);
}

TEST(Document, NewerVersionThatCannotBeReadSaysThatItIsNewer) {
    try {
        (void)read_document(R"({"format":"roundwright","version":7,"hook_mm":"E","yarns":[],"pieces":[]})");
        FAIL();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.path(), "/hook_mm");
        EXPECT_NE(std::string(error.what()).find("newer"), std::string::npos);
    }
}

}  // namespace
}  // namespace roundwright
