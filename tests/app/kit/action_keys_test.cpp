#include "app/kit/action_keys.h"

#include <gtest/gtest.h>
#include <set>

#include <QAction>
#include <QSettings>

#include "app/kit/action_maker.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

QString portable(const KeyList& keys) { return QKeySequence::listToString(keys, QKeySequence::PortableText); }
QString id_of(const char* id) { return QLatin1String(id); }

class ActionKeysTest : public ::testing::Test {
  protected:
    void SetUp() override { keys.take_usual_for_all(); }
    void TearDown() override { keys.take_usual_for_all(); }

    void store(const char* id, const QVariant& value) {
        QSettings().setValue(QStringLiteral("keys/") + QLatin1String(id), value);
        keys.read();
    }

    ActionKeys& keys = ActionKeys::instance();
};

TEST_F(ActionKeysTest, EveryActionHasAnIdANameAndKeysOfItsOwn) {
    std::set<QString> ids;
    for (const ActionEntry& entry : action_catalogue()) {
        EXPECT_TRUE(ids.insert(entry.id).second) << entry.id.toStdString();
        EXPECT_FALSE(action_name(entry).isEmpty()) << entry.id.toStdString();
        EXPECT_FALSE(entry.usual.isEmpty()) << entry.id.toStdString();
    }
    EXPECT_GT(ids.size(), 100U);
}

TEST_F(ActionKeysTest, NoUsualKeysClashOrAreNeededForTyping) {
    for (const ActionEntry& entry : action_catalogue()) {
        for (const QKeySequence& one : entry.usual) {
            const auto fault = keys.fault(entry.id, one);
            EXPECT_FALSE(fault.has_value())
                << entry.id.toStdString() << " " << one.toString().toStdString() << " "
                << (fault && fault->other ? fault->other->id.toStdString() : std::string());
        }
    }
}

// What GNOME, KDE Plasma and Xfce take before a program sees it, with the usual settings (common practice):
// anything with the Super key or with Ctrl and Alt, Alt with a function key, Ctrl with F1 to F12 (workspaces
// in Xfce, overviews in Plasma), and the signs and emoji of input methods.
bool is_the_desktops(QKeyCombination keys) {
    const auto modifiers = keys.keyboardModifiers();
    const int key = keys.key();
    const bool function_key = key >= Qt::Key_F1 && key <= Qt::Key_F12;
    if (modifiers.testFlag(Qt::MetaModifier)) return true;
    if (modifiers.testFlag(Qt::ControlModifier) && modifiers.testFlag(Qt::AltModifier)) return true;
    if (function_key && (modifiers.testFlag(Qt::AltModifier) || modifiers == Qt::ControlModifier))
        return true;
    const std::set<int> with_alt{Qt::Key_Tab, Qt::Key_Escape, Qt::Key_Space, Qt::Key_QuoteLeft};
    const std::set<int> with_ctrl{Qt::Key_Escape, Qt::Key_Space, Qt::Key_Period, Qt::Key_Semicolon};
    const std::set<int> with_both{Qt::Key_U, Qt::Key_E, Qt::Key_Escape};
    if (modifiers == Qt::AltModifier) return with_alt.count(key) > 0;
    if (modifiers == Qt::ControlModifier) return with_ctrl.count(key) > 0;
    if (modifiers == (Qt::ControlModifier | Qt::ShiftModifier)) return with_both.count(key) > 0;
    return key == Qt::Key_Print;
}

TEST_F(ActionKeysTest, NoneAreTheDesktops) {
    EXPECT_TRUE(is_the_desktops(Qt::CTRL | Qt::ALT | Qt::Key_L));
    EXPECT_TRUE(is_the_desktops(Qt::CTRL | Qt::Key_F9));
    for (const ActionEntry& entry : action_catalogue())
        for (const QKeySequence& one : entry.usual)
            EXPECT_FALSE(is_the_desktops(one[0]))
                << entry.id.toStdString() << " " << one.toString().toStdString();
}

TEST_F(ActionKeysTest, NorDoesOneMeanWhatHabitGivesAnotherMeaning) {
    for (const ActionEntry& entry : action_catalogue())
        for (const QKeySequence& one : entry.usual)
            EXPECT_TRUE(one != QKeySequence(Qt::CTRL | Qt::Key_W) || entry.id == id_of("beside.close"))
                << entry.id.toStdString() << ": pieces look like tabs, and Ctrl+W closes one of those";
}

TEST_F(ActionKeysTest, WhatTheMakerChoosesIsThereAtOnceAndAfterTheNextStart) {
    QWidget window;
    const QAction* repeat = make_action(&window, "round.repeat");
    EXPECT_EQ(repeat->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_D));
    keys.choose(id_of("round.repeat"), {QKeySequence(Qt::CTRL | Qt::Key_B, QKeyCombination(Qt::Key_Q))});
    EXPECT_EQ(portable(repeat->shortcuts()), QStringLiteral("Ctrl+B, Q"));
    EXPECT_TRUE(repeat->toolTip().contains(QStringLiteral("Ctrl+B, Q")));
    keys.read();
    EXPECT_EQ(portable(keys.keys(id_of("round.repeat"))), QStringLiteral("Ctrl+B, Q"));
    EXPECT_FALSE(keys.is_usual(id_of("round.repeat")));
    EXPECT_TRUE(keys.unreadable().isEmpty());
    keys.take_usual(id_of("round.repeat"));
    EXPECT_EQ(repeat->shortcut(), QKeySequence(Qt::CTRL | Qt::Key_D));
    EXPECT_FALSE(QSettings().contains(QStringLiteral("keys/round.repeat"))) << "the usual is no choice";
}

TEST_F(ActionKeysTest, AnActionMayHaveNoKeysOrSeveral) {
    keys.choose(id_of("round.repeat"), {});
    keys.choose(id_of("shape.fit"), {QKeySequence(Qt::Key_F12), QKeySequence(Qt::CTRL | Qt::Key_U)});
    keys.read();
    EXPECT_TRUE(keys.keys(id_of("round.repeat")).isEmpty());
    EXPECT_EQ(portable(keys.keys(id_of("shape.fit"))), QStringLiteral("F12; Ctrl+U"));
    EXPECT_TRUE(keys.unreadable().isEmpty());
}

TEST_F(ActionKeysTest, TwoActionsMayChangePlaces) {
    keys.choose(id_of("shape.front"), {QKeySequence(Qt::CTRL | Qt::Key_2)});
    keys.choose(id_of("shape.side"), {QKeySequence(Qt::CTRL | Qt::Key_1)});
    keys.read();
    EXPECT_TRUE(keys.unreadable().isEmpty());
    EXPECT_EQ(portable(keys.keys(id_of("shape.side"))), QStringLiteral("Ctrl+1"));
}

TEST_F(ActionKeysTest, WhatIsDamagedIsNamedAndTheUsualKeysStay) {
    for (const QVariant& damaged : {QVariant(QStringLiteral("Strg+?!")), QVariant(QStringLiteral("Ctrl+")),
                                    QVariant(QStringLiteral("Ctrl+D; ; Nonsense")),
                                    QVariant(QStringList{QStringLiteral("a"), QStringLiteral("b")}),
                                    QVariant(QStringLiteral("x")), QVariant(QStringLiteral("Ctrl+S"))}) {
        store("round.repeat", damaged);
        EXPECT_EQ(keys.unreadable(), QStringList{QStringLiteral("Repeat")})
            << damaged.toString().toStdString();
        EXPECT_EQ(portable(keys.keys(id_of("round.repeat"))), QStringLiteral("Ctrl+D"));
    }
    EXPECT_TRUE(QSettings().contains(QStringLiteral("keys/round.repeat"))) << "left for the maker to see to";
}

TEST_F(ActionKeysTest, KeysThatBeginAlikeClash) {
    const auto fault = [&](const char* id, const QKeySequence& wanted) {
        return keys.fault(id_of(id), wanted);
    };
    const auto taken = fault("round.repeat", Qt::CTRL | Qt::Key_B);
    ASSERT_TRUE(taken.has_value()) << "Ctrl+B begins others";
    EXPECT_EQ(taken->code, KeyFault::Code::taken);
    const auto longer = fault("round.repeat", QKeySequence(Qt::CTRL | Qt::Key_S, QKeyCombination(Qt::Key_X)));
    ASSERT_TRUE(longer.has_value());
    EXPECT_EQ(longer->other->id, QStringLiteral("file.save"));
    EXPECT_FALSE(fault("file.save", Qt::CTRL | Qt::Key_S).has_value()) << "its own";
}

TEST_F(ActionKeysTest, WindowsDoNotClashWithEachOther) {
    EXPECT_FALSE(keys.fault(id_of("preview.larger"), Qt::CTRL | Qt::Key_D).has_value());
    EXPECT_FALSE(keys.fault(id_of("work.done"), Qt::Key_D).has_value()) << "nothing is typed there";
    const auto closes = keys.fault(id_of("preview.larger"), Qt::CTRL | Qt::Key_W);
    ASSERT_TRUE(closes.has_value());
    EXPECT_EQ(closes->other->id, QStringLiteral("beside.close"));
}

TEST_F(ActionKeysTest, WhatIsNeededForTypingCannotBeHad) {
    for (const QKeySequence& wanted :
         {QKeySequence(Qt::Key_A), QKeySequence(Qt::SHIFT | Qt::Key_A), QKeySequence(Qt::Key_5),
          QKeySequence(Qt::Key_Return), QKeySequence(Qt::Key_Tab), QKeySequence(Qt::SHIFT | Qt::Key_Up),
          QKeySequence(Qt::Key_Escape)}) {
        const auto fault = keys.fault(id_of("round.repeat"), wanted);
        ASSERT_TRUE(fault.has_value()) << wanted.toString().toStdString();
        EXPECT_EQ(fault->code, KeyFault::Code::for_typing);
    }
    const auto menu = keys.fault(id_of("round.repeat"), Qt::ALT | Qt::Key_F);
    ASSERT_TRUE(menu.has_value());
    EXPECT_EQ(menu->code, KeyFault::Code::opens_menu);
    EXPECT_EQ(menu->menu, ActionPlace::file);
}

}  // namespace
}  // namespace roundwright::app
