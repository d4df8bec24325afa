#include "render/wording/difference_words.h"

#include <gtest/gtest.h>

#include <QLocale>
#include <QTimeZone>

#include "render/wording/when_words.h"

namespace roundwright {
namespace {

using Code = DifferenceCode;

Difference of(Code code, const char* name, int first, int last, std::vector<int> then, std::vector<int> now) {
    Difference difference;
    difference.code = code;
    difference.name = name;
    difference.first = first;
    difference.last = last;
    difference.then = std::move(then);
    difference.now = std::move(now);
    return difference;
}

TEST(DifferenceWords, Sentences) {
    const struct {
        Difference difference;
        const char* words;
    } cases[] = {
        {of(Code::rounds_counts, "Head", 4, 8, {36, 36, 36, 36, 36}, {30, 30, 30, 30, 30}),
         "Head: rounds 5 to 9 differ (30 instead of 36)"},
        {of(Code::rounds_counts, "Head", 4, 4, {36}, {30}), "Head: round 5 differs (30 instead of 36)"},
        {of(Code::rounds_counts, "Head", 0, 1, {6, 12}, {7, 14}),
         "Head: rounds 1 and 2 differ (7, 14 instead of 6, 12)"},
        {of(Code::rounds_counts, "Head", 0, 5, {6, 12, 18, 24, 30, 36}, {5, 10, 15, 20, 25, 30}),
         "Head: rounds 1 to 6 differ (5 to 30 instead of 6 to 36)"},
        {of(Code::rounds_new, "Head", 6, 6, {}, {36}), "Head: round 7 is new (36)"},
        {of(Code::rounds_gone, "Head", 6, 7, {36, 30}, {}), "Head: the old rounds 7 and 8 are gone (36, 30)"},
        {of(Code::rounds_stitches, "Head", 1, 1, {}, {}),
         "Head: round 2 has other stitches, but the same count"},
        {of(Code::rounds_note, "Head", 11, 11, {}, {}), "Head: the note of round 12 differs"},
        {of(Code::rounds_note, "Head", 11, 13, {}, {}), "Head: the notes of rounds 12 to 14 differ"},
        {of(Code::rounds_yarn, "Head", 2, 3, {}, {}), "Head: rounds 3 and 4 are in another yarn"},
        {of(Code::rounds_flat_mark, "Head", 0, 0, {}, {}), "Head: whether round 1 is to lie flat"},
        {of(Code::piece_new, "Left ear", 0, 0, {}, {6, 9}), "Left ear is new (2 rounds)"},
        {of(Code::piece_gone, "", 0, 0, {6}, {}), "Piece 1 is gone (1 round)"},
        {of(Code::make, "Ear", 0, 0, {1}, {2}), "Ear: make 2 instead of 1"},
        {of(Code::worked, "Ear", 0, 0, {5}, {12}), "Ear: 12 rounds worked instead of 5"},
        {of(Code::worked, "Ear", 0, 0, {5}, {5}), "Ear: the stitches ticked off differ"},
        {of(Code::yarn_new, "Fog grey", 0, 0, {}, {}), "The yarn Fog grey is new"},
    };
    for (const auto& c : cases) EXPECT_EQ(difference_words(c.difference).toStdString(), c.words);
}

TEST(DifferenceWords, OfFeaturesStuffingHookAndNames) {
    Difference eyes = of(Code::feature_new, "Head", 0, 0, {}, {});
    eyes.feature = Feature{};
    EXPECT_EQ(difference_words(eyes), QStringLiteral("Head: safety eyes are new"));
    eyes.code = Code::feature_changed;
    eyes.feature->pair = false;
    eyes.feature->kind = FeatureKind::safety_nose;
    EXPECT_EQ(difference_words(eyes), QStringLiteral("Head: safety nose differs"));
    Difference stuffing = of(Code::stuffing, "Head", 0, 0, {}, {});
    stuffing.then_value = 0.04;
    stuffing.now_value = 0.08;
    EXPECT_EQ(difference_words(stuffing), QStringLiteral("Head: fabric stretch 8 % instead of 4 %"));
    const Difference part = of(Code::stuffed_rounds, "Arm", 0, 0, {}, {0, 11});
    EXPECT_EQ(difference_words(part),
              QStringLiteral("Arm: stuffed in rounds 1 to 12 only instead of throughout"));
    Difference weight = of(Code::weight, "Body", 0, 0, {}, {});
    weight.now_value = 30;
    EXPECT_EQ(difference_words(weight), QStringLiteral("Body: 30 g of pellets in it instead of no pellets"));
    Difference hook = of(Code::hook, "", 0, 0, {}, {});
    hook.then_value = 3.5;
    hook.now_value = 4;
    EXPECT_EQ(difference_words(hook), QStringLiteral("Hook: 4 mm instead of 3.5 mm"));
    Difference renamed = of(Code::piece_renamed, "Tummy", 0, 0, {}, {});
    renamed.old_name = "Body\n\x1b[31m";
    EXPECT_FALSE(difference_words(renamed).contains(QChar(0x1b)));
}

TEST(DifferenceWords, EveryCodeHasWords) {
    for (int code = 0; code <= static_cast<int>(Code::face_direction); ++code) {
        Difference difference = of(static_cast<Code>(code), "Head", 0, 0, {6}, {7});
        difference.feature = Feature{};
        const QString words = difference_words(difference);
        EXPECT_GT(words.size(), 8) << code;
        EXPECT_FALSE(words.endsWith(QStringLiteral(": "))) << code;
        EXPECT_FALSE(words.contains(QLatin1Char('%')) && static_cast<Code>(code) != Code::stuffing) << code;
    }
}

TEST(WhenWords, TodayYesterdayAndDates) {
    const QDateTime now(QDate(2026, 3, 4), QTime(15, 0));
    const QString time = QLocale().toString(QTime(14, 5), QLocale::ShortFormat);
    EXPECT_EQ(when_words(QDateTime(QDate(2026, 3, 4), QTime(14, 5)), now), QStringLiteral("today ") + time);
    EXPECT_EQ(when_words(QDateTime(QDate(2026, 3, 3), QTime(14, 5)), now),
              QStringLiteral("yesterday ") + time);
    EXPECT_EQ(when_words(QDateTime(QDate(2026, 3, 4), QTime(14, 5)).toUTC(), now),
              QStringLiteral("today ") + time);
    EXPECT_TRUE(when_words(QDateTime(QDate(2025, 12, 24), QTime(14, 5)), now).endsWith(time));
    EXPECT_FALSE(when_words(QDateTime(QDate(2026, 3, 5), QTime(14, 5)), now).contains(QStringLiteral("day ")))
        << "a clock that jumped";
}

}  // namespace
}  // namespace roundwright
