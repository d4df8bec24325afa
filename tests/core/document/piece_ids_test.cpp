#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/document/json_document.h"

namespace roundwright {
namespace {

using nlohmann::json;

std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::string piece(const std::string& id, const std::string& name) {
    return "{" + id + R"("name":")" + name +
           R"(","start":{"kind":"magic_ring"},"end":"left_open","rounds":[{"stitches":6}]})";
}

std::string document(const std::string& pieces, int version = 2, const std::string& more = {}) {
    return R"({"format":"roundwright","version":)" + std::to_string(version) + R"(,"hook_mm":4,"yarns":[],)" +
           more + R"("pieces":[)" + pieces + "]}";
}

std::vector<PieceId> ids_of(const Toy& toy) {
    std::vector<PieceId> ids;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) ids.push_back(toy.pieces.id(i));
    return ids;
}

using Ids = std::vector<PieceId>;
using Mended = std::vector<MendedId>;

TEST(PieceIdsInFiles, SurviveSaving) {
    Toy toy;
    for (const char* name : {"Head", "Body", "Fin"}) toy.pieces.emplace_back().name = name;
    toy.pieces.move(2, 0);
    toy.pieces.erase(toy.pieces.cbegin() + 1);
    ASSERT_EQ(ids_of(toy), (Ids{PieceId{3}, PieceId{2}}));
    const ReadDocument read = read_document(write_document(toy));
    EXPECT_EQ(read.toy, toy);
    EXPECT_EQ(ids_of(read.toy), ids_of(toy));
    EXPECT_EQ(read.mended, Mended{});
}

TEST(PieceIdsInFiles, AFileOfVersion1NumbersItsPieces) {
    const ReadDocument read = read_document(document(piece("", "Head") + "," + piece("", "Fin"), 1));
    EXPECT_EQ(read.version, 1);
    EXPECT_EQ(ids_of(read.toy), (Ids{PieceId{1}, PieceId{2}}));
    EXPECT_EQ(read.mended, Mended{});
    EXPECT_TRUE(read.unread.empty());
}

TEST(PieceIdsInFiles, WhatIsWrongIsReportedWithItsPlaceAndMended) {
    const std::string good = piece(R"("id":5,)", "Head");
    struct Case {
        std::string id;
        IdFault fault;
    };
    for (const Case& wrong :
         {Case{"", IdFault::missing}, Case{R"("id":null,)", IdFault::missing},
          Case{R"("id":5,)", IdFault::taken}, Case{R"("id":0,)", IdFault::no_number},
          Case{R"("id":-3,)", IdFault::no_number}, Case{R"("id":1.5,)", IdFault::no_number},
          Case{R"("id":"Fin",)", IdFault::no_number}, Case{R"("id":[5],)", IdFault::no_number},
          Case{R"("id":1000000001,)", IdFault::no_number}, Case{R"("id":1e300,)", IdFault::no_number}}) {
        const ReadDocument read =
            read_document(document(good + "," + piece(wrong.id, "Fin") + "," + piece(R"("id":6,)", "Ear")));
        EXPECT_EQ(read.mended, (Mended{{"/pieces/1/id", wrong.fault}})) << wrong.id;
        EXPECT_EQ(ids_of(read.toy), (Ids{PieceId{5}, PieceId{7}, PieceId{6}})) << wrong.id;
        EXPECT_TRUE(read.unread.empty()) << wrong.id;
        ASSERT_EQ(read.toy.pieces.size(), 3u);
        EXPECT_EQ(read.toy.pieces[1].name, "Fin");
        EXPECT_EQ(read.toy.pieces[1].rounds.size(), 1u);
        EXPECT_EQ(read_document(write_document(read.toy)).mended, Mended{}) << wrong.id;
    }
}

TEST(PieceIdsInFiles, TheLargestLeavesRoomForMore) {
    const ReadDocument read = read_document(document(piece(R"("id":1000000000,)", "Head")));
    EXPECT_EQ(read.mended, Mended{});
    Toy toy = read.toy;
    toy.pieces.emplace_back();
    toy.pieces.emplace_back();
    EXPECT_EQ(ids_of(toy), (Ids{largest_piece_id, PieceId{1}, PieceId{2}}));
    EXPECT_EQ(read_document(write_document(toy)).mended, Mended{});
}

TEST(PieceIdsInFiles, WordsOfVersion1FollowTheirPieceById) {
    const auto text = [](const std::string& written_for) {
        return R"("text":{"assembly":"Sew.","written_for":[)" + written_for + "]},";
    };
    const std::string then =
        R"({"piece":"Fin","stitches":"6"},{"piece":"Fin","stitches":"6, 12"},{"piece":"Gone","stitches":"6"})";
    const ReadDocument read = read_document(
        document(piece("", "Head") + "," + piece("", "Fin") + "," + piece("", "Fin"), 1, text(then)));
    EXPECT_EQ(read.toy.text.written_for,
              (std::vector<PieceThen>{{PieceId{2}, {6, 12}}, {PieceId{3}, {6, 12}}}));
    EXPECT_TRUE(read.unread.empty());
    EXPECT_THROW(
        (void)read_document(document(piece("", "Head"), 1, text(R"({"piece":3,"stitches":"6, many"})"))),
        DocumentError);
    EXPECT_THROW((void)read_document(document(piece("", "Head"), 1, text("7"))), DocumentError);
}

/// What stands in a file, but for what version 2 added.
json as_version_1(json document) {
    document["version"] = 1;
    for (json& each : document["pieces"]) each.erase("id");
    return document;
}

TEST(PieceIdsInFiles, SamplesOfVersion1GiveTheSameToy) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(FILES_OF_VERSION_1)) {
        const std::string old = contents(entry.path());
        const ReadDocument read = read_document(old);
        EXPECT_EQ(read.version, 1);
        EXPECT_FALSE(read.newer);
        EXPECT_TRUE(read.unread.empty());
        EXPECT_EQ(read.mended, Mended{});
        const std::string written = write_document(read.toy);
        EXPECT_EQ(as_version_1(json::parse(written)), json::parse(old)) << entry.path();
        EXPECT_EQ(read_document(written).toy, read.toy) << entry.path();
        ++files;
    }
    EXPECT_EQ(files, 3);
}

}  // namespace
}  // namespace roundwright
