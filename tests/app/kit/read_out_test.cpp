#include "app/kit/read_out.h"

#include <gtest/gtest.h>
#include <vector>

#include <QAccessible>

#include "app/kit/still_label.h"

namespace roundwright::app {
namespace {

std::vector<QString> told;  // the names at each NameChanged

void listen(QAccessibleEvent* event) {
    if (event->type() != QAccessible::NameChanged) return;
    if (auto* read_out = qobject_cast<ReadOut*>(event->object())) told.push_back(read_out->spoken());
}

class ReadOutTest : public ::testing::Test {
  protected:
    void SetUp() override {
        told.clear();
        before_ = QAccessible::installUpdateHandler(&listen);
    }
    void TearDown() override { QAccessible::installUpdateHandler(before_); }

  private:
    QAccessible::UpdateHandler before_ = nullptr;
};

QString heard(QWidget& widget) {
    return QAccessible::queryAccessibleInterface(&widget)->text(QAccessible::Name);
}

TEST_F(ReadOutTest, SaysItsNameAndItsText) {
    ReadOut size(QStringLiteral("Size"));
    EXPECT_EQ(heard(size), QStringLiteral("Size"));
    size.setText(QStringLiteral("84 mm wide (80\u2060\u2013\u206089)"));
    EXPECT_EQ(heard(size), QStringLiteral("Size: 84 mm wide (80\u201389)"));
    EXPECT_EQ(QAccessible::queryAccessibleInterface(&size)->role(), QAccessible::StaticText);
    ReadOut nameless{QString()};
    nameless.setText(QStringLiteral("<b>bold</b>"));
    EXPECT_EQ(heard(nameless), QStringLiteral("<b>bold</b>"));
}

TEST_F(ReadOutTest, TellsOfEachChangeOnce) {
    if (!QAccessible::isActive()) GTEST_SKIP() << "Qt tells nobody here";
    ReadOut size(QStringLiteral("Size"));
    size.setText(QStringLiteral("84 mm"));
    size.setText(QStringLiteral("84 mm"));
    size.setText({});
    EXPECT_EQ(told, (std::vector<QString>{QStringLiteral("Size: 84 mm"), QStringLiteral("Size")}));
}

TEST_F(ReadOutTest, IsHeardWholeWhereItIsSeenCut) {
    StillLabel label(QStringLiteral("Shape"));
    label.resize(60, 20);
    const QString start = QStringLiteral("taller than wide and widest at round ");
    label.say(start + QStringLiteral("12"));
    label.say(start + QStringLiteral("13"));  // which looks the same
    EXPECT_EQ(heard(label), QStringLiteral("Shape: ") + start + QStringLiteral("13"));
    if (!QAccessible::isActive()) GTEST_SKIP() << "Qt tells nobody here";
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told.back(), heard(label));
}

}  // namespace
}  // namespace roundwright::app
