#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/shape/shape_arrival.h"
#include "app/shape/shape_sign.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

Toy ball_and_fin() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
    toy.pieces.push_back(piece_of({6, 9, 9, 12}, "Fin"));
    return toy;
}

/// A window whose shapes are worked out stitch by stitch.
class MakerWithStitches : public MakerAtTheWindow {
  public:
    explicit MakerWithStitches(Toy toy) : MakerAtTheWindow(std::move(toy)) {
        session.preferences().set_every_stitch(true);
        EXPECT_TRUE(wait_for_stitches());
    }
    bool wait_for_stitches() {
        return wait_until([this] {
            const int piece = session.current_piece();
            const EveryStitchState state = session.every_stitch(piece);
            return session.is_up_to_date(piece) && (state.found || state.refusal != EveryStitchRefusal::none);
        });
    }
    [[nodiscard]] ShapeSign& sign() { return *window->shape().findChild<ShapeSign*>(); }
    [[nodiscard]] Fidelity now() const {
        return session.shown_study(session.current_piece())->measures().fidelity;
    }
};

TEST(ShapeOnShow, TheSignSaysWhichShapeItIs) {
    MakerWithStitches maker(ball_and_fin());
    EXPECT_EQ(maker.sign().words(), QStringLiteral("Stitch by stitch"));
    EXPECT_EQ(maker.sign().spoken(), QStringLiteral("Shape on show: Stitch by stitch"));
    maker.press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(wait_until([&] { return maker.now() == Fidelity::round; }));
    EXPECT_TRUE(wait_until([&] { return maker.sign().words() == QStringLiteral("Round shape"); }));
    maker.press(Qt::Key_B, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(maker.wait_for_stitches());
    EXPECT_TRUE(wait_until([&] { return maker.sign().words() == QStringLiteral("Stitch by stitch"); }));
}

// A screen reader hears nothing of the shapes that come and go while keys do.
TEST(ShapeOnShow, TheSignHoldsStillWhileKeysCome) {
    MakerWithStitches maker(ball_and_fin());
    maker.after_each_key = [] { QCoreApplication::processEvents(QEventLoop::AllEvents, 20); };
    maker.click_cell(7);
    for (int i = 0; i < 12; ++i) {
        maker.type(QStringLiteral("3%1").arg(i % 7));
        maker.press(Qt::Key_Return);
        EXPECT_EQ(maker.sign().words(), QStringLiteral("Stitch by stitch"));
    }
    ASSERT_TRUE(maker.wait_for_stitches());
    EXPECT_EQ(maker.now(), Fidelity::every_stitch);
    EXPECT_EQ(maker.sign().words(), QStringLiteral("Stitch by stitch"));
}

TEST(ShapeOnShow, AnotherPieceSaysItsOwn) {
    MakerWithStitches maker(ball_and_fin());
    Toy limp = maker.session.toy();
    limp.pieces[1] = piece_of({6, 12, 18, 24, 24, 24, 24, 24}, "Fin");
    limp.pieces[1].end = End::sewn_straight;
    limp.pieces[1].area_stretch = unstuffed_stretch;
    maker.session.edit(QStringLiteral("Limp"), limp);
    maker.click_tab(1);
    ASSERT_TRUE(maker.wait_for_stitches());
    EXPECT_TRUE(maker.sign().words().startsWith(QStringLiteral("Round shape: without stuffing it lies")))
        << maker.sign().words().toStdString();
    maker.click_tab(0);
    ASSERT_TRUE(maker.wait_for_stitches());
    EXPECT_EQ(maker.sign().words(), QStringLiteral("Stitch by stitch"));
}

TEST(ShapeOnShow, TheFabricSlidesToItsPlaceAndNotWhereLessMotionIsWished) {
    for (const bool less : {false, true}) {
        MakerWithStitches maker(ball_and_fin());
        maker.session.preferences().set_reduced_motion(less);
        auto& arrival = *maker.window->shape().findChild<ShapeArrival*>();
        bool slid = false;
        QObject::connect(&maker.session, &DocumentSession::surface_ready, &maker.session,
                         [&] { slid = slid || arrival.slides(); });
        maker.click_cell(7);
        maker.type(QStringLiteral("30"));
        maker.press(Qt::Key_Return);
        ASSERT_TRUE(wait_until([&] { return maker.now() == Fidelity::round; }));
        ASSERT_TRUE(maker.wait_for_stitches());
        EXPECT_EQ(slid, !less);
        EXPECT_TRUE(wait_until([&] { return !arrival.slides(); }));
        maker.session.preferences().set_reduced_motion(false);
    }
}

TEST(ShapeOnShow, AWindowClosesWhileEveryStitchIsWorkedOut) {
    Toy large = toy_of({});
    for (int i = 1; i <= 24; ++i) large.pieces[0].rounds.push_back({WorkedEvenly{6 * i}, 0, false, ""});
    for (int i = 24; i >= 1; --i) large.pieces[0].rounds.push_back({WorkedEvenly{6 * i}, 0, false, ""});
    for (int i = 0; i < 3; ++i) {
        MakerAtTheWindow maker(ball_and_fin());
        maker.session.preferences().set_every_stitch(true);
        maker.session.start(large);
        ASSERT_TRUE(wait_until([&] { return maker.session.shown_study(0) != nullptr; }));
        QTest::qWait(10 * i);
    }
}

TEST(ShapeOnShow, OneKeyStaggersTheIncreases) {
    MakerWithStitches maker(ball_and_fin());
    const auto stacked = [&](int round) {
        return std::get<WorkedEvenly>(maker.round(round).working).spacing == Spacing::stacked;
    };
    for (int i = 0; i < 15; ++i)
        maker.session.edit_piece(QStringLiteral("Stack"), [i](Piece& piece) {
            std::get<WorkedEvenly>(piece.rounds[static_cast<std::size_t>(i)].working).spacing =
                Spacing::stacked;
        });
    ASSERT_TRUE(stacked(4));
    maker.click_cell(4);
    maker.press(Qt::Key_B, Qt::ControlModifier);
    maker.press(Qt::Key_W);
    EXPECT_FALSE(stacked(4));
    EXPECT_FALSE(stacked(1)) << "of the whole piece";
    maker.session.undo_stack().undo();
    EXPECT_TRUE(stacked(4));
}

}  // namespace
}  // namespace roundwright::app
