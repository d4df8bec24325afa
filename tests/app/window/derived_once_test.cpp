#include <gtest/gtest.h>

#include "core/rounds/piece_graph.h"
#include "core/study/piece_study.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

/// Counts what each key makes the program derive and solve, all threads together.
class DerivedOnce : public ::testing::Test {
  protected:
    struct Cost {
        std::uint64_t graphs = 0;
        std::uint64_t requests = 0;

        friend bool operator==(const Cost&, const Cost&) = default;
        friend std::ostream& operator<<(std::ostream& out, const Cost& cost) {
            return out << cost.graphs << " graphs, " << cost.requests << " requests";
        }
    };

    /// Of what is done, until all that follows from it is there.
    Cost cost_of(const std::function<void()>& act) {
        settle();
        const Cost before = so_far();
        act();
        settle();
        const Cost after = so_far();
        return {after.graphs - before.graphs, after.requests - before.requests};
    }
    /// Cures are tried on pieces of their own, with graphs of their own.
    Cost so_far() const { return {graphs_derived() - graphs_of_cures(), maker.session.requests_made()}; }
    void settle() {
        EXPECT_TRUE(wait_for_shape(maker.session));
        QTest::qWait(5);  // timers that a key has started
        EXPECT_TRUE(wait_for_shape(maker.session));
    }
    Cost cost_of_typing(const char* key) {
        return cost_of([&] { maker.type(QLatin1String(key)); });
    }
    Cost cost_of_enter() {
        return cost_of([&] { maker.press(Qt::Key_Return); });
    }

    /// A check that offers cures has each of them tried on a graph of its own; here there is to be none.
    [[nodiscard]] std::string checks() const {
        std::string codes;
        for (const Check& check : maker.session.shown_study(0)->checks())
            codes += std::string(check_code_name(check.code)) + " ";
        return codes;
    }

    MakerAtTheWindow maker{toy_to_type_into()};
};

TEST_F(DerivedOnce, ForEachDigitOfTheCountOfARound) {
    maker.session.start(toy_of({6, 9, 9, 9}));
    maker.click_cell(3);
    EXPECT_EQ(cost_of_typing("1"), (Cost{1, 0})) << "1 stitch cannot be worked";
    EXPECT_EQ(cost_of_typing("2"), (Cost{1, 1})) << checks();
    EXPECT_EQ(cost_of_enter(), (Cost{0, 0})) << "it was shown already";
    EXPECT_EQ(maker.counts()[3], 12);
    EXPECT_EQ(maker.session.undo_stack().count(), 1);
    EXPECT_EQ(maker.session.study(0)->graph().graph.rounds[3].loops_left, 12);
}

TEST_F(DerivedOnce, ForEachDigitOfTheNextRoundInTheTable) {
    maker.session.start(toy_of({6, 9, 9, 9}));
    maker.click_cell(4);
    EXPECT_EQ(cost_of_typing("1"), (Cost{1, 0})) << "1 stitch cannot be worked";
    EXPECT_EQ(cost_of_typing("2"), (Cost{1, 1})) << checks();
    EXPECT_EQ(cost_of_enter(), (Cost{0, 0}));
    EXPECT_EQ(maker.counts(), (std::vector{6, 9, 9, 9, 12}));
}

TEST_F(DerivedOnce, ForEachDigitInTheEntryLine) {
    maker.session.start(toy_of({6, 9, 9, 9}));
    maker.window->fast_entry().focus_line();
    settle();
    EXPECT_EQ(cost_of_typing("9"), (Cost{1, 1})) << checks();
    EXPECT_EQ(cost_of_typing("x"), (Cost{0, 0})) << "half typed";
    EXPECT_EQ(cost_of_typing("4"), (Cost{1, 1})) << checks();
    EXPECT_EQ(cost_of_enter(), (Cost{0, 0}));
    EXPECT_EQ(maker.counts(), (std::vector{6, 9, 9, 9, 9, 9, 9, 9}));
    EXPECT_TRUE(maker.window->fast_entry().line()->text().isEmpty());
}

TEST_F(DerivedOnce, ForEachLetterOfTheWordsOfARound) {
    maker.begin_words(5);
    for (const QChar letter : QStringLiteral("sc in each st around")) {
        const Cost cost = cost_of([&] { maker.type(letter); });
        EXPECT_LE(cost.requests, 1u) << QString(letter).toStdString();
    }
    EXPECT_EQ(cost_of_enter(), (Cost{0, 0}));
    EXPECT_EQ(maker.counts()[5], 30);
}

TEST_F(DerivedOnce, WhatIsGivenUpAsksForNothing) {
    maker.click_cell(5);
    maker.type(QStringLiteral("34"));
    EXPECT_EQ(cost_of([&] { maker.press(Qt::Key_Escape); }), (Cost{0, 0}));
    EXPECT_EQ(maker.counts()[5], 36);
    EXPECT_EQ(maker.session.study(0)->graph().graph.rounds[5].loops_left, 36);
}

TEST_F(DerivedOnce, WhereWordsNameRoundsTheOtherPiecesAreNotWorkedThroughAgain) {
    maker.session.edit(QStringLiteral("Words"), [](Toy toy) {
        toy.text.assembly = "Sew the fin to the head at round 9.";
        return toy;
    });
    maker.click_cell(5);
    EXPECT_EQ(cost_of_typing("34").requests, 1u);
    EXPECT_EQ(cost_of_enter(), (Cost{0, 0}));
    EXPECT_EQ(maker.session.toy().text.written_for.size(), 2u);
}

}  // namespace
}  // namespace roundwright::app
