#include "app/kit/read_out.h"

#include <gtest/gtest.h>

#include <QAccessible>

#include "app/kit/still_label.h"
#include "tests/app/listener.h"

namespace roundwright::app {
namespace {

QString heard(QWidget& widget) {
    return QAccessible::queryAccessibleInterface(&widget)->text(QAccessible::Name);
}

TEST(ReadOutTest, SaysItsNameAndItsText) {
    ReadOut size(QStringLiteral("Size"));
    EXPECT_EQ(heard(size), QStringLiteral("Size"));
    size.setText(QStringLiteral("84 mm wide (80\u2060\u2013\u206089)"));
    EXPECT_EQ(heard(size), QStringLiteral("Size: 84 mm wide (80\u201389)"));
    EXPECT_EQ(QAccessible::queryAccessibleInterface(&size)->role(), QAccessible::StaticText);
    ReadOut nameless{QString()};
    nameless.setText(QStringLiteral("<b>bold</b>"));
    EXPECT_EQ(heard(nameless), QStringLiteral("<b>bold</b>"));
}

TEST(ReadOutTest, TellsOfEachChangeOnce) {
    Listener listener;
    if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    ReadOut size(QStringLiteral("Size"));
    size.setText(QStringLiteral("84 mm"));
    size.setText(QStringLiteral("84 mm"));
    size.setText({});
    EXPECT_EQ(listener.take_names(), (QStringList{QStringLiteral("Size: 84 mm"), QStringLiteral("Size")}));
}

TEST(ReadOutTest, IsHeardWholeWhereItIsSeenCut) {
    Listener listener;
    StillLabel label(QStringLiteral("Shape"));
    label.resize(60, 20);
    const QString start = QStringLiteral("taller than wide and widest at round ");
    label.say(start + QStringLiteral("12"));
    label.say(start + QStringLiteral("13"));  // which looks the same
    EXPECT_EQ(heard(label), QStringLiteral("Shape: ") + start + QStringLiteral("13"));
    if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    const QStringList told = listener.take_names();
    ASSERT_EQ(told.size(), 2);
    EXPECT_EQ(told.back(), heard(label));
}

}  // namespace
}  // namespace roundwright::app
