#include "render/wording/plain_text.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "render/wording/printable.h"
#include "render/wording/unprintable.h"

namespace roundwright {
namespace {

QString utf8(const char* text) { return QString::fromUtf8(text); }

struct Case {
    const char* name;
    const char* shown;
};

TEST(PlainText, ANameInASentenceIsOneLineOfPrintingLetters) {
    const Case cases[] = {
        {"Seal pup", "Seal pup"},
        {"  two  blanks ", "  two  blanks "},
        {"<b>Fin</b> & <img src='x.png'>", "<b>Fin</b> & <img src='x.png'>"},
        {"Fin\nRnd 1: 6 sc", "Fin Rnd 1: 6 sc"},
        {"a\xE2\x80\xA8"
         "b\xE2\x80\xA9"
         "c\xC2\x85"
         "d",
         "a b c d"},                                                               // U+2028, U+2029, NEL
        {"\x1B]8;;http://a\x07link", "\xE2\x90\x9B]8;;http://a\xE2\x90\x87link"},  // ESC and BEL as pictures
        {"\x7F", "\xE2\x90\xA1"},
        {"\xC2\x9B"
         "31m",
         "\xEF\xBF\xBD"
         "31m"},  // C1: CSI in one character
        {"gnp\xE2\x80\xAE"
         "exe.\xE2\x80\xAC"
         "fin",
         "gnpexe.fin"},  // U+202E ... U+202C
        {"\xE2\x81\xA9"
         "out\xE2\x81\xA6",
         "out"},  // PDI before any isolate
        {"a\xE2\x80\x8B"
         "b\xEF\xBB\xBF"
         "c",
         "abc"},  // zero width
        {"\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7", "\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7"},
        {"\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "\xE2\x81\xA8\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D\xE2\x81\xA9"}};
    for (const Case& one : cases) EXPECT_EQ(name_in_words(utf8(one.name)), utf8(one.shown)) << one.name;
    EXPECT_EQ(name_in_words(std::string_view("\xFF\xC3\xA9")), utf8("\xEF\xBF\xBD\xC3\xA9"));
}

TEST(PlainText, ALongNameLosesItsMiddleBetweenLetters) {
    const QString shown = name_in_words(QString(10'000, u'W'));
    EXPECT_EQ(shown.size(), 48);
    EXPECT_EQ(shown.count(QChar(0x2026)), 1);
    QString fish;
    for (int i = 0; i < 500; ++i) fish += utf8("\xF0\x9F\x90\x9F");
    const QString fishes = name_in_words(fish);
    EXPECT_LE(fishes.size(), 50);
    EXPECT_TRUE(fishes.isValidUtf16());
    QString heap = QStringLiteral("a");
    for (int i = 0; i < 10'000; ++i) heap += QChar(0x0301);
    EXPECT_LE(name_in_words(heap).size(), 7) << "no script stacks more than six marks";
}

TEST(PlainText, AMessageKeepsItsLinesAndTheIsolatesThatAreInPairs) {
    EXPECT_EQ(plain_message(utf8("one\ntwo\r\nthree")), utf8("one\ntwo\nthree"));
    EXPECT_EQ(plain_message(utf8("a \xE2\x81\xA8x\xE2\x81\xA9 b")), utf8("a \xE2\x81\xA8x\xE2\x81\xA9 b"));
    EXPECT_EQ(plain_message(utf8("a \xE2\x81\xA9x\xE2\x81\xA8 \xE2\x80\xAE b")), utf8("a x  b"));
    EXPECT_EQ(plain_message(QString(300, u'x') + QStringLiteral(" y")).size(), 82);
}

TEST(PlainText, NothingReachesATerminalButLetters) {
    QString all;
    for (char16_t u = 1; u < 0x3000; ++u) all += QChar(u);
    all += QChar(0xFEFF);
    for (const QChar c : for_terminal(all, false)) {
        EXPECT_FALSE(is_unprintable(c.unicode())) << std::hex << int{c.unicode()};
        EXPECT_NE(c.category(), QChar::Other_Control);
    }
    EXPECT_EQ(for_terminal(utf8("\x1B[31m"), false), utf8("\\u001b[31m"));
    EXPECT_EQ(for_terminal(utf8("a\n\tb"), true), utf8("a\n\tb"));
    EXPECT_EQ(for_terminal(utf8("a\nb"), false), utf8("a\\u000ab"));
    EXPECT_EQ(for_terminal(utf8("\xE2\x81\xA8x\xE2\x81\xA9"), false), utf8("x"));
    EXPECT_EQ(for_terminal(utf8("h\xC3\xA9\xE2\x80\xAE"), false), utf8("h\xC3\xA9\\u202e"));
}

TEST(PlainText, JsonMeansTheSame) {
    QString all;
    for (char16_t u = 1; u < 0x3000; ++u) all += QChar(u);
    const nlohmann::json json{{"name", all.toStdString()}};
    const QString safe = for_json(QString::fromStdString(json.dump()));
    for (const QChar c : safe) EXPECT_FALSE(is_unprintable(c.unicode())) << std::hex << int{c.unicode()};
    EXPECT_EQ(nlohmann::json::parse(safe.toStdString()), json);
}

TEST(PlainText, PagesTurnNothingAround) {
    EXPECT_EQ(printable(utf8("a\xE2\x80\xAE"
                             "b\xE2\x81\xA6"
                             "c\x1B\nd")),
              utf8("abc\nd"));
    EXPECT_EQ(printable_name(utf8("a  b\nc\x7F")), utf8("a  b c"));
}

// Window and paper leave out the same letters, and end their lines at the same ones.
TEST(PlainText, PagesKnowTheSameLettersAsTheWindow) {
    QString all;
    for (char16_t u = 1; u < 0x3000; ++u) all += QChar(u);
    all += QChar(0xFEFF);
    for (const QChar c : printable(all))
        EXPECT_TRUE(c == u'\n' || !is_unprintable(c.unicode())) << std::hex << int{c.unicode()};
    EXPECT_EQ(printable(utf8("a\r\nb\rc\x0B"
                             "d\xC2\x85"
                             "e\xE2\x80\xA8"
                             "f")),
              utf8("a\nb\nc\nd\ne\nf"));
    const QString joined = utf8("\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7");
    EXPECT_EQ(printable(joined), joined);
    EXPECT_EQ(printable(utf8("a\xE2\x80\x8D"
                             "b")),
              utf8("ab"));
}

}  // namespace
}  // namespace roundwright
