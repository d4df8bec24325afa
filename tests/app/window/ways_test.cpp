// Every way by the keyboard: menus, mnemonics, keys, the Tab order and the parts of the window.

#include <gtest/gtest.h>
#include <map>
#include <set>

#include <QScrollArea>

#include "app/checks/checks_list.h"
#include "app/files/recent_files.h"
#include "app/kit/action_keys.h"
#include "app/kit/notice_bar.h"
#include "app/pieces/piece_bar.h"
#include "app/print/pattern_preview.h"
#include "app/work_along/work_along_view.h"
#include "render/scene/scene_view.h"
#include "tests/app/window/maker_at_the_window.h"
#include "tests/app/window/mnemonics.h"

namespace roundwright::app {
namespace {

class Ways : public ::testing::Test {
  protected:
    void SetUp() override {
        ActionKeys::instance().take_usual_for_all();
        maker = std::make_unique<MakerAtTheWindow>(toy_to_type_into());
        maker->session.select_rounds({1});
    }
    void TearDown() override { ActionKeys::instance().take_usual_for_all(); }

    [[nodiscard]] MainWindow& window() { return *maker->window; }
    [[nodiscard]] bool is_in(const QWidget& part) const {
        const QWidget* focus = QApplication::focusWidget();
        return focus != nullptr && (focus == &part || part.isAncestorOf(focus));
    }
    [[nodiscard]] QWidget& pieces() { return *window().findChild<PieceBar*>(); }
    /// What the keyboard is in: one word.
    [[nodiscard]] std::string place() {
        if (is_in(pieces())) return "pieces";
        if (is_in(window().rounds_view())) return "table";
        if (is_in(window().fast_entry())) return "line";
        if (is_in(*window().shape().scene()->widget())) return "shape";
        if (is_in(window().shape())) return "buttons";
        if (is_in(window().panels())) return "panels";
        if (is_in(window().checks())) return "checks";
        if (is_in(window().notices())) return "notices";
        return "elsewhere";
    }
    void go_to_table() { window().rounds_view().setFocus(); }

    std::unique_ptr<MakerAtTheWindow> maker;
};

TEST_F(Ways, NoMenuHasAMnemonicTwice) {
    test::expect_own_mnemonics_in_menus(window());
    test::Mnemonics taken;
    for (const QAction* action : window().rounds_view().actions())
        test::expect_own_mnemonic(taken, action->text(), "the table's menu");
}

TEST_F(Ways, NorHasTheWindowWithAnyPanel) {
    for (const QString& key : window().panels().keys()) {
        window().panels().go_to_section(key);
        QTest::qWait(20);
        test::expect_own_mnemonics(window(), key.toStdString());
    }
}

TEST_F(Ways, NorHasAnyDialog) { test::expect_own_mnemonics_in_dialogs(window()); }

void collect_actions(const QMenu& menu, std::map<QString, const QAction*>& found) {
    for (const QAction* action : menu.actions()) {
        if (action->menu()) collect_actions(*action->menu(), found);
        if (action->menu() || action->isSeparator() || action->objectName().isEmpty()) continue;
        EXPECT_TRUE(found.emplace(action->objectName(), action).second) << action->text().toStdString();
    }
}

TEST_F(Ways, EveryActionOfTheCatalogueIsInAMenuWithItsKeys) {
    for (int k = 1; k <= 8; ++k) RecentFiles().add(QStringLiteral("/nowhere/%1.roundwright").arg(k));
    std::map<QString, const QAction*> found;
    for (const QAction* title : window().menuBar()->actions()) {
        Q_EMIT title->menu()->aboutToShow();
        collect_actions(*title->menu(), found);
    }
    maker->press(Qt::Key_P, Qt::ControlModifier);
    for (const QMenu* menu : window().findChild<PatternPreview*>()->findChildren<QMenu*>())
        collect_actions(*menu, found);
    for (const ActionEntry& entry : action_catalogue()) {
        const ActionWindow of = window_of(entry.place);
        if (of != ActionWindow::main && of != ActionWindow::preview) continue;
        ASSERT_EQ(found.count(entry.id), 1U) << entry.id.toStdString();
        EXPECT_EQ(found.at(entry.id)->shortcuts(), entry.usual) << entry.id.toStdString();
    }
    for (const auto& [id, action] : found) EXPECT_NO_THROW((void)action_entry(id)) << id.toStdString();
}

TEST_F(Ways, NewKeysWorkAtOnceAndTheOldOnesNoMore) {
    go_to_table();
    const auto before = maker->counts().size();
    ActionKeys::instance().choose(QStringLiteral("round.repeat"), {QKeySequence(Qt::CTRL | Qt::Key_K)});
    maker->press(Qt::Key_D, Qt::ControlModifier);
    EXPECT_EQ(maker->counts().size(), before);
    maker->press(Qt::Key_K, Qt::ControlModifier);
    EXPECT_EQ(maker->counts().size(), before + 1);
}

TEST_F(Ways, NewKeysWorkInTheWindowForWorkingAlongToo) {
    maker->press(Qt::Key_F9);
    auto* working = window().findChild<WorkAlongView*>();
    ASSERT_NE(working, nullptr);
    ASSERT_TRUE(wait_until([&] { return QApplication::activeWindow() == working; }));
    ActionKeys::instance().choose(QStringLiteral("work.done"), {QKeySequence(Qt::Key_F3)});
    QTest::keyClick(working, Qt::Key_F3);
    EXPECT_EQ(maker->session.piece()->worked.rounds, 1);
}

TEST_F(Ways, KeysThatCannotBeReadAreSaid) {
    QSettings().setValue(QStringLiteral("keys/round.repeat"), QStringLiteral("Strg+?!"));
    ActionKeys::instance().read();
    window().begin(maker->file());
    EXPECT_TRUE(window().notices().words(QStringLiteral("keys")).contains(QStringLiteral("Repeat")));
    EXPECT_NE(window().notices().button(QStringLiteral("keys"), QStringLiteral("Choose keys…")), nullptr);
}

TEST_F(Ways, F6GoesRoundThePartsAndShiftF6Back) {
    go_to_table();
    for (const char* next : {"line", "shape", "panels", "checks", "table"}) {
        maker->press(Qt::Key_F6);
        EXPECT_EQ(place(), next);
    }
    for (const char* next : {"checks", "panels", "shape", "line", "table"}) {
        maker->press(Qt::Key_F6, Qt::ShiftModifier);
        EXPECT_EQ(place(), next);
    }
}

TEST_F(Ways, EveryPartHasAKeyOfItsOwn) {
    const std::tuple<Qt::Key, Qt::KeyboardModifiers, const char*> ways[] = {
        {Qt::Key_8, Qt::AltModifier, "shape"},
        {Qt::Key_9, Qt::AltModifier, "checks"},
        {Qt::Key_0, Qt::AltModifier, "panels"},
        {Qt::Key_7, Qt::AltModifier, "table"},
        {Qt::Key_J, Qt::ControlModifier, "line"}};
    for (const auto& [key, modifiers, part] : ways) {
        maker->press(key, modifiers);
        EXPECT_EQ(place(), part);
    }
}

TEST_F(Ways, TabFollowsTheEye) {
    window().panels().go_to_section(QStringLiteral("stuffing"));
    maker->tabs().setFocus();
    std::vector<std::string> way{place()};
    for (int k = 0; k < 200; ++k) {
        maker->press(Qt::Key_Tab);
        // In the table Tab goes to the words of the round, from where it leaves the table.
        if (place() == "elsewhere" || place() == way.back()) continue;
        way.push_back(place());
        if (way.back() == "checks") break;
    }
    EXPECT_EQ(way,
              (std::vector<std::string>{"pieces", "table", "line", "shape", "buttons", "panels", "checks"}));
}

TEST_F(Ways, NoEmptyScrollAreaStopsTab) {
    for (const QString& key : window().panels().keys()) {
        window().panels().go_to_section(key);
        for (const auto* area : window().findChildren<QScrollArea*>())
            EXPECT_FALSE(area->isVisible() && (area->focusPolicy() & Qt::TabFocus) != 0) << key.toStdString();
    }
}

}  // namespace
}  // namespace roundwright::app
