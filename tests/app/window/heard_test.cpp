#include <gtest/gtest.h>

#include "app/checks/checks_list.h"
#include "app/rounds/words_edit.h"
#include "tests/app/listener.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

class HeardTest : public ::testing::Test {
  protected:
    void SetUp() override {
        if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    }
    void settle() { ASSERT_TRUE(wait_for_shape(maker.session)); }
    [[nodiscard]] std::string phantoms() const {
        return listener.phantoms().join(QStringLiteral("; ")).toStdString();
    }

    Listener listener;
    MakerAtTheWindow maker{toy_of({6, 12, 18, 40, 40, 84, 84})};
};

TEST_F(HeardTest, ARecheckTakesTheFocusNowhere) {
    maker.press(Qt::Key_F8);  // a check is current from now on
    maker.click_cell(1);
    const int before = listener.focus_events();
    for (const auto* count : {"14", "15", "12"}) {
        maker.click_cell(1);
        maker.type(QLatin1String(count));
        settle();
        maker.press(Qt::Key_Return);
        settle();
    }
    EXPECT_GT(listener.focus_events(), before) << "nothing was heard at all";
    EXPECT_EQ(phantoms(), "");
}

TEST_F(HeardTest, TheWordsOfferedTakeTheFocusNowhere) {
    maker.begin_words(2);
    maker.type(QStringLiteral("[s"));
    auto* words = maker.table().findChild<WordsEdit*>();
    ASSERT_NE(words, nullptr);
    ASSERT_TRUE(words->popup()->isVisible());
    EXPECT_EQ(phantoms(), "");
    maker.put_popup_away();
    maker.press(Qt::Key_Escape);
}

TEST_F(HeardTest, TheChecksTellTheirCurrentOneWhileTheyHaveTheKeyboard) {
    maker.window->checks().view()->setFocus();
    const int before = listener.focus_events();
    maker.press(Qt::Key_Down);
    maker.press(Qt::Key_Down);
    EXPECT_GE(listener.focus_events(), before + 2);
    EXPECT_EQ(phantoms(), "");
}

}  // namespace
}  // namespace roundwright::app
