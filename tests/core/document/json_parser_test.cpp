#include "core/document/json_parser.h"

#include <array>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <random>
#include <string>

#include "core/document/json_document.h"
#include "tests/core/document/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using nlohmann::json;
using Id = JsonTree::Id;

/// The same values by the library that writes documents.
json value_of(const JsonTree& tree, Id id) {
    switch (tree.kind(id)) {
        case JsonKind::null:
            return nullptr;
        case JsonKind::flag:
            return tree.flag_of(id);
        case JsonKind::number:
            return tree.number_of(id).value_or(1e308);
        case JsonKind::text:
            return tree.text_of(id);
        case JsonKind::list: {
            json list = json::array();
            for (Id element = tree.first(id); element != JsonTree::none; element = tree.next(element))
                list.push_back(value_of(tree, element));
            return list;
        }
        case JsonKind::object:
            break;
    }
    json object = json::object();
    for (Id member = tree.first(id); member != JsonTree::none; member = tree.next(member))
        object[tree.key(member)] = value_of(tree, member);
    return object;
}

std::optional<json> by_tree(const std::string& text) {
    try {
        return value_of(parse_json(text), JsonTree::root);
    } catch (const DocumentError&) {
        return std::nullopt;
    }
}

std::optional<json> by_library(const std::string& text) {
    try {
        return json::parse(text);
    } catch (const json::parse_error&) {
        return std::nullopt;
    } catch (const json::out_of_range&) {
        return json("too large");
    }
}

void expect_same(const std::string& text) {
    const auto expected = by_library(text);
    if (expected == json("too large")) return;
    ASSERT_EQ(by_tree(text), expected) << text;
}

TEST(JsonParser, ReadsWhatTheLibraryReads) {
    for (const char* text : {"",
                             " ",
                             "1",
                             "-0",
                             "0.5",
                             "-1.25e+3",
                             "1e-999",
                             "01",
                             "+1",
                             "1.",
                             ".5",
                             "1e",
                             "--1",
                             "true",
                             "tru",
                             "nul",
                             "nullx",
                             "NaN",
                             "Infinity",
                             "\"",
                             "\"a",
                             "\"\\\"",
                             "\"\\u0041\\n\\/\"",
                             "\"\\x\"",
                             "\"\\u12g4\"",
                             "\"\\ud83e\\uddad\"",
                             "\"\\ud83e\"",
                             "\"\\uddad\"",
                             "\"\\ud83e\\u0041\"",
                             "\"\t\"",
                             "[",
                             "]",
                             "[]",
                             "[1,]",
                             "[,1]",
                             "[1 2]",
                             "{}",
                             "{\"a\"}",
                             "{\"a\":}",
                             "{\"a\":1,}",
                             "{a:1}",
                             "{\"a\":1 \"b\":2}",
                             "[1]x",
                             "\xEF\xBB\xBF[1]",
                             "\xEF\xBB[1]",
                             "\"\xC3\xA9\"",
                             "\"\xC0\x80\"",
                             "\"\xED\xA0\x80\"",
                             "\"\xF4\x90\x80\x80\"",
                             "\"\xF0\x9F\xA6\xAD\"",
                             "\"\xE2\x82\"",
                             "[1,[2,{\"a\":[]}]]",
                             "0.000000000000000000000000000000000000001e39",
                             "123456789012345678901234567890"})
        expect_same(text);
}

TEST(JsonParser, ReadsDamagedFilesAsTheLibraryDoes) {
    std::mt19937 random(23);
    const auto below = [&random](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random);
    };
    constexpr std::string_view signs = "{}[]\",:\\u-+.eE09 \n\tntf\xC3\xA9\x80\xF0\x00";
    for (int i = testing::random_cases(5'000); i > 0; --i) {
        std::string text = write_document(test::random_toy(random));
        const std::size_t at = below(text.size());
        text = text.substr(at, 200);  // no object any more, mostly
        expect_same(text);
        text = write_document(test::random_toy(random));
        for (std::size_t changes = below(3); changes > 0; --changes)
            text[below(text.size())] = signs[below(signs.size())];
        expect_same(text);
    }
}

TEST(JsonParser, KnowsNumbersThatAreTooLargeFromThoseThatAreTooSmall) {
    const auto number = [](const std::string& text) { return parse_json(text).number_of(JsonTree::root); };
    EXPECT_EQ(number("1e999"), std::nullopt);
    EXPECT_EQ(number("-1e999"), std::nullopt);
    EXPECT_EQ(number(std::string(400, '9')), std::nullopt);
    EXPECT_EQ(number("1e-999"), 0);
    EXPECT_EQ(number("0.0000001e99999999999999999999"), std::nullopt);
    EXPECT_EQ(number("0." + std::string(500, '0') + "1"), 0);
    EXPECT_EQ(number(std::string(400, '9') + "e-9999"), 0);
    EXPECT_EQ(number("0e99999"), 0);
}

TEST(JsonParser, SaysWhereTheTextIsDamaged) {
    const auto place = [](const std::string& text) {
        try {
            (void)parse_json(text);
        } catch (const DocumentError& error) {
            return std::tuple(error.fault(), error.line(), error.column());
        }
        return std::tuple(DocumentFault::not_a_toy, 0, 0);
    };
    using enum DocumentFault;
    EXPECT_EQ(place("{\"a\": 1,\n \"b\": nan}"), std::tuple(damaged, 2, 7));
    EXPECT_EQ(place("{\"a\": 1,\n \"b\" 2}"), std::tuple(damaged, 2, 6));
    EXPECT_EQ(place("{\"a\": 1,\n \"b\": 2"), std::tuple(broken_off, 2, 8));
    EXPECT_EQ(place("[\"\xFF\"]"), std::tuple(damaged, 1, 3));
    EXPECT_EQ(place("[1]]"), std::tuple(damaged, 1, 4));
}

TEST(JsonParser, RefusesMoreValuesThanAToyHas) {
    std::string text = "[";
    for (std::size_t i = 0; i < most_values; ++i) text += "1,";
    text += "1]";
    try {
        (void)parse_json(text);
        ADD_FAILURE();
    } catch (const DocumentError& error) {
        EXPECT_EQ(error.fault(), DocumentFault::too_many_values);
        EXPECT_EQ(error.line(), 1);
    }
}

TEST(JsonTree, SpacesBetweenTokensGoAndThoseInTextsStay) {
    EXPECT_EQ(without_spaces(" { \"a b\" : [ 1 ,\n2 ] , \"c\\\" \" :\t\" \\\\\" } "),
              "{\"a b\":[1,2],\"c\\\" \":\" \\\\\"}");
}

}  // namespace
}  // namespace roundwright
