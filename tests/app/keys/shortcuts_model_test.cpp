#include "app/keys/shortcuts_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QFont>
#include <QSignalSpy>

#include "app/kit/action_keys.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

int row_of(const ShortcutsModel& model, const QString& id) {
    int row = 0;
    while (row < model.rowCount() && model.entry(row).id != id) ++row;
    return row;
}

class ShortcutsModelTest : public ::testing::Test {
  protected:
    void SetUp() override { ActionKeys::instance().take_usual_for_all(); }
    void TearDown() override { ActionKeys::instance().take_usual_for_all(); }
    [[nodiscard]] QVariant cell(const QString& id, ShortcutColumn column, int role = Qt::DisplayRole) const {
        return model.data(model.index(row_of(model, id), static_cast<int>(column)), role);
    }

    ShortcutsModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(ShortcutsModelTest, SaysWhatWhereAndWhichKeys) {
    EXPECT_EQ(model.rowCount(), static_cast<int>(action_catalogue().size()));
    const auto redo = QStringLiteral("edit.redo");
    EXPECT_EQ(cell(redo, ShortcutColumn::action), QStringLiteral("Redo"));
    EXPECT_EQ(cell(redo, ShortcutColumn::place), QStringLiteral("Edit"));
    EXPECT_EQ(cell(redo, ShortcutColumn::keys), QStringLiteral("Ctrl+Shift+Z or Ctrl+Y"));
    EXPECT_EQ(cell(QStringLiteral("look.dark"), ShortcutColumn::place), QStringLiteral("Edit, Look"));
}

TEST_F(ShortcutsModelTest, FollowsTheMakersChoice) {
    const auto repeat = QStringLiteral("round.repeat");
    QSignalSpy changes(&model, &QAbstractItemModel::dataChanged);
    ActionKeys::instance().choose(repeat, {QKeySequence(Qt::Key_F3)});
    EXPECT_EQ(changes.count(), 1);
    EXPECT_EQ(cell(repeat, ShortcutColumn::keys), QStringLiteral("F3"));
    EXPECT_EQ(cell(repeat, ShortcutColumn::keys, Qt::AccessibleTextRole),
              QStringLiteral("F3, chosen by you"));
    EXPECT_TRUE(cell(repeat, ShortcutColumn::keys, Qt::FontRole).value<QFont>().bold());
    ActionKeys::instance().choose(repeat, {});
    EXPECT_EQ(cell(repeat, ShortcutColumn::keys, Qt::AccessibleTextRole), QStringLiteral("no keys"));
}

}  // namespace
}  // namespace roundwright::app
