#include <algorithm>
#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QSlider>
#include <QSpinBox>

#include "app/panels/finish_panel.h"
#include "app/panels/gauge_panel.h"
#include "app/panels/length_spin_box.h"
#include "app/panels/round_strips.h"
#include "app/panels/rounds_plot.h"
#include "app/panels/stuffing_panel.h"
#include "app/panels/yarn_panel.h"
#include "app/panels/yarns_model.h"
#include "core/document/json_document.h"
#include "core/shape/fabric_limits.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

/// The first child of a kind whose words hold `words`.
template <class Kind>
Kind* child(QWidget& panel, const QString& words) {
    for (Kind* one : panel.findChildren<Kind*>()) {
        if (one->text().remove(QLatin1Char('&')).contains(words)) return one;
    }
    return nullptr;
}

class Panels : public ::testing::Test {
  protected:
    Panels() { session.start(toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6})); }
    DocumentSession session;
};

TEST_F(Panels, FirmnessIsOneStepAndUndoesToTheSameDocument) {
    StuffingPanel panel(session);
    panel.show();
    const std::string before = write_document(session.toy());
    auto* firm = child<QRadioButton>(panel, QStringLiteral("Firm"));
    ASSERT_NE(firm, nullptr);
    QTest::mouseClick(firm, Qt::LeftButton, {}, QPoint(8, firm->height() / 2));
    EXPECT_EQ(session.piece()->area_stretch, firm_stuffing_stretch);
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(write_document(session.toy()), before);
    EXPECT_TRUE(child<QRadioButton>(panel, QStringLiteral("Medium"))->isChecked());
}

TEST_F(Panels, TheStretchSliderMergesItsKeysIntoOneStep) {
    StuffingPanel panel(session);
    panel.show();
    auto* slider = panel.findChild<QSlider*>();
    slider->setFocus();
    for (int k = 0; k < 5; ++k) QTest::keyClick(slider, Qt::Key_Right);
    EXPECT_NEAR(session.piece()->area_stretch, medium_stuffing_stretch + 0.005, 1e-9);
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(Panels, TheEndIsChosenWithTheKeyboard) {
    FinishPanel panel(session);
    panel.show();
    QComboBox* end = nullptr;
    for (auto* box : panel.findChildren<QComboBox*>()) {
        if (box->findText(QStringLiteral("Drawn closed")) >= 0) end = box;
    }
    ASSERT_NE(end, nullptr);
    EXPECT_EQ(session.piece()->end, End::left_open);
    end->setFocus();
    QTest::keyClick(end, Qt::Key_Up);
    EXPECT_EQ(session.piece()->end, End::drawn_closed);
    QTest::keyClick(end, Qt::Key_Down);
    QTest::keyClick(end, Qt::Key_Down);
    EXPECT_EQ(session.piece()->end, End::sewn_straight);
    EXPECT_EQ(end->currentText(), QStringLiteral("Flattened, sewn straight"));
    session.undo_stack().undo();
    EXPECT_NE(session.piece()->end, End::sewn_straight);
    EXPECT_EQ(end->currentIndex(), static_cast<int>(session.piece()->end));
}

TEST_F(Panels, StuffingSaysHowAPieceWithoutItLies) {
    StuffingPanel panel(session);
    panel.show();
    const auto says = [&](const QString& words) {
        return wait_until([&] { return child<QLabel>(panel, words) != nullptr; });
    };
    const auto set = [&](std::initializer_list<int> counts, End end) {
        Toy toy = toy_of(counts);
        toy.pieces[0].end = end;
        toy.pieces[0].area_stretch = unstuffed_stretch;
        session.start(toy);
    };
    set({6, 12, 18, 24, 24, 24, 24, 24}, End::sewn_straight);
    EXPECT_TRUE(says(QStringLiteral("it lies flat")));
    set({6, 12, 18, 24}, End::left_open);
    EXPECT_TRUE(says(QStringLiteral("stands by itself")));
}

TEST_F(Panels, AnOpenTubeStartsWithTheStitchesOfItsFirstRound) {
    FinishPanel panel(session);
    panel.show();
    auto* start = panel.findChildren<QComboBox*>().first();
    start->setFocus();
    QTest::keyClick(start, Qt::Key_Down);
    QTest::keyClick(start, Qt::Key_Down);
    ASSERT_TRUE(std::holds_alternative<OpenTube>(session.piece()->start));
    EXPECT_EQ(std::get<OpenTube>(session.piece()->start).chains, 6);
}

TEST_F(Panels, ChoosingAnotherSourceOfTheGaugeKeepsTheGauge) {
    GaugePanel panel(session);
    panel.show();
    auto* source = panel.findChildren<QComboBox*>().first();
    source->setFocus();
    source->setCurrentIndex(4);
    QTest::keyClick(source, Qt::Key_Up);  // from "given" to "yarn weight", then on to the circle
    QTest::keyClick(source, Qt::Key_Up);
    QTest::keyClick(source, Qt::Key_Up);
    ASSERT_TRUE(std::holds_alternative<SwatchGauge>(session.toy().gauge));
    const auto gauge = gauge_from(session.toy().gauge, session.toy().hook_mm);
    ASSERT_TRUE(gauge);
    EXPECT_GT(gauge->stitch_width_mm, 1);
}

TEST_F(Panels, LengthsFollowTheUnitAndKeepTheirMillimetres) {
    LengthSpinBox box(session.preferences(), 0, 1000);
    box.show_millimetres(56);
    EXPECT_EQ(box.cleanText(), QLocale().toString(56.0, 'f', 1));
    session.preferences().set_units(LengthUnit::inches);
    EXPECT_NEAR(box.value(), 56 / 25.4, 1e-3);
    EXPECT_EQ(box.millimetres(), 56);
    session.preferences().set_units(LengthUnit::millimetres);
    EXPECT_EQ(box.value(), 56);
}

TEST_F(Panels, RemovingAYarnMovesTheRoundsOfTheOthers) {
    session.edit_piece(QStringLiteral("Colour"), [](Piece& piece) { piece.rounds[2].yarn = 1; });
    YarnPanel panel(session);
    panel.show();
    auto* remove = child<QPushButton>(panel, QStringLiteral("Remove"));
    QTest::mouseClick(remove, Qt::LeftButton);
    EXPECT_EQ(session.toy().yarns.size(), 1u);
    EXPECT_EQ(session.toy().yarns[0].name, "Tide blue");
    EXPECT_EQ(session.piece()->rounds[2].yarn, 0u);
    EXPECT_FALSE(remove->isEnabled());
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().yarns.size(), 2u);
}

TEST_F(Panels, TheHookIsNamedAsTheTradeNamesIt) {
    YarnPanel panel(session);
    panel.show();
    const auto labels = panel.findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(
        labels, [](QLabel* label) { return label->text().contains(QStringLiteral("E-4")); }));
}

TEST_F(Panels, TheYarnsModelIsOne) {
    YarnsModel model(session);
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    session.edit(QStringLiteral("Add"), [](Toy toy) {
        toy.yarns.push_back(toy.yarns.front());
        return toy;
    });
    EXPECT_EQ(model.rowCount(), 3);
    session.undo_stack().undo();
    EXPECT_EQ(model.rowCount(), 2);
    EXPECT_TRUE(model.setData(model.index(0), QStringLiteral("Gull white"), Qt::EditRole));
    EXPECT_EQ(session.toy().yarns[0].name, "Gull white");
    EXPECT_FALSE(model.setData(model.index(0), QStringLiteral("   "), Qt::EditRole));
}

TEST_F(Panels, ThePlotSelectsRoundsByMouseAndKeys) {
    RoundsPlot plot(session);
    plot.resize(400, 300);
    plot.show();
    ASSERT_TRUE(wait_for_shape(session));
    QTest::mouseClick(&plot, Qt::LeftButton, {}, QPoint(static_cast<int>(plot.x_of(4)), 100));
    EXPECT_EQ(session.selection(), std::vector<int>{4});
    plot.setFocus();
    QTest::keyClick(&plot, Qt::Key_Right);
    EXPECT_EQ(session.selection(), std::vector<int>{5});
    QTest::keyClick(&plot, Qt::Key_End);
    EXPECT_EQ(session.selection(), std::vector<int>{8});
    EXPECT_FALSE(plot.round_at(1));
}

// Six more a round at h = w: 6 / (2 pi) of flat growth (arithmetic). The limits are those of the checks.
TEST_F(Panels, ThePlotNamesItsUnitsAndLimits) {
    ASSERT_TRUE(wait_for_shape(session));
    const std::vector<RoundStrip> strips = round_strips(*session.study(0), LengthUnit::millimetres);
    ASSERT_EQ(strips.size(), 3u);
    EXPECT_EQ(strips[0].unit, QStringLiteral("mm"));
    EXPECT_EQ(strips[2].unit, QStringLiteral("%"));
    ASSERT_EQ(strips[1].limits.size(), 3u);
    EXPECT_EQ(strips[1].limits[0].value, 1);
    EXPECT_EQ(strips[1].limits[0].says, QStringLiteral("lies flat"));
    EXPECT_EQ(strips[1].limits[2].value, gathers_below_growth);
    EXPECT_EQ(strips[2].limits[1].value, 100 * gaps_above_stretch);
    EXPECT_EQ(round_words(strips, 0).section(QLatin1Char('\n'), 0, 0), QStringLiteral("Round 1"));
    EXPECT_EQ(round_words(strips, 0).count(QLatin1Char('\n')), 3);
}

}  // namespace
}  // namespace roundwright::app
