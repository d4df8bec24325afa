#include <gtest/gtest.h>
#include <map>
#include <memory>

#include <QComboBox>
#include <QDir>
#include <QLineEdit>
#include <QScrollArea>
#include <QStatusBar>
#include <QToolButton>

#include "app/checks/checks_list.h"
#include "app/face/face_panel.h"
#include "app/kit/notice_bar.h"
#include "app/pieces/piece_edits.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "render/scene/scene_view.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

// Small laptops, with what the frame and the title of a window take off.
constexpr QSize small_screen(1016, 660);
constexpr QSize usual_screen(1272, 760);

class LayoutTest : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session.preferences().set_units(LengthUnit::millimetres);
        session.preferences().set_terms(Terms::us);
        session.start(toy_of({6, 12, 18, 24, 30, 36, 36, 36, 30, 24, 18, 12, 6}));
        window = std::make_unique<MainWindow>(session, folder.filePath(QStringLiteral("state")));
        show_at(usual_screen);
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
        settle();
    }
    void show_at(QSize size) {
        window->resize(size);
        window->show();
        settle();
    }
    /// What folds, wraps or scrolls does so over several turns of the event loop.
    void settle() {
        ASSERT_TRUE(wait_for_shape(session));
        for (int turn = 0; turn < 5; ++turn) QTest::qWait(5);
    }
    /// "400 x 300 at 20, 40"
    [[nodiscard]] std::string place_of(const QWidget& widget) const {
        const QPoint corner = widget.mapTo(window.get(), QPoint());
        return QStringLiteral("%1 x %2 at %3, %4")
            .arg(widget.width())
            .arg(widget.height())
            .arg(corner.x())
            .arg(corner.y())
            .toStdString();
    }
    [[nodiscard]] std::map<std::string, std::string> places() {
        std::map<std::string, std::string> places{{"the view", place_of(*window->shape().scene()->widget())},
                                                  {"the entry line", place_of(*window->fast_entry().line())},
                                                  {"the panels", place_of(window->panels())},
                                                  {"the table", place_of(*window->rounds_view().viewport())},
                                                  {"the checks", place_of(window->checks())}};
        for (auto* button : window->shape().findChildren<QToolButton*>())
            places["the button " + button->text().toStdString()] = place_of(*button);
        return places;
    }
    [[nodiscard]] std::map<std::string, std::string> titles() {
        std::map<std::string, std::string> titles;
        for (auto* title : window->panels().findChildren<QToolButton*>(QStringLiteral("panel-title")))
            titles[title->text().toStdString()] = place_of(*title);
        return titles;
    }
    void set_count(std::size_t round, int stitches) {
        session.edit_piece(QStringLiteral("Set"),
                           [&](Piece& piece) { piece.rounds[round].working = WorkedEvenly{stitches}; });
        settle();
    }
    [[nodiscard]] int checks() { return window->checks().view()->model()->rowCount(); }

    QTemporaryDir folder;
    DocumentSession session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(LayoutTest, ChecksComeAndGoWithoutMovingAnything) {
    for (const QSize size : {usual_screen, small_screen}) {
        show_at(size);
        const auto places_before = places();
        const auto titles_before = titles();
        const int checks_before = checks();
        for (const int stitches : {13, 60, 200}) {
            set_count(1, stitches);
            EXPECT_GT(checks(), checks_before);
            EXPECT_EQ(places(), places_before) << stitches;
            EXPECT_EQ(titles(), titles_before) << stitches;
        }
        set_count(1, 12);
        EXPECT_EQ(checks(), checks_before);
        EXPECT_EQ(places(), places_before);
    }
}

TEST_F(LayoutTest, NoticesMakeNoWindowLargerThanTheScreen) {
    const QString long_words = QStringLiteral(
        "“pup” can no longer be read. The end of the file is missing: it breaks off in line 2. The toy here "
        "is safe, but no file has it.");
    for (const QSize size : {usual_screen, small_screen}) {
        show_at(size);
        const auto before = places();
        for (const char* cause : {"one", "two"}) {
            window->notices().put_up(QLatin1String(cause), {NoticeRank::danger,
                                                            long_words,
                                                            {{QStringLiteral("Keep &both"), [] {}},
                                                             {QStringLiteral("Keep &mine"), [] {}}}});
            settle();
            EXPECT_EQ(window->size(), size) << cause;
            EXPECT_LE(window->statusBar()->geometry().bottom(), size.height()) << cause;
        }
        window->notices().take_down(QStringLiteral("one"));
        window->notices().take_down(QStringLiteral("two"));
        settle();
        EXPECT_EQ(places(), before) << "all is where it was";
    }
}

TEST_F(LayoutTest, NoPanelMovesWhatStandsBesideIt) {
    for (const QSize size : {usual_screen, small_screen}) {
        show_at(size);
        const auto before = places();
        for (const QString& key : window->panels().keys()) {
            window->panels().open_section(key);
            settle();
            EXPECT_EQ(window->size(), size) << key.toStdString();
            EXPECT_EQ(places(), before) << key.toStdString();
        }
        window->panels().fold_all();
        settle();
        EXPECT_EQ(places(), before) << "all folded";
    }
}

TEST_F(LayoutTest, WordsOfAnyLengthMoveNothing) {
    for (const QSize size : {usual_screen, small_screen}) {
        show_at(size);
        const auto before = places();
        const auto unchanged = [&](const char* after) {
            settle();
            EXPECT_EQ(places(), before) << after << " at " << size.width();
        };
        session.preferences().set_units(LengthUnit::inches);
        unchanged("inches");
        session.preferences().set_units(LengthUnit::millimetres);
        session.refuse(QStringLiteral("“12x” is not a count. Type a number of stitches, or +6, −6 or =."));
        unchanged("a message");
        session.set_shows_unstuffed(true);
        unchanged("unstuffed");
        session.set_shows_unstuffed(false);
        session.select_rounds({1, 3, 5, 7, 9, 11});
        unchanged("rounds selected");
        QTest::keyClicks(window->fast_entry().line(), QStringLiteral("6, 12, 18, 24x12, what is this, 18"));
        unchanged("typing");
        window->fast_entry().line()->clear();
        session.edit_piece(QStringLiteral("More"), [](Piece& piece) {
            piece.rounds.insert(piece.rounds.begin() + 6, 120, piece.rounds[6]);
        });
        unchanged("many rounds");
        session.undo_stack().undo();
        PieceEdits(session).rename(QStringLiteral("The left front flipper with the long name"));
        unchanged("a long name");
        PieceEdits(session).add();
        unchanged("another piece, without rounds");
        session.undo_stack().undo();
        session.set_current_piece(0);
        unchanged("undone");
    }
}

TEST_F(LayoutTest, FeaturesChosenAndMovedMoveNothingBesideTheirPanel) {
    for (const QSize size : {usual_screen, small_screen}) {
        show_at(size);
        window->panels().open_section(QStringLiteral("face"));
        settle();
        const auto places_before = places();
        const auto titles_before = titles();
        for (const auto kind :
             {FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::embroidered_eye,
              FeatureKind::felt_disc, FeatureKind::stitched_line}) {
            window->face().add(kind);
            settle();
            EXPECT_EQ(window->size(), size);
            EXPECT_EQ(places(), places_before) << static_cast<int>(kind);
            EXPECT_EQ(titles(), titles_before) << static_cast<int>(kind);
        }
    }
}

TEST_F(LayoutTest, EveryPanelFitsTheColumn) {
    window->face().add(FeatureKind::stitched_line);
    window->face().add(FeatureKind::safety_eye);
    const auto expect_fits = [&](const std::string& when) {
        settle();
        for (auto* body : window->panels().findChildren<QScrollArea*>()) {
            if (!body->isVisible()) continue;
            EXPECT_LE(body->widget()->minimumSizeHint().width(), body->viewport()->width())
                << body->accessibleName().toStdString() << ", " << when;
        }
    };
    for (const auto units : {LengthUnit::millimetres, LengthUnit::inches}) {
        session.preferences().set_units(units);
        for (const QString& key : window->panels().keys()) {
            window->panels().open_section(key);
            expect_fits(key.toStdString());
        }
        window->panels().open_section(QStringLiteral("gauge"));
        const SeveralGauge several{
            {{CircleGauge{.rounds = 5, .increases = 6, .across_mm = 51}, {}, "2026-05-03"},
             {SwatchGauge{20, 100, 22, 101.6, true, 1, 0}, "before washing, with much yarn", {}},
             {CircleGauge{.rounds = 5, .increases = 6, .across_mm = 61}, {}, {}}}};
        const std::pair<const char*, GaugeSource> sources[] = {{"unknown", std::monostate{}},
                                                               {"a swatch", SwatchGauge{}},
                                                               {"a circle", CircleGauge{}},
                                                               {"an estimate", EstimatedGauge{}},
                                                               {"given", GivenGauge{{5, 5, 0.2, 0.2}}},
                                                               {"several", several}};
        for (const auto& [name, source] : sources) {
            session.edit(QStringLiteral("Gauge"), [&gauge = source](Toy toy) {
                toy.gauge = gauge;
                return toy;
            });
            expect_fits(name);
        }
        window->panels().open_section(QStringLiteral("face"));
        for (const int feature : {0, 1}) {
            window->face().select(feature);
            expect_fits("feature " + std::to_string(feature));
        }
    }
}

TEST_F(LayoutTest, ThePlaceOfAPanelsFieldsDoesNotHangOnItsScrollBar) {
    window->panels().open_section(QStringLiteral("yarn"));
    show_at({1272, 1400});
    const auto* weight = window->panels().findChild<QComboBox*>();
    ASSERT_NE(weight, nullptr);
    const int wide = weight->width();
    show_at(small_screen);
    EXPECT_EQ(weight->width(), wide);
}

}  // namespace
}  // namespace roundwright::app
