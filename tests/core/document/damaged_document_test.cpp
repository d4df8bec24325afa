#include <gtest/gtest.h>
#include <random>
#include <string>
#include <vector>

#include "core/base/limits.h"
#include "core/document/json_document.h"
#include "core/document/json_parser.h"
#include "tests/core/document/random_toy.h"

namespace roundwright {
namespace {

struct Damage {
    std::string find;
    std::string replace;
    std::string place;
    std::string says;
};

const std::string whole = R"({"format": "roundwright", "version": 1, "title": "Pup", "hook_mm": 3.5,
 "gauge": {"from": "circle", "rounds": 5, "increases": 6, "across_mm": 50, "lie": "flat"},
 "yarns": [{"name": "Foam", "colour": "#faf8f0", "weight": "light", "metres_per_100_g": 200, "brushed": false}],
 "pieces": [{"name": "Head", "start": {"kind": "chain_ring", "chains": 4}, "end": "drawn_closed", "make": 1,
             "joining": "spiral", "area_stretch": 0.04, "worked": {"rounds": 1, "stitches": 2, "seconds_of_round": [9]},
             "rounds": [{"stitches": 6, "yarn": 0, "stitch": "chain", "loop": "back", "spacing": "stacked"},
                        {"words": "inc around"}]}]})";

std::string damaged(const Damage& damage) {
    std::string text = whole;
    const auto at = text.find(damage.find);
    EXPECT_NE(at, std::string::npos) << damage.find;
    return text.replace(at, damage.find.size(), damage.replace);
}

DocumentError error_of(const std::string& text) {
    try {
        (void)read_document(text);
    } catch (const DocumentError& error) {
        return error;
    }
    ADD_FAILURE() << text << " was read";
    return {DocumentFault::wrong_value, "", ""};
}

TEST(DamagedDocument, WholeOneIsRead) { EXPECT_EQ(read_document(whole).toy.title, "Pup"); }

// Each with its place, and the line of it.
TEST(DamagedDocument, OfSeveralMeasurementsEachIsNamedWithItsPlace) {
    const std::string several = R"("gauge": {"from": "several", "measurements": [
  {"from": "circle", "rounds": 5, "increases": 6, "across_mm": 50, "lie": "flat", "name": "grey", "counts": false},
  {"from": "finished_piece", "piece": "Head", "measured_on": "2026-05-03",
   "measured": [{"of": "width", "mm": 82}, {"of": "circumference_of_round", "round": 8, "mm": 250, "error_mm": 3}],
   "evidence": [{"of_width": 0.6, "of_height": 0.8, "value": 1.2, "deviation": 0.02}]}]})";
    const std::string circle =
        whole.substr(whole.find(R"("gauge")"), whole.find(R"("yarns")") - whole.find(R"("gauge")"));
    const auto with = [&](const std::string& find, const std::string& replace) {
        std::string gauge = several;
        gauge.replace(gauge.find(find), find.size(), replace);
        return damaged({circle, gauge + ",", "", ""});
    };
    const Toy toy = read_document(with("grey", "grey")).toy;
    const auto& read = std::get<SeveralGauge>(toy.gauge).measurements;
    ASSERT_EQ(read.size(), 2U);
    EXPECT_FALSE(read[0].counts);
    EXPECT_EQ(read[0].name, "grey");
    EXPECT_EQ(read[1].measured_on, "2026-05-03");
    const auto& finished = std::get<FinishedPieceGauge>(read[1].what);
    EXPECT_EQ(finished.measured[0], (Measured{MeasuredOf::width, 82, 2, 0}));
    EXPECT_EQ(finished.measured[1], (Measured{MeasuredOf::circumference_of_round, 250, 3, 7}));
    EXPECT_EQ(finished.lines[0], (GaugeLine{0.6, 0.8, 1.2, 0.02}));

    const std::vector<Damage> damages{
        {R"({"from": "circle")", R"({"from": "estimate")", "/gauge/measurements/0/from",
         "one of swatch circle given finished_piece"},
        {R"("counts": false)", R"("counts": 0)", "/gauge/measurements/0/counts", "true or false"},
        {R"("of": "width")", R"("of": "depth")", "/gauge/measurements/1/measured/0/of",
         "one of width height"},
        {R"("round": 8)", R"("round": 0)", "/gauge/measurements/1/measured/1/round", "from 1"},
        {R"("deviation": 0.02)", R"("deviation": 0)", "/gauge/measurements/1/evidence/0/deviation",
         "a number from"},
        {R"("of_width": 0.6, )", "", "/gauge/measurements/1/evidence/0/of_width", "missing"},
        {R"("value": 1.2)", R"("value": 1e9)", "/gauge/measurements/1/evidence/0/value", "from -100 to 100"}};
    for (const Damage& damage : damages) {
        const DocumentError error = error_of(with(damage.find, damage.replace));
        EXPECT_EQ(error.path(), damage.place);
        EXPECT_NE(std::string(error.what()).find(damage.says), std::string::npos) << error.what();
        EXPECT_GE(error.line(), 2) << damage.find;
    }
}

TEST(DamagedDocument, MoreMeasurementsThanAToyMayHoldAreRefused) {
    Toy toy;
    SeveralGauge several;
    several.measurements.resize(most_gauge_measurements);
    toy.gauge = several;
    EXPECT_EQ(read_document(write_document(toy)).toy, toy);
    several.measurements.emplace_back();
    toy.gauge = several;
    EXPECT_EQ(error_of(write_document(toy)).path(), "/gauge/measurements");
}

TEST(DamagedDocument, EveryDamageIsNamedWithItsPlace) {
    const std::vector<Damage> damages{
        {R"("format": "roundwright", )", "", "", "not a toy"},
        {R"("roundwright")", R"("else")", "", "not a toy"},
        {R"("version": 1)", R"("version": 0)", "/version", "whole number"},
        {R"("version": 1)", R"("version": 1.5)", "/version", "whole number"},
        {R"("version": 1)", R"("version": "1")", "/version", "whole number"},
        {R"("title": "Pup")", R"("title": 3)", "/title", "a text, found 3"},
        {R"("hook_mm": 3.5)", R"("hook_mm": "E")", "/hook_mm", "a number from 0.5 to 50, found \"E\""},
        {R"("hook_mm": 3.5)", R"("hook_mm": 0)", "/hook_mm", "from 0.5"},
        {R"("hook_mm": 3.5)", R"("hook_mm": -1e300)", "/hook_mm", "from 0.5"},
        {R"("hook_mm": 3.5)", R"("hook_mm": 1e999)", "/hook_mm", "a number from 0.5 to 50, found 1e999"},
        {R"("hook_mm": 3.5)", R"("hook_mm": 1e-999)", "/hook_mm", "from 0.5 to 50, found 1e-999"},
        {R"("hook_mm": 3.5)", R"("hook_mm": NaN)", "", "not JSON"},
        {R"("hook_mm": 3.5)", R"("hook_mm": -Infinity)", "", "not JSON"},
        {R"("hook_mm": 3.5)", R"("hook_mm": null)", "/hook_mm", "missing"},
        {R"("circle")", R"("guess")", "/gauge/from", "one of swatch circle estimate given"},
        {R"("rounds": 5)", R"("rounds": 5.5)", "/gauge/rounds", "whole number"},
        {R"("across_mm": 50)", R"("across_mm": -50)", "/gauge/across_mm", "a number from 0"},
        {R"("lie": "flat")", R"("lie": "bent")", "/gauge/lie", "one of flat cups ruffles, found \"bent\""},
        {R"("#faf8f0")", R"("white")", "/yarns/0/colour", "#rrggbb"},
        {R"("#faf8f0")", R"("#faf8g0")", "/yarns/0/colour", "#rrggbb"},
        {R"("weight": "light")", R"("weight": 3)", "/yarns/0/weight", "a text"},
        {R"("metres_per_100_g": 200)", R"("metres_per_100_g": [])", "/yarns/0/metres_per_100_g",
         "found a list"},
        {R"("brushed": false)", R"("brushed": 0)", "/yarns/0/brushed", "true or false"},
        {R"("name": "Head", )", "", "/pieces/0/name", "missing"},
        {R"("chain_ring")", R"("knot")", "/pieces/0/start/kind", "one of magic_ring"},
        {R"("chains": 4)", R"("chains": 0)", "/pieces/0/start/chains", "from 1"},
        {R"("drawn_closed")", R"("shut")", "/pieces/0/end", "one of drawn_closed left_open"},
        {R"("make": 1)", R"("make": 1001)", "/pieces/0/make", "from 1 to 1000"},
        {R"("spiral")", R"("helix")", "/pieces/0/joining", "one of spiral joined rows"},
        {R"("area_stretch": 0.04)", R"("area_stretch": 4)", "/pieces/0/area_stretch", "from 0 to 0.5"},
        {R"("rounds": 1,)", R"("rounds": -1,)", "/pieces/0/worked/rounds", "from 0"},
        {R"([9])", R"([9, "x"])", "/pieces/0/worked/seconds_of_round/1", "a number"},
        {R"("stitches": 6)", R"("stitches": 200001)", "/pieces/0/rounds/0/stitches", "from 1 to 200000"},
        {R"("stitches": 6)", R"("stitches": 0)", "/pieces/0/rounds/0/stitches", "from 1"},
        {R"("stitches": 6, )", "", "/pieces/0/rounds/0/stitches", "missing"},
        {R"("yarn": 0)", R"("yarn": 1)", "/pieces/0/rounds/0/yarn", "from 0 to 0, found 1"},
        {R"("stitch": "chain")", R"("stitch": "knot")", "/pieces/0/rounds/0/stitch", "one of chain"},
        {R"("loop": "back")", R"("loop": "top")", "/pieces/0/rounds/0/loop", "one of both front back"},
        {R"("spacing": "stacked")", R"("spacing": "odd")", "/pieces/0/rounds/0/spacing", "one of stacked"},
        {R"({"words": "inc around"})", R"({"words": 5})", "/pieces/0/rounds/1/words", "a text"},
        {R"({"words": "inc around"})", "null", "/pieces/0/rounds/1", "an object"},
        {R"({"words": "inc around"})", R"({"words": "a", "lies_flat": "yes"})",
         "/pieces/0/rounds/1/lies_flat", "true"},
    };
    for (const Damage& damage : damages) {
        try {
            (void)read_document(damaged(damage));
            ADD_FAILURE() << damage.replace << " was read";
        } catch (const DocumentError& error) {
            EXPECT_EQ(error.path(), damage.place) << damage.replace;
            EXPECT_NE(std::string(error.what()).find(damage.says), std::string::npos)
                << damage.replace << ": " << error.what();
            EXPECT_EQ(error.line() > 0 && error.column() > 0, error.fault() != DocumentFault::not_a_toy)
                << damage.replace;
        }
    }
}

std::string with_rounds(std::size_t count) {
    Toy toy;
    toy.pieces.resize(1);
    toy.pieces[0].rounds.resize(count);
    return write_document(toy);
}

TEST(DamagedDocument, MostRoundsAreReadAndOneMoreIsNot) {
    EXPECT_EQ(read_document(with_rounds(max_rounds_per_piece)).toy.pieces[0].rounds.size(),
              max_rounds_per_piece);
    try {
        (void)read_document(with_rounds(max_rounds_per_piece + 1));
        ADD_FAILURE();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.path(), "/pieces/0/rounds");
        EXPECT_STREQ(error.what(), "expected at most 2000 entries, found 2001");
    }
}

TEST(DamagedDocument, MostPiecesAreReadAndOneMoreIsNot) {
    Toy toy;
    toy.pieces.resize(max_pieces);
    EXPECT_EQ(read_document(write_document(toy)).toy.pieces.size(), max_pieces);
    toy.pieces.emplace_back();
    EXPECT_THROW((void)read_document(write_document(toy)), DocumentError);
}

TEST(DamagedDocument, OversizedTextIsRefusedUnparsed) {
    std::string text = whole;
    text.resize(max_file_bytes, ' ');
    EXPECT_EQ(read_document(text).toy.title, "Pup");
    text += ' ';
    EXPECT_THROW((void)read_document(text), DocumentError);
}

TEST(DamagedDocument, DeepNestingIsRefusedWithItsByte) {
    const auto nested = [](int depth) {
        const auto count = static_cast<std::size_t>(depth);
        return std::string(count, '[') + std::string(count, ']');
    };
    EXPECT_NO_THROW((void)parse_json(nested(deepest_nesting)));
    try {
        (void)parse_json(nested(deepest_nesting + 1));
        ADD_FAILURE();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.fault(), DocumentFault::too_deep);
        EXPECT_EQ(error.place(), (LineAndColumn{1, deepest_nesting + 1}));
    }
    EXPECT_NO_THROW(
        (void)parse_json("{\"words\": \"" + std::string(100, '[') + "\\\"" + std::string(100, '{') + "\"}"));
    EXPECT_THROW((void)read_document(std::string(1'000'000, '[')), DocumentError);
    EXPECT_THROW((void)read_document(std::string(1'000'000, '{')), DocumentError);
}

TEST(DamagedDocument, WhatIsNoToyIsToldFromADamagedOne) {
    for (const char* other :
         {"", "Rnd 1: 6 sc", "%PDF-1.4", "\x89PNG", "[1, 2]", "7", "{}", "{\"format\": 3}",
          "{\"format\": \"else\", \"version\": 1}", "\xEF\xBB\xBF", "[[[[["})
        EXPECT_EQ(error_of(other).fault(), DocumentFault::not_a_toy) << other;
    EXPECT_EQ(error_of(std::string(1'000, '[')).fault(), DocumentFault::not_a_toy);
    const DocumentError torn = error_of(whole.substr(0, whole.find("\"weight\"") + 20));
    EXPECT_EQ(torn.fault(), DocumentFault::broken_off);
    EXPECT_EQ(torn.line(), 3);
    const DocumentError marred = error_of(damaged({R"("hook_mm": 3.5)", R"("hook_mm": 3,5)", "", ""}));
    EXPECT_EQ(marred.fault(), DocumentFault::damaged);
    EXPECT_EQ(marred.line(), 1);
    EXPECT_GT(marred.column(), 60);
    EXPECT_LT(marred.column(), 80);
}

TEST(DamagedDocument, LineAndColumnAreThoseOfTheValue) {
    const auto place = [](const Damage& damage) { return error_of(damaged(damage)).place(); };
    EXPECT_EQ(place({R"("hook_mm": 3.5)", R"("hook_mm": "E")", "", ""}), (LineAndColumn{1, 68}));
    EXPECT_EQ(place({R"("hook_mm": 3.5)", R"("hook_mm": nan)", "", ""}), (LineAndColumn{1, 68}));
    EXPECT_EQ(place({R"("lie": "flat")", R"("lie": "bent")", "", ""}), (LineAndColumn{2, 83}));
    EXPECT_EQ(place({R"("stitches": 6, )", "", "", ""}), (LineAndColumn{6, 25}));  // of the object without it
    // A version 1 file has no ids: what a migration put in stands nowhere, what is around it does.
    EXPECT_EQ(place({R"("title": "Pup")", R"("text": {"written_for": [
            {"piece": "Head", "stitches": "many"}]})",
                     "", ""}),
              (LineAndColumn{2, 43}));
}

TEST(DamagedDocument, AKeyThatStandsTwiceIsRefusedWithBothPlaces) {
    const auto refused = [](const Damage& damage) {
        const DocumentError error = error_of(damaged(damage));
        EXPECT_EQ(error.fault(), DocumentFault::doubled_key) << damage.replace;
        EXPECT_EQ(error.path(), damage.place);
        return std::pair(error.first_place(), error.place());
    };
    using Places = std::pair<LineAndColumn, LineAndColumn>;
    EXPECT_EQ(refused({R"("hook_mm": 3.5)", "\"hook_mm\": 3.5,\n\"hook_mm\": 4", "/hook_mm", ""}),
              (Places{{1, 57}, {2, 1}}));
    EXPECT_EQ(refused({R"("hook_mm": 3.5)", "\"hook_mm\": 3.5,\n\"hook\\u005fmm\": 4", "/hook_mm", ""}),
              (Places{{1, 57}, {2, 1}}));
    EXPECT_EQ(refused({R"({"words": "inc around"})", R"({"words": "a", "dye": 1, "dye": 1})",
                       "/pieces/0/rounds/1/dye", ""}),
              (Places{{7, 40}, {7, 50}}));
    EXPECT_EQ(refused({R"("chains": 4)", R"("chains": 4, "chains": 5)", "/pieces/0/start/chains", ""}),
              (Places{{4, 62}, {4, 75}}));
    // In what is not understood they are kept as they stand.
    const std::string odd = R"("tides":{"a":1,"a":2})";
    EXPECT_NE(write_document(read_document(damaged({R"("title": "Pup")", odd, "", ""})).toy)
                  .find("{\"a\":1,\"a\":2}"),
              std::string::npos);
}

TEST(DamagedDocument, KeysThatMeanNothingAreNamedWithTheLikelyOne) {
    const auto unread = [](const Damage& damage) { return read_document(damaged(damage)).unread; };
    using Keys = std::vector<UnreadKey>;
    EXPECT_EQ(read_document(whole).unread, Keys{});
    EXPECT_EQ(unread({R"("title")", R"("titel")", "", ""}), (Keys{{"/titel", "title", 0}}));
    EXPECT_EQ(unread({R"("area_stretch")", R"("area_strech")", "", ""}),
              (Keys{{"/pieces/0/area_strech", "area_stretch", 0}}));
    EXPECT_EQ(unread({R"("loop")", R"("mood")", "", ""}), (Keys{{"/pieces/0/rounds/0/mood", "", 0}}));
    EXPECT_EQ(unread({R"("words": "inc around")", R"("words": "inc around", "stitches": 12)", "", ""}),
              (Keys{{"/pieces/0/rounds/1/stitches", "", 0}}));
    EXPECT_EQ(unread({R"("title": "Pup")", R"("title": "Pup", "a/b": {"c": [1]})", "", ""}),
              (Keys{{"/a~1b", "", 0}}));
    // A long word is not the next best known one.
    EXPECT_EQ(unread({R"("title")", R"("temperature")", "", ""}), (Keys{{"/temperature", "", 0}}));
}

TEST(DamagedDocument, KeysAlikeAreNamedOnceAndAHostileFileNamesFew) {
    Toy toy;
    toy.pieces.resize(1);
    toy.pieces[0].rounds.resize(1'000);
    std::string text = write_document(toy);
    for (std::size_t at = text.find("{\"stitches"); at != std::string::npos;
         at = text.find("{\"stitches", at + 2))
        text.insert(at + 1, "\"stich\": 5, ");
    const auto alike = read_document(text).unread;
    ASSERT_EQ(alike.size(), 1u);
    EXPECT_EQ(alike[0].more, 999u);
    std::string many;
    for (int i = 0; i < 900; ++i) many += "\"a" + std::to_string(i) + "\": 1, ";
    EXPECT_EQ(read_document(damaged({R"("title": "Pup")", many + R"("title": "Pup")", "", ""})).unread.size(),
              most_unread_keys);
    for (int i = 0; i < 100; ++i) many += "\"b" + std::to_string(i) + "\": 1, ";
    EXPECT_EQ(error_of(damaged({R"("title": "Pup")", many + R"("title": "Pup")", "", ""})).fault(),
              DocumentFault::wrong_value);
}

TEST(DamagedDocument, OddTextsAreRefused) {
    for (const std::string text : {"", " ", "null", "[]", "7", "\"roundwright\"", "{", "{}", "\xff\xfe",
                                   "\xEF\xBB\xBF", "{\"format\":\"roundwright\"}", "{\"a\":\"\xff\"}"}) {
        EXPECT_THROW((void)read_document(text), DocumentError) << text;
    }
}

/// Reads whatever it is, and lets nothing but a DocumentError out.
void survives(const std::string& text) {
    try {
        const Toy toy = read_document(text).toy;
        EXPECT_EQ(read_document(write_document(toy)).toy, toy);
    } catch (const DocumentError&) {
    }
}

TEST(DamagedDocument, EveryTruncationIsRefused) {
    std::mt19937 random(5);
    const std::string text = write_document(test::random_toy(random));
    const std::size_t end = text.rfind('}');
    for (std::size_t length = 0; length <= end; ++length) {
        ASSERT_THROW((void)read_document(text.substr(0, length)), DocumentError) << length;
    }
}

TEST(DamagedDocument, FlippedBytesAndStolenStretchesNeverEscape) {
    std::mt19937 random(17);
    const auto below = [&random](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random);
    };
    for (int i = 0; i < 4'000; ++i) {
        std::string text = write_document(test::random_toy(random));
        for (std::size_t flips = below(4) + 1; flips > 0; --flips) {
            char& byte = text[below(text.size())];
            byte = static_cast<char>(byte ^ (1 << below(8)));
        }
        if (i % 3 == 0) text.erase(below(text.size()), below(40));
        if (i % 5 == 0) text.insert(below(text.size()), text.substr(below(text.size()), below(40)));
        survives(text);
    }
}

}  // namespace
}  // namespace roundwright
