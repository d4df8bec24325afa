#include "core/toy/edits.h"

#include <gtest/gtest.h>

#include "core/base/limits.h"

namespace roundwright {
namespace {

Round of(int stitches) { return {WorkedEvenly{stitches}, 0, false, ""}; }

Piece piece_of(const std::vector<int>& counts) {
    Piece piece;
    for (const int count : counts) piece.rounds.push_back(of(count));
    return piece;
}

std::vector<int> counts(const Piece& piece) {
    std::vector<int> all;
    for (const Round& round : piece.rounds) {
        const auto* even = std::get_if<WorkedEvenly>(&round.working);
        all.push_back(even == nullptr ? -1 : even->stitches);
    }
    return all;
}

using Counts = std::vector<int>;
using Rounds = std::vector<int>;

TEST(RoundEdits, InsertAndReplace) {
    const Piece piece = piece_of({6, 12, 18});
    const std::vector<Round> two{of(1), of(2)};
    EXPECT_EQ(counts(insert_rounds(piece, 0, two).value), (Counts{1, 2, 6, 12, 18}));
    EXPECT_EQ(counts(insert_rounds(piece, 3, two).value), (Counts{6, 12, 18, 1, 2}));
    EXPECT_EQ(counts(insert_rounds(piece, 99, two).value), (Counts{6, 12, 18, 1, 2}));
    EXPECT_EQ(counts(replace_rounds(piece, 1, 1, two).value), (Counts{6, 1, 2, 18}));
    EXPECT_EQ(counts(replace_rounds(piece, 2, 9, {}).value), (Counts{6, 12}));
}

TEST(RoundEdits, RemoveTakesAnyOrderAndPassesOverWhatIsNotThere) {
    const Piece piece = piece_of({6, 12, 18, 24});
    EXPECT_EQ(counts(remove_rounds(piece, Rounds{3, 0, 3, -1, 9})), (Counts{12, 18}));
    EXPECT_EQ(remove_rounds(piece, Rounds{}), piece);
    EXPECT_EQ(counts(remove_rounds(piece, Rounds{0, 1, 2, 3})), Counts{});
}

TEST(RoundEdits, DuplicatePutsCopiesAfterTheLast) {
    const Piece piece = piece_of({6, 12, 18, 24});
    EXPECT_EQ(counts(duplicate_rounds(piece, Rounds{2, 0}).value), (Counts{6, 12, 18, 6, 18, 24}));
    EXPECT_EQ(duplicate_rounds(piece, Rounds{}).value, piece);
}

TEST(RoundEdits, Move) {
    const Piece piece = piece_of({1, 2, 3, 4});
    EXPECT_EQ(counts(move_rounds(piece, Rounds{1, 2}, -1)), (Counts{2, 3, 1, 4}));
    EXPECT_EQ(counts(move_rounds(piece, Rounds{1, 2}, 1)), (Counts{1, 4, 2, 3}));
    EXPECT_EQ(counts(move_rounds(piece, Rounds{0, 3}, 1)), (Counts{2, 1, 3, 4}));
    EXPECT_EQ(counts(move_rounds(piece, Rounds{0, 1}, -1)), (Counts{1, 2, 3, 4}));
    EXPECT_EQ(counts(move_rounds(piece, Rounds{0, 2}, -1)), (Counts{1, 3, 2, 4}));
    EXPECT_EQ(counts(move_rounds(piece, Rounds{2}, 0)), (Counts{1, 2, 3, 4}));
}

TEST(RoundEdits, SetCountsKeepsTheRest) {
    Piece piece = piece_of({6, 12});
    piece.rounds[1] = {WorkedEvenly{12, StitchKind::double_crochet, LoopPart::front, Spacing::staggered}, 0,
                       true, "neck"};
    const Piece edited = set_counts(piece, Rounds{1}, 15).value;
    const Round expected{WorkedEvenly{15, StitchKind::double_crochet, LoopPart::front, Spacing::staggered}, 0,
                         true, "neck"};
    EXPECT_EQ(edited.rounds[1], expected);
    EXPECT_EQ(edited.rounds[0], piece.rounds[0]);
    EXPECT_EQ(counts(set_counts(piece, Rounds{0}, -4).value), (Counts{1, 12}));
}

TEST(RoundEdits, ChangeGrowsFromTheRoundBelowAsEdited) {
    const Piece piece = piece_of({6, 6, 6, 6, 9});
    const Counts edge{0, 6, 6, 6, 6, 9};
    EXPECT_EQ(counts(change_counts(piece, Rounds{1, 2, 3}, 6, edge).value), (Counts{6, 12, 18, 24, 9}));
    EXPECT_EQ(counts(change_counts(piece, Rounds{4}, 0, edge).value), (Counts{6, 6, 6, 6, 6}));
    EXPECT_EQ(counts(change_counts(piece, Rounds{1, 3}, 6, edge).value), (Counts{6, 12, 6, 12, 9}));
    EXPECT_EQ(counts(change_counts(piece, Rounds{2}, -99, edge).value), (Counts{6, 6, 1, 6, 9}));
}

TEST(RoundEdits, ChangeTakesTheCountOfAWrittenRoundFromTheEdge) {
    Piece piece = piece_of({6, 6, 6});
    piece.rounds[1].working = AsWritten{"inc around"};
    EXPECT_EQ(counts(change_counts(piece, Rounds{2}, 6, Counts{0, 6, 12, 6}).value), (Counts{6, -1, 18}));
}

TEST(RoundEdits, LimitsRefuseAndLeaveThePieceAsItWas) {
    const Piece full = piece_of(Counts(max_rounds_per_piece, 6));
    EXPECT_EQ(replace_rounds(full, 0, 1, std::vector<Round>{of(7)}).refusal, std::nullopt);
    const Edited<Piece> over = insert_rounds(full, 0, std::vector<Round>{of(7)});
    EXPECT_EQ(over.refusal, EditRefusal::too_many_rounds);
    EXPECT_EQ(over.value, full);
    EXPECT_EQ(duplicate_rounds(full, Rounds{0}).refusal, EditRefusal::too_many_rounds);
    const Piece piece = piece_of({6});
    EXPECT_EQ(set_counts(piece, Rounds{0}, 200'000).refusal, std::nullopt);
    EXPECT_EQ(set_counts(piece, Rounds{0}, 200'001).refusal, EditRefusal::too_many_stitches);
    EXPECT_EQ(change_counts(piece, Rounds{0}, 200'001, Counts{0, 6}).refusal, EditRefusal::too_many_stitches);
}

TEST(RoundEdits, FeaturesStayAboveTheirRound) {
    Piece piece = piece_of({6, 12, 18, 24, 24});
    Feature& mouth = piece.features.emplace_back();
    mouth.kind = FeatureKind::stitched_line;
    mouth.round = 2;
    mouth.end_round = 3;
    const auto places = [](const Piece& edited) {
        return std::pair(edited.features[0].round, edited.features[0].end_round);
    };
    const std::vector<Round> two{of(1), of(2)};
    EXPECT_EQ(places(insert_rounds(piece, 0, two).value), std::pair(4, 5));
    EXPECT_EQ(places(insert_rounds(piece, 2, two).value), std::pair(4, 5));
    EXPECT_EQ(places(insert_rounds(piece, 3, two).value), std::pair(2, 5));
    EXPECT_EQ(places(insert_rounds(piece, 4, two).value), std::pair(2, 3));
    EXPECT_EQ(places(remove_rounds(piece, Rounds{0, 4})), std::pair(1, 2));
    EXPECT_EQ(places(remove_rounds(piece, Rounds{2})), std::pair(1, 2));
    EXPECT_EQ(places(remove_rounds(piece, Rounds{0, 1, 2, 3, 4})), std::pair(0, 0));
    EXPECT_EQ(places(replace_rounds(piece, 2, 1, two).value), std::pair(2, 4));
    EXPECT_EQ(places(replace_rounds(piece, 1, 3, two).value), std::pair(2, 2));
    EXPECT_EQ(places(replace_rounds(piece, 1, 3, {}).value), std::pair(0, 0));
}

Toy toy_of(const std::vector<std::string>& yarns, const std::vector<std::size_t>& yarn_of_round) {
    Toy toy;
    for (const std::string& name : yarns) toy.yarns.emplace_back().name = name;
    Piece& piece = toy.pieces.emplace_back();
    for (const std::size_t yarn : yarn_of_round) piece.rounds.emplace_back().yarn = yarn;
    return toy;
}

std::vector<std::string> yarn_of_rounds(const Toy& toy) {
    std::vector<std::string> names;
    for (const Round& round : toy.pieces[0].rounds) names.push_back(toy.yarns.at(round.yarn).name);
    return names;
}

TEST(RoundEdits, WhatIsStuffedStaysInItsRounds) {
    Piece piece = piece_of({6, 12, 18, 24, 24, 24, 18});
    piece.stuffed_rounds = RoundSpan{1, 4};
    const std::vector<Round> two{of(1), of(2)};
    const auto stuffed = [](const Piece& edited) {
        return edited.stuffed_rounds ? Rounds{edited.stuffed_rounds->first, edited.stuffed_rounds->last}
                                     : Rounds{};
    };
    EXPECT_EQ(stuffed(insert_rounds(piece, 0, two).value), (Rounds{3, 6}));
    EXPECT_EQ(stuffed(insert_rounds(piece, 1, two).value), (Rounds{3, 6}));
    EXPECT_EQ(stuffed(insert_rounds(piece, 3, two).value), (Rounds{1, 6}));
    EXPECT_EQ(stuffed(insert_rounds(piece, 5, two).value), (Rounds{1, 4}));
    EXPECT_EQ(stuffed(remove_rounds(piece, Rounds{0})), (Rounds{0, 3}));
    EXPECT_EQ(stuffed(remove_rounds(piece, Rounds{1})), (Rounds{1, 3}));
    EXPECT_EQ(stuffed(remove_rounds(piece, Rounds{4})), (Rounds{1, 3}));
    EXPECT_EQ(stuffed(remove_rounds(piece, Rounds{5, 6})), (Rounds{1, 4}));
    EXPECT_EQ(stuffed(remove_rounds(piece, Rounds{1, 2, 3, 4})), (Rounds{0, 0}));
    EXPECT_EQ(stuffed(replace_rounds(piece, 1, 2, two).value), (Rounds{1, 4}));
    piece.stuffed_rounds.reset();
    EXPECT_EQ(stuffed(insert_rounds(piece, 0, two).value), Rounds{});
}

TEST(YarnEdits, RoundsKeepTheirYarnWhereverItMoves) {
    const Toy toy = toy_of({"grey", "white", "black"}, {0, 1, 2, 1});
    const std::vector<std::string> worked{"grey", "white", "black", "white"};
    for (std::size_t at = 0; at < 4; ++at)
        EXPECT_EQ(yarn_of_rounds(insert_yarn(toy, at, Yarn{})), worked) << at;
    for (std::size_t from = 0; from < 3; ++from) {
        for (std::size_t to = 0; to < 4; ++to) {
            EXPECT_EQ(yarn_of_rounds(move_yarn(toy, from, to)), worked) << from << " to " << to;
        }
    }
    EXPECT_EQ(move_yarn(toy, 0, 2).yarns[2].name, "grey");
    EXPECT_EQ(insert_yarn(toy, 1, Yarn{}).yarns[2].name, "white");
}

TEST(YarnEdits, RemovedYarnIsReplaced) {
    const Toy toy = toy_of({"grey", "white", "black"}, {0, 1, 2, 1});
    EXPECT_EQ(yarn_of_rounds(remove_yarn(toy, 1, 2)),
              (std::vector<std::string>{"grey", "black", "black", "black"}));
    EXPECT_EQ(yarn_of_rounds(remove_yarn(toy, 1, 0)),
              (std::vector<std::string>{"grey", "grey", "black", "grey"}));
    EXPECT_EQ(yarn_of_rounds(remove_yarn(toy, 0, 0)),
              (std::vector<std::string>{"white", "white", "black", "white"}));
    EXPECT_EQ(remove_yarn(toy, 9, 0), toy);
    EXPECT_EQ(remove_yarn(toy_of({"grey"}, {0}), 0, 0).pieces[0].rounds[0].yarn, 0);
}

TEST(PieceEdits, InsertRemoveMove) {
    Toy toy;
    for (const char* name : {"head", "body", "fin"}) toy.pieces.emplace_back().name = name;
    const auto names = [](const Toy& edited) {
        std::string all;
        for (const Piece& piece : edited.pieces) all += piece.name + " ";
        return all;
    };
    Piece tail;
    tail.name = "tail";
    EXPECT_EQ(names(insert_piece(toy, 1, tail).value), "head tail body fin ");
    EXPECT_EQ(names(remove_piece(toy, 0)), "body fin ");
    EXPECT_EQ(names(remove_piece(toy, 7)), "head body fin ");
    EXPECT_EQ(names(move_piece(toy, 0, 2)), "body fin head ");
    EXPECT_EQ(names(move_piece(toy, 2, 0)), "fin head body ");
    toy.pieces.resize(max_pieces);
    EXPECT_EQ(insert_piece(toy, 0, tail).refusal, EditRefusal::too_many_pieces);
}

}  // namespace
}  // namespace roundwright
