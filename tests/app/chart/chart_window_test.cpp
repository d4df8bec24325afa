#include "app/chart/chart_window.h"

#include <gtest/gtest.h>

#include <QComboBox>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(ChartWindow, ShowsABallInTwoPartsAndFollowsEdits) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6}));
    ChartWindow chart(session);
    chart.show();
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(chart.parts(), 2);
    session.edit_piece(QStringLiteral("Open"), [](Piece& piece) { piece.rounds.resize(4); });
    ASSERT_TRUE(wait_until([&] { return chart.parts() == 1; }));
}

TEST(ChartWindow, IsWrittenAsSvgWithItsKey) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18}));
    ChartWindow chart(session);
    ASSERT_TRUE(wait_for_shape(session));
    const QByteArray svg = chart.svg();
    EXPECT_TRUE(svg.contains("<svg"));
    EXPECT_GT(svg.size(), 2000);
}

TEST(ChartWindow, AToyWithoutRoundsHasNoChart) {
    DocumentSession session;
    session.start(Toy{});
    ChartWindow chart(session);
    EXPECT_EQ(chart.parts(), 0);
    EXPECT_TRUE(chart.svg().isEmpty());
}

}  // namespace
}  // namespace roundwright::app
