#include "app/kept/kept_copy.h"

#include <gtest/gtest.h>

namespace roundwright::app {
namespace {

KeptCopy some_copy() {
    KeptCopy copy;
    copy.head.number = 18'446'744'073'709'551'615u;
    copy.head.kept = QDateTime::fromMSecsSinceEpoch(1'700'000'000'123, Qt::UTC);
    copy.head.document = QStringLiteral("/harbour/\u00fc \"pup\"\n.roundwright");
    copy.head.began_from = {18'446'744'073'709'551'614u, 9'223'372'036'854'775'809u,   5, -7,
                            1'700'000'000'123'456'789,   QByteArray::fromHex("00ff10")};
    copy.head.typed = {QStringLiteral("24, 30\u23ce\"x\""),
                       3,
                       TypedCell{QStringLiteral("[sc, inc"), 12, true},
                       {{QStringLiteral("toy-details"), QStringLiteral("notes"),
                         QStringLiteral("Two lines,\n\u201cquoted\u201d")}}};
    copy.toy = "{\n  \"format\": \"roundwright\"\n}\n";
    return copy;
}

TEST(KeptCopyTest, ComesBackAsItWas) {
    const KeptCopy copy = some_copy();
    const auto read = read_kept(kept_bytes(copy));
    ASSERT_TRUE(read);
    EXPECT_EQ(read->head.number, copy.head.number);
    EXPECT_EQ(read->head.kept, copy.head.kept);
    EXPECT_EQ(read->head.document, copy.head.document);
    EXPECT_EQ(read->head.began_from, copy.head.began_from);
    EXPECT_EQ(read->head.typed, copy.head.typed);
    EXPECT_TRUE(read->toy == copy.toy);
    EXPECT_EQ(kept_number(kept_bytes(copy).left(128)), copy.head.number);
}

TEST(KeptCopyTest, CutOffOrChangedAnywhereItIsNone) {
    const QByteArray bytes = kept_bytes(some_copy());
    for (qsizetype size = 0; size < bytes.size(); ++size) EXPECT_FALSE(read_kept(bytes.left(size))) << size;
    for (qsizetype at = 0; at < bytes.size(); ++at) {
        if (at >= 19 && bytes[at] != '\n' && at < bytes.indexOf(' ', 19)) continue;  // the number itself
        QByteArray changed = bytes;
        changed[at] = static_cast<char>(changed[at] ^ 1);
        EXPECT_FALSE(read_kept(changed)) << at;
    }
    EXPECT_FALSE(read_kept(bytes + 'x'));
}

TEST(KeptCopyTest, WhatANewerProgramWroteIsLeftAlone) {
    QByteArray bytes = kept_bytes(some_copy());
    EXPECT_FALSE(read_kept(bytes.replace("roundwright-kept 1 ", "roundwright-kept 2 ")));
}

}  // namespace
}  // namespace roundwright::app
