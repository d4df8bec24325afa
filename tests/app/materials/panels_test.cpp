#include <algorithm>
#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QSlider>
#include <QSpinBox>
#include <QStackedWidget>

#include "app/gauge/gauge_panel.h"
#include "app/kit/length_spin_box.h"
#include "app/kit/measure_spin_box.h"
#include "app/materials/stuffing_panel.h"
#include "app/materials/yarn_panel.h"
#include "app/materials/yarns_model.h"
#include "app/pieces/finish_panel.h"
#include "app/plot/round_strips.h"
#include "app/plot/rounds_plot.h"
#include "core/document/json_document.h"
#include "core/gauge/usual_gauge.h"
#include "core/shape/fabric_limits.h"
#include "render/wording/shape_words.h"
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

MeasureSpinBox* pace_of(StuffingPanel& panel) {
    for (auto* box : panel.findChildren<MeasureSpinBox*>())
        if (box->specialValueText() == QStringLiteral("not timed")) return box;
    return nullptr;
}

MeasureSpinBox* pellets_of(StuffingPanel& panel) {
    for (auto* box : panel.findChildren<MeasureSpinBox*>())
        if (box->suffix() == QStringLiteral(" g")) return box;
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
    EXPECT_TRUE(says(QStringLiteral("holds its own shape")));
}

TEST_F(Panels, OnlySomeRoundsAreStuffedByKeysInOneStepEach) {
    StuffingPanel panel(session);
    panel.show();
    auto* part = child<QCheckBox>(panel, QStringLiteral("Stuff only some rounds"));
    ASSERT_NE(part, nullptr);
    part->setFocus();
    QTest::keyClick(part, Qt::Key_Space);
    EXPECT_EQ(session.piece()->stuffed_rounds, (RoundSpan{0, 5}));
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Stuff only some rounds"));
    const auto boxes = panel.findChildren<QSpinBox*>();
    ASSERT_EQ(boxes.size(), 2);
    EXPECT_TRUE(boxes[0]->isVisible());
    const auto type = [](QSpinBox* box, const char* text) {
        box->setFocus();
        box->selectAll();
        QTest::keyClicks(box, QString::fromLatin1(text));
        QTest::keyClick(box, Qt::Key_Return);
    };
    type(boxes[0], "3");
    EXPECT_EQ(session.piece()->stuffed_rounds, (RoundSpan{2, 5}));
    type(boxes[1], "2");  // below the first, which goes along
    EXPECT_EQ(session.piece()->stuffed_rounds, (RoundSpan{1, 1}));
    EXPECT_EQ(boxes[0]->value(), 2);
    type(boxes[0], "9");
    EXPECT_EQ(session.piece()->stuffed_rounds, (RoundSpan{8, 8}));
    type(boxes[0], "77");  // there are nine rounds
    EXPECT_LE(session.piece()->stuffed_rounds->last, 8);
    part->setFocus();
    QTest::keyClick(part, Qt::Key_Space);
    EXPECT_FALSE(session.piece()->stuffed_rounds);
    EXPECT_FALSE(boxes[0]->isVisible());
    while (session.undo_stack().canUndo()) session.undo_stack().undo();
    EXPECT_FALSE(session.piece()->stuffed_rounds);
    EXPECT_FALSE(part->isChecked());
}

TEST_F(Panels, PelletsAreWeighedInTakenOutAndUndone) {
    StuffingPanel panel(session);
    panel.show();
    auto* pellets = pellets_of(panel);
    ASSERT_NE(pellets, nullptr);
    EXPECT_EQ(pellets->text(), QStringLiteral("none"));
    pellets->setFocus();
    pellets->selectAll();
    QTest::keyClicks(pellets, QStringLiteral("30"));
    QTest::keyClick(pellets, Qt::Key_Return);
    EXPECT_EQ(session.piece()->weight_grams, 30);
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("small parts")), nullptr);
    EXPECT_TRUE(child<QLabel>(panel, QStringLiteral("small parts"))->isVisible());
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.piece()->weight_grams, 0);
    EXPECT_EQ(pellets->text(), QStringLiteral("none"));
    EXPECT_FALSE(child<QLabel>(panel, QStringLiteral("small parts"))->isVisible());
    // What a file may say of a heavier piece is shown as it is.
    Toy heavy = session.toy();
    heavy.pieces[0].weight_grams = 8000;
    session.start(heavy);
    EXPECT_EQ(pellets->value(), 8000);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(Panels, PelletsThatAreBeingTypedAreNotWipedOut) {
    StuffingPanel panel(session);
    panel.show();
    auto* pellets = pellets_of(panel);
    ASSERT_NE(pellets, nullptr);
    pellets->setFocus();
    pellets->selectAll();
    QTest::keyClick(pellets, Qt::Key_4);
    session.edit_piece(QStringLiteral("Count"), [](Piece& piece) { piece.rounds.pop_back(); });
    ASSERT_TRUE(wait_for_shape(session));
    QTest::keyClick(pellets, Qt::Key_5);
    QTest::keyClick(pellets, Qt::Key_Return);
    EXPECT_EQ(session.piece()->weight_grams, 45);
}

TEST_F(Panels, StuffingCountsTheRoundsThatAreStuffed) {
    StuffingPanel panel(session);
    panel.show();
    const auto millilitres = [&] {
        const auto* words = child<QLabel>(panel, QStringLiteral(" ml"));
        static const QRegularExpression number(QStringLiteral("for ([0-9]+) ml"));
        return words != nullptr ? number.match(words->text()).captured(1).toInt() : 0;
    };
    ASSERT_TRUE(wait_until([&] { return millilitres() > 0; }));
    const int whole = millilitres();
    session.edit_piece(QStringLiteral("Part"), [](Piece& piece) { piece.stuffed_rounds = RoundSpan{0, 4}; });
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(wait_until([&] { return millilitres() < 0.75 * whole; })) << millilitres() << " of " << whole;
    EXPECT_GT(millilitres(), 0.25 * whole);
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

/// Indexes of the box of sources, in the order of the variant.
enum Source { not_known, swatch, circle, estimate, given };

/// The only page of a gauge panel that is on show.
QWidget* page_of(GaugePanel& panel) { return panel.findChild<QStackedWidget*>()->currentWidget(); }

void choose(GaugePanel& panel, int source) {
    auto* box = panel.findChildren<QComboBox*>().first();
    box->setFocus();
    while (box->currentIndex() != source)
        QTest::keyClick(box, box->currentIndex() < source ? Qt::Key_Down : Qt::Key_Up);
}

void type_into(QAbstractSpinBox* box, const char* text) {
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QString::fromLatin1(text));
    QTest::keyClick(box, Qt::Key_Return);
}

/// A toy whose gauge is estimated.
void estimate_gauge(DocumentSession& session) {
    session.edit(QStringLiteral("Estimate"), [](Toy toy) {
        toy.gauge = EstimatedGauge{YarnWeight::light};
        return toy;
    });
}

TEST_F(Panels, NothingIsMeasuredByChoosingHowToMeasure) {
    estimate_gauge(session);
    GaugePanel panel(session);
    panel.show();
    const Toy before = session.toy();
    for (const int source : {circle, swatch, given}) {
        choose(panel, source);
        EXPECT_EQ(session.toy(), before) << source;
        EXPECT_EQ(session.undo_stack().count(), 1) << source;
        QStringList empty;
        for (auto* box : page_of(panel)->findChildren<MeasureSpinBox*>())
            if (box->value() == 0) empty << box->text();
        EXPECT_TRUE(empty.contains(QStringLiteral("not measured")) ||
                    empty.contains(QStringLiteral("not counted")))
            << source;
    }
    choose(panel, not_known);
    EXPECT_FALSE(gauge_from(session.toy().gauge, session.toy().hook_mm));
}

TEST_F(Panels, AGaugeCircleCountsOnceItIsMeasured) {
    session.edit(QStringLiteral("None"), [](Toy toy) {
        toy.gauge = {};
        return toy;
    });
    GaugePanel panel(session);
    panel.show();
    choose(panel, circle);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_FALSE(session.study(0)->gauge_known);
    auto* across = page_of(panel)->findChild<LengthSpinBox*>();
    EXPECT_EQ(across->text(), QStringLiteral("not measured"));
    type_into(across, "56");
    ASSERT_TRUE(std::holds_alternative<CircleGauge>(session.toy().gauge));
    EXPECT_EQ(std::get<CircleGauge>(session.toy().gauge).across_mm, 56);
    EXPECT_EQ(session.undo_stack().count(), 2);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(session.study(0)->gauge_known);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().gauge.index(), std::size_t{not_known});
    EXPECT_EQ(panel.findChildren<QComboBox*>().first()->currentIndex(), not_known);
}

TEST_F(Panels, WhatIsTypedOfASwatchStaysWhileTheRestIsMissing) {
    estimate_gauge(session);
    GaugePanel panel(session);
    panel.show();
    const GaugeSource before = session.toy().gauge;
    choose(panel, swatch);
    const auto boxes = page_of(panel)->findChildren<QDoubleSpinBox*>();
    type_into(boxes[0], "20");
    EXPECT_EQ(session.toy().gauge, before);
    session.edit_piece(QStringLiteral("Count"), [](Piece& piece) { piece.make = 2; });
    EXPECT_EQ(boxes[0]->value(), 20);
    type_into(boxes[2], "22");
    ASSERT_TRUE(std::holds_alternative<SwatchGauge>(session.toy().gauge));
    EXPECT_EQ(std::get<SwatchGauge>(session.toy().gauge).stitches, 20);
    EXPECT_EQ(std::get<SwatchGauge>(session.toy().gauge).rounds, 22);
}

TEST_F(Panels, ADiscardedWishForAnotherGaugeLeavesTheMeasuredOne) {
    session.edit(QStringLiteral("Swatch"), [](Toy toy) {
        toy.gauge = SwatchGauge{.stitches = 20, .width_mm = 100, .rounds = 21, .height_mm = 100};
        return toy;
    });
    GaugePanel panel(session);
    panel.show();
    const Toy before = session.toy();
    choose(panel, circle);
    choose(panel, swatch);
    EXPECT_EQ(session.toy(), before);
    EXPECT_EQ(page_of(panel)->findChildren<QDoubleSpinBox*>().first()->value(), 20);
}

TEST_F(Panels, WhatWasMeasuredComesBackAfterALookAtAnotherKind) {
    const GaugeSource found = GivenGauge{{5.2, 5.1, 0.1, 0.1}, "Head"};
    session.edit(QStringLiteral("Found"), [&found](Toy toy) {
        toy.gauge = found;
        return toy;
    });
    GaugePanel panel(session);
    panel.show();
    choose(panel, estimate);
    EXPECT_EQ(session.toy().gauge, GaugeSource(EstimatedGauge{YarnWeight::light}));
    choose(panel, swatch);
    choose(panel, given);
    EXPECT_EQ(session.toy().gauge, found);
    session.start(toy_of({6, 12}));
    estimate_gauge(session);
    choose(panel, given);
    EXPECT_NE(session.toy().gauge, found);
}

// The shape is ready while the figure is typed.
TEST_F(Panels, ThePaceBeingTypedIsNotWipedOut) {
    StuffingPanel panel(session);
    panel.show();
    auto* pace = pace_of(panel);
    pace->setFocus();
    pace->selectAll();
    session.edit_piece(QStringLiteral("Count"), [](Piece& piece) { piece.rounds.pop_back(); });
    QTest::keyClick(pace, Qt::Key_1);
    ASSERT_TRUE(wait_for_shape(session));
    QTest::keyClick(pace, Qt::Key_4);
    QTest::keyClick(pace, Qt::Key_Return);
    EXPECT_EQ(session.toy().making.stitches_per_minute, 14);
}

TEST_F(Panels, ChoosingAYarnsWeightOffersItsHookAndSaysTheSize) {
    session.edit(QStringLiteral("Estimate"), [](Toy toy) {
        toy.gauge = EstimatedGauge{YarnWeight::light};
        toy.hook_mm = usual_hook_mm(YarnWeight::light);
        return toy;
    });
    YarnPanel panel(session);
    panel.show();
    auto* weight = panel.findChild<QComboBox*>();
    auto* take = child<QPushButton>(panel, QStringLiteral("mm hook"));
    EXPECT_EQ(take, nullptr);
    weight->setFocus();
    while (weight->currentIndex() < static_cast<int>(YarnWeight::bulky))
        QTest::keyClick(weight, Qt::Key_Down);
    EXPECT_EQ(session.toy().yarns[0].weight, YarnWeight::bulky);
    EXPECT_EQ(session.toy().gauge, GaugeSource(EstimatedGauge{YarnWeight::bulky}));
    take = child<QPushButton>(panel, QStringLiteral("mm hook"));
    ASSERT_NE(take, nullptr);
    EXPECT_TRUE(take->isVisible());
    auto* offer = child<QLabel>(panel, QStringLiteral("usually worked with"));
    ASSERT_NE(offer, nullptr);
    Toy then = session.toy();
    then.hook_mm = usual_hook_mm(YarnWeight::bulky);
    EXPECT_TRUE(offer->text().contains(size_words(study_piece(then, 0), LengthUnit::millimetres)))
        << offer->text().toStdString();
    QTest::mouseClick(take, Qt::LeftButton);
    EXPECT_EQ(session.toy().hook_mm, usual_hook_mm(YarnWeight::bulky));
    EXPECT_FALSE(take->isVisible());
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().hook_mm, usual_hook_mm(YarnWeight::light));
}

TEST_F(Panels, AMeasuredGaugeOutlivesAnotherWeight) {
    session.edit(QStringLiteral("Swatch"), [](Toy toy) {
        toy.gauge = SwatchGauge{.stitches = 20, .width_mm = 100, .rounds = 21, .height_mm = 100};
        return toy;
    });
    YarnPanel panel(session);
    panel.show();
    auto* weight = panel.findChild<QComboBox*>();
    weight->setFocus();
    QTest::keyClick(weight, Qt::Key_Down);
    EXPECT_TRUE(std::holds_alternative<SwatchGauge>(session.toy().gauge));
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("measure the gauge again")), nullptr);
}

TEST_F(Panels, StuffingAndTimeAreGuessesUntilTheMakerMeasures) {
    StuffingPanel panel(session);
    panel.show();
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("This is a guess")), nullptr);
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("a guess at 10 stitches a minute")), nullptr);
    session.edit(QStringLiteral("Mine"), [](Toy toy) {
        toy.making.stuffing_density_kg_per_m3 = 40;
        toy.making.stitches_per_minute = 14;
        return toy;
    });
    EXPECT_EQ(child<QLabel>(panel, QStringLiteral("guess")), nullptr);
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("by your own scales")), nullptr);
    EXPECT_NE(child<QLabel>(panel, QStringLiteral("at your pace")), nullptr);
}

TEST_F(Panels, ThePaceIsTypedOrTakenFromTimedRounds) {
    StuffingPanel panel(session);
    panel.show();
    ASSERT_TRUE(wait_for_shape(session));
    auto* pace = pace_of(panel);
    ASSERT_NE(pace, nullptr);
    EXPECT_EQ(pace->text(), QStringLiteral("not timed"));
    type_into(pace, "12.5");
    EXPECT_EQ(session.toy().making.stitches_per_minute, 12.5);
    auto* timed = child<QPushButton>(panel, QStringLiteral("rounds I timed"));
    EXPECT_EQ(timed, nullptr);
    session.edit_piece(QStringLiteral("Timed"), [](Piece& piece) {
        piece.worked.rounds = 6;
        piece.worked.seconds_of_round = {0, 0, 0, 0, 120, 120};  // rounds of 24 single crochets: 12 a minute
    });
    timed = child<QPushButton>(panel, QStringLiteral("rounds I timed: 12 a minute"));
    ASSERT_NE(timed, nullptr);
    EXPECT_TRUE(timed->isVisible());
    QTest::mouseClick(timed, Qt::LeftButton);
    EXPECT_EQ(session.toy().making.stitches_per_minute, 12);
    EXPECT_FALSE(timed->isVisible());
    type_into(pace, "0");
    EXPECT_EQ(session.toy().making.stitches_per_minute, std::nullopt);
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
