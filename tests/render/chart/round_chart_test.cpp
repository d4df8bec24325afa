#include "render/chart/round_chart.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QSignalSpy>
#include <QSvgRenderer>
#include <QTest>

#include "core/rounds/piece_graph.h"
#include "render/chart/round_chart_view.h"

namespace roundwright::render {
namespace {

struct Charted {
    Piece piece;
    StitchGraph graph;
    ChartLayout layout;
};

Charted charted(const std::vector<std::string>& rounds, Start start = MagicRing{},
                Joining joining = Joining::spiral) {
    Charted made;
    made.piece.start = start;
    made.piece.joining = joining;
    for (const auto& words : rounds) made.piece.rounds.emplace_back().working = AsWritten{words};
    const auto read = piece_graph(made.piece);
    EXPECT_TRUE(read.problems.empty());
    made.graph = read.graph;
    made.layout = chart_layout(made.piece, made.graph, {0, static_cast<int>(rounds.size()), false});
    return made;
}

Charted charted_counts(const std::vector<int>& counts, Start start = MagicRing{}) {
    Charted made;
    made.piece.start = start;
    for (const int count : counts) made.piece.rounds.emplace_back().working = WorkedEvenly{count};
    made.graph = piece_graph(made.piece).graph;
    made.layout = chart_layout(made.piece, made.graph, {0, static_cast<int>(counts.size()), false});
    return made;
}

double radius(const QPointF& p) { return std::hypot(p.x(), p.y()); }

QString abbreviation_of(ChartSymbol symbol) {
    return QStringLiteral("symbol %1").arg(static_cast<int>(symbol));
}

TEST(ChartLayout, StitchesStandOnTheHeadsOfTheLoopsTheyAreWorkedInto) {
    const auto chart = charted_counts({6, 12, 18, 24, 20, 10});
    std::vector<std::vector<const ChartStitch*>> rounds(6);
    for (const auto& stitch : chart.layout.stitches)
        rounds[static_cast<std::size_t>(stitch.round)].push_back(&stitch);
    for (std::size_t i = 1; i < rounds.size(); ++i) {
        ASSERT_EQ(rounds[i].size(), chart.graph.rounds[i].stitches.size());
        for (std::size_t s = 0; s < rounds[i].size(); ++s) {
            const auto& made = chart.graph.rounds[i].stitches[s];
            ASSERT_EQ(rounds[i][s]->feet.size(), made.stitch.feet);
            for (std::size_t k = 0; k < made.stitch.feet; ++k) {
                const auto loop = static_cast<std::size_t>(made.first_foot) + k;
                EXPECT_EQ(rounds[i][s]->feet[k], rounds[i - 1][loop]->head);
            }
        }
    }
}

TEST(ChartLayout, GoesAnticlockwiseOutwardsAndLeavesAGapForNumbers) {
    const auto chart = charted_counts({6, 12, 18});
    double last = 0;
    for (const auto& stitch : chart.layout.stitches) {
        if (stitch.round != 2) continue;
        const double angle =
            std::fmod(std::atan2(stitch.head.y(), stitch.head.x()) + 6.283185307, 6.283185307);
        EXPECT_GT(angle, last);
        last = angle;
        EXPECT_GT(radius(stitch.head), radius(stitch.feet[0]));
    }
    ASSERT_EQ(chart.layout.numbers.size(), 3U);
    for (const auto& number : chart.layout.numbers)
        for (const auto& stitch : chart.layout.stitches)
            EXPECT_GT(radius(stitch.head - number.place), 0.3) << number.round;
}

double angle(const QPointF& p) { return std::atan2(p.y(), p.x()); }

TEST(ChartLayout, EvenRoundsGoStraightOut) {
    const auto chart = charted_counts({6, 6, 6, 6, 6});
    for (const auto& stitch : chart.layout.stitches) {
        if (stitch.round > 1) {
            EXPECT_NEAR(angle(stitch.head), angle(stitch.feet[0]), 0.08) << stitch.round;
        }
    }
}

TEST(ChartLayout, HeadsStandAboveTheirFeetAsNearAsAStitchsRoomAllows) {
    const auto chart = charted_counts({6, 9, 12, 15, 18, 18, 18});
    const ChartStitch* before = nullptr;
    for (const auto& stitch : chart.layout.stitches) {
        EXPECT_LT(radius(stitch.head - stitch.feet[0]), 1.7) << stitch.round << ' ' << stitch.stitch;
        if (before != nullptr && before->round == stitch.round) {
            EXPECT_GT(radius(stitch.head - before->head), 0.75) << stitch.round << ' ' << stitch.stitch;
        }
        before = &stitch;
    }
}

// The ground of a round is a ring, however far apart its heads stand.
TEST(ChartLayout, AnEdgeGoesRoundItsStart) {
    const auto chart = charted_counts({6, 6, 6, 6, 6, 6, 6, 6});
    const ChartEdge& edge = chart.layout.edges.back();
    ASSERT_GT(edge.line.size(), 15U);
    for (std::size_t i = 0; i < edge.line.size(); ++i) {
        EXPECT_NEAR(radius(edge.line[i]), radius(edge.line[0]), 1e-9);
        EXPECT_LT(radius(edge.line[i] - edge.line[(i + 1) % edge.line.size()]), radius(edge.line[i]) / 2);
    }
}

TEST(ChartLayout, APartialRoundStaysBetweenItsNeighbours) {
    auto chart = charted_counts({6, 9, 12, 12, 12});
    auto& partial = chart.graph.rounds[3];
    partial.first_below = 3;
    partial.loops_below = 4;
    partial.loops_left = 12;
    partial.stitches.resize(12);
    for (int k = 0; k < 12; ++k) {
        partial.stitches[static_cast<std::size_t>(k)].first_foot = k / 3;
        partial.stitches[static_cast<std::size_t>(k)].stitch.same_foot = k % 3 > 0;
    }
    chart.graph.rounds.pop_back();
    const auto layout = chart_layout(chart.piece, chart.graph, {0, 4, false});
    std::vector<double> around;
    const auto add = [&](int round, int from, int to) {
        for (const auto& stitch : layout.stitches) {
            if (stitch.round == round && stitch.stitch >= from && stitch.stitch < to)
                around.push_back(stitch.share);
        }
    };
    add(2, 0, 3);
    add(3, 0, 12);
    add(2, 7, 12);
    ASSERT_EQ(around.size(), 20U);
    for (std::size_t i = 1; i < around.size(); ++i) EXPECT_GT(around[i], around[i - 1]) << i;
}

TEST(ChartLayout, TallerStitchesStandHigher) {
    const auto chart = charted({"6 sc", "[sc, hdc, dc] x 2"});
    const auto& s = chart.layout.stitches;
    EXPECT_LT(radius(s[6].head), radius(s[7].head));
    EXPECT_LT(radius(s[7].head), radius(s[8].head));
}

TEST(ChartLayout, FindsTheRepeat) {
    EXPECT_EQ(charted_counts({6, 12, 18, 24, 24, 18}).layout.repeats, 6);
    EXPECT_EQ(charted({"6 sc", "inc x 6", "[sc, inc] x 3, sc 6"}).layout.repeats, 1);
    EXPECT_EQ(charted({"6 sc", "inc x 6", "[sc 3, inc] x 3"}).layout.repeats, 3);
    EXPECT_EQ(charted_counts({7, 15, 16}).layout.repeats, 1);
}

TEST(ChartLayout, ChartsAClosingEndInwardsAndClockwise) {
    const auto ball = charted_counts({6, 12, 18, 24, 24, 24, 18, 12, 6});
    const auto parts = chart_parts(ball.piece, ball.graph);
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_EQ(parts[0].rounds, 6);
    EXPECT_EQ(parts[1].first, 6);
    EXPECT_TRUE(parts[1].inwards);
    const auto closing = chart_layout(ball.piece, ball.graph, parts[1]);
    ASSERT_EQ(closing.stitches.size(), 18U + 12 + 6);
    for (const auto& stitch : closing.stitches) EXPECT_LT(radius(stitch.head), radius(stitch.feet[0]));
    EXPECT_LT(closing.stitches[0].head.y(), 0);
    // A small dip is no part of its own; a bowl has one part.
    EXPECT_EQ(chart_parts(ball.piece, charted_counts({6, 12, 18, 24, 21, 24, 30}).graph).size(), 1U);
    const auto pear = charted_counts({6, 12, 18, 24, 30, 24, 18, 12, 18, 24, 24, 12, 6});
    EXPECT_EQ(chart_parts(pear.piece, pear.graph).size(), 4U);
}

TEST(ChartLayout, NarrowingByAThirdMakesAPart) {
    const auto fin = charted_counts({6, 9, 12, 15, 18, 18, 18, 15, 15, 12, 12});
    const auto parts = chart_parts(fin.piece, fin.graph);
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_EQ(parts[1].first, 7);
    const auto used = symbols_used(chart_layout(fin.piece, fin.graph, parts[1]));
    EXPECT_FALSE(std::ranges::count(used, ChartSymbol::chain));  // it starts on a round, not on chains
}

TEST(ChartLayout, PartsHoldEveryRoundOnce) {
    for (const auto& counts : {std::vector<int>{6}, {6, 12, 6, 12, 6}, {30, 15, 10, 20, 40, 20}, {8, 8, 8}}) {
        const auto chart = charted_counts(counts);
        int next = 0;
        for (const auto& part : chart_parts(chart.piece, chart.graph)) {
            EXPECT_EQ(part.first, next);
            EXPECT_GT(part.rounds, 0);
            next += part.rounds;
        }
        EXPECT_EQ(next, static_cast<int>(counts.size()));
    }
}

TEST(ChartLayout, RowsGoBackAndForth) {
    const auto chart = charted({"sc 6", "sc 6", "sc 6"}, OpenTube{6}, Joining::rows);
    const auto& s = chart.layout.stitches;
    EXPECT_TRUE(chart.layout.in_rows);
    EXPECT_GT(s[0].head.x(), s[5].head.x());
    EXPECT_LT(s[6].head.x(), s[11].head.x());
    // The first stitch of row 2 stands on the last of row 1.
    EXPECT_EQ(s[6].feet[0], s[5].head);
    EXPECT_EQ(s[12].feet[0], s[11].head);
}

TEST(ChartLayout, AnOvalIsWiderThanHigh) {
    const auto chart = charted_counts({18, 24}, OvalChain{7});
    EXPECT_GT(chart.layout.bounds.width(), chart.layout.bounds.height() + 4);
    EXPECT_EQ(chart.layout.start.chains.size(), 7U);
}

TEST(ChartSymbols, TheKeyNamesWhatIsUsed) {
    const auto chart = charted({"6 sc", "inc x 6", "[BLO sc, hdc, sc2tog, dc] x 2, bobble, sl st"});
    const auto used = symbols_used(chart.layout);
    const std::vector<ChartSymbol> wanted = {ChartSymbol::magic_ring,     ChartSymbol::slip_stitch,
                                             ChartSymbol::single_crochet, ChartSymbol::half_double_crochet,
                                             ChartSymbol::double_crochet, ChartSymbol::bobble,
                                             ChartSymbol::increase,       ChartSymbol::decrease,
                                             ChartSymbol::back_loop};
    EXPECT_EQ(used, wanted);
}

// Standard chart symbols: sc a cross, hdc a T, dc a T with one slash, tr with two; sl st a filled dot, ch an
// open oval (Craft Yarn Council for sc; the others from memory).
TEST(ChartSymbols, HaveTheTradesStrokes) {
    const auto lines = [](ChartSymbol symbol) {
        const auto paths = sample_of(symbol, CrossSymbol::upright);
        return paths.lines.toSubpathPolygons().size();
    };
    EXPECT_EQ(lines(ChartSymbol::single_crochet), 2);
    EXPECT_EQ(lines(ChartSymbol::half_double_crochet), 2);
    EXPECT_EQ(lines(ChartSymbol::double_crochet), 3);
    EXPECT_EQ(lines(ChartSymbol::treble_crochet), 4);
    EXPECT_EQ(lines(ChartSymbol::increase), 4);
    EXPECT_EQ(lines(ChartSymbol::decrease), 4);
    EXPECT_EQ(lines(ChartSymbol::chain), 1);
    EXPECT_TRUE(sample_of(ChartSymbol::chain, CrossSymbol::upright).fills.isEmpty());
    EXPECT_TRUE(sample_of(ChartSymbol::slip_stitch, CrossSymbol::upright).lines.isEmpty());
    EXPECT_FALSE(sample_of(ChartSymbol::slip_stitch, CrossSymbol::upright).fills.isEmpty());
}

TEST(RoundChart, TwelveRoundsOnAPageAreReadable) {
    const auto disc = charted_counts({6, 12, 18, 24, 30, 36, 42, 48, 54, 60, 66, 72});
    // A4 less margins, in mm; 5 mm a stitch is as large as print in a book's charts (common practice).
    EXPECT_EQ(plan_chart(disc.layout, {170, 240}, 5).sectors, 1);
    EXPECT_GE(plan_chart(disc.layout, {170, 240}, 5).units_per_stitch, 5);
    const auto large =
        charted_counts({6, 12, 18, 24, 30, 36, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96, 102, 108, 114, 120});
    const auto plan = plan_chart(large.layout, {170, 240}, 5);
    EXPECT_EQ(plan.sectors, 6);
    EXPECT_EQ(plan.shown, 1);
    EXPECT_GE(plan.units_per_stitch, 5);
}

TEST(RoundChart, TakesNoMoreSectorsThanGain) {
    // 7 more and then 6 more a round, so that nothing repeats.
    std::vector<int> counts{7};
    for (int i = 1; i < 40; ++i) counts.push_back(counts.back() + (i % 2 == 0 ? 7 : 6));
    const auto disc = charted_counts(counts);
    ASSERT_EQ(disc.layout.repeats, 1);
    const auto plan = plan_chart(disc.layout, {166, 198}, 2.6);
    EXPECT_GT(plan.sectors, 1);
    EXPECT_EQ(plan.shown, plan.sectors);
    EXPECT_GE(plan.units_per_stitch, 2.6);
    // Where the page's height is the limit, twelve sectors are no larger than six.
    const auto long_one = plan_chart(disc.layout, {1'000, 40}, 2.6);
    EXPECT_LT(long_one.sectors, 12);
}

TEST(RoundChart, SectorsHoldEveryStitchOnce) {
    const auto chart = charted_counts({7, 15, 22, 30, 29});
    for (int of : {2, 3, 6}) {
        std::size_t all = 0;
        for (int number = 0; number < of; ++number)
            for (const auto& stitch : chart.layout.stitches)
                all += static_cast<int>(std::floor(stitch.share * of)) == number ? 1 : 0;
        EXPECT_EQ(all, chart.layout.stitches.size());
    }
}

TEST(RoundChart, DrawsInsideItsTargetAndFindsStitchesAgain) {
    const auto chart = charted_counts({6, 12, 18, 24});
    QImage image(500, 400, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    ChartOptions options;
    options.target = QRectF(50, 20, 400, 360);
    const auto drawn = draw_chart(painter, chart.layout, options);
    painter.end();
    for (int y = 0; y < 400; ++y)
        for (int x = 0; x < 500; ++x)
            if (!options.target.adjusted(-1, -1, 1, 1).contains(x, y)) {
                ASSERT_EQ(image.pixel(x, y), qRgb(255, 255, 255));
            }
    for (std::size_t k = 0; k < chart.layout.stitches.size(); ++k) {
        const auto& stitch = chart.layout.stitches[k];
        const QPointF middle = drawn.to_painter.map((stitch.head + stitch.feet[0]) / 2);
        EXPECT_EQ(stitch_at(chart.layout, drawn, middle), k);
    }
    EXPECT_FALSE(stitch_at(chart.layout, drawn, {5, 5}));
}

TEST(RoundChart, SvgIsSoundWithItsKey) {
    const auto chart = charted({"6 sc", "inc x 6", "[hdc, inc] x 6"});
    const QByteArray svg = chart_svg(chart.layout, {}, abbreviation_of, QStringLiteral("Fin & <tail>"));
    QSvgRenderer renderer(svg);
    ASSERT_TRUE(renderer.isValid());
    EXPECT_TRUE(svg.contains("symbol 3"));
    EXPECT_LT(svg.size(), 60'000);
    EXPECT_TRUE(QSvgRenderer(chart_svg({}, {}, abbreviation_of, {})).isValid());
}

TEST(RoundChartView, ClicksNameStitchesAndZoomKeepsThePlace) {
    const auto chart = charted_counts({6, 12, 18, 24});
    RoundChartView view;
    view.resize(400, 400);
    view.set_chart(chart.layout, {});
    view.show();
    ChartOptions options;
    options.target = QRectF(0, 0, 400, 400).adjusted(8, 8, -8, -8);
    const auto drawn = place_chart(chart.layout, options);
    const auto& stitch = chart.layout.stitches[30];
    const QPoint place = drawn.to_painter.map((stitch.head + stitch.feet[0]) / 2).toPoint();
    QSignalSpy clicked(&view, &RoundChartView::clicked);
    QTest::mouseClick(&view, Qt::LeftButton, {}, place);
    ASSERT_EQ(clicked.count(), 1);
    EXPECT_EQ(clicked[0][0].toInt(), stitch.round);
    EXPECT_EQ(clicked[0][1].toInt(), stitch.stitch);
    QTest::keyClick(&view, Qt::Key_Plus);
    QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(200, 200) + (place - QPoint(200, 200)) * 1.25);
    ASSERT_EQ(clicked.count(), 2);
    EXPECT_EQ(clicked[1], clicked[0]);
    QTest::keyClick(&view, Qt::Key_0);
    QTest::mouseClick(&view, Qt::LeftButton, {}, QPoint(3, 3));
    EXPECT_EQ(clicked[2][0].toInt(), -1);
}

}  // namespace
}  // namespace roundwright::render
