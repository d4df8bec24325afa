#include "app/session/background_solver.h"

#include <gtest/gtest.h>
#include <vector>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

SolveRequest request_of(std::uint64_t revision, std::initializer_list<int> counts, bool urgent) {
    SolveRequest request;
    request.revision = revision;
    request.toy = std::make_shared<const Toy>(toy_of(counts));
    request.urgent = request.surface_wanted = urgent;
    return request;
}

class BackgroundSolverTest : public ::testing::Test {
  protected:
    BackgroundSolverTest() {
        QObject::connect(&solver, &BackgroundSolver::solved,
                         [this](const SolveResult& result) { results.push_back(result); });
    }
    bool done() {
        return wait_until([this] { return !solver.busy(); });
    }
    std::vector<std::uint64_t> revisions() const {
        std::vector<std::uint64_t> all;
        for (const SolveResult& result : results) all.push_back(result.revision);
        return all;
    }

    BackgroundSolver solver;
    std::vector<SolveResult> results;
};

TEST_F(BackgroundSolverTest, AnUrgentRequestIsAnsweredInTwoSteps) {
    const SolveRequest request = request_of(1, {6, 12, 40, 12}, true);
    solver.post(request);
    ASSERT_TRUE(done());
    ASSERT_EQ(results.size(), 2U);
    EXPECT_FALSE(results[0].has_checks);
    EXPECT_TRUE(results[0].study->checks().empty());
    ASSERT_TRUE(results[0].surface);
    EXPECT_TRUE(results[1].has_checks && results[1].again);
    EXPECT_FALSE(results[1].study->checks().empty());
    EXPECT_EQ(results[1].surface, results[0].surface);
    EXPECT_EQ(results[1].shown, results[1].study);
    const SolveResult whole = solve_request(request, {});
    EXPECT_EQ(whole.study->checks().size(), results[1].study->checks().size());
    EXPECT_EQ(whole.study->revolved().radius_mm, results[1].study->revolved().radius_mm);
}

TEST_F(BackgroundSolverTest, AStudyThatIsKnownComesInOneStep) {
    SolveRequest request = request_of(1, {6, 12, 40, 12}, true);
    request.known = solve_request(request, {}).study;
    solver.post(request);
    ASSERT_TRUE(done());
    ASSERT_EQ(results.size(), 1U);
    EXPECT_TRUE(results[0].has_checks && results[0].surface);
    EXPECT_EQ(results[0].study, request.known);
}

TEST_F(BackgroundSolverTest, WhatIsNotUrgentKeepsItsOrder) {
    for (std::uint64_t revision = 1; revision <= 12; ++revision)
        solver.post(request_of(revision, {6, 12, 12}, false));
    solver.cancel(7);
    ASSERT_TRUE(done());
    EXPECT_EQ(revisions(), (std::vector<std::uint64_t>{1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12}));
}

TEST_F(BackgroundSolverTest, ChecksOfWhatIsUrgentGoBeforeTheOtherPieces) {
    for (std::uint64_t revision = 1; revision <= 60; ++revision)
        solver.post(request_of(revision, {6, 12, 18, 24, 24, 18, 12, 6}, false));
    solver.post(request_of(100, {6, 12, 40, 12}, true));
    ASSERT_TRUE(done());
    const auto all = revisions();
    ASSERT_EQ(all.size(), 62U);
    const auto second = std::find(all.rbegin(), all.rend(), 100U);
    EXPECT_GT(second - all.rbegin(), 0) << "the checks came last of all";
}

TEST_F(BackgroundSolverTest, NothingComesOfWhatIsCancelledBetweenItsSteps) {
    QObject::connect(&solver, &BackgroundSolver::solved, &solver,
                     [this](const SolveResult& result) { solver.cancel(result.revision); });
    solver.post(request_of(1, {6, 12, 40, 12}, true));
    ASSERT_TRUE(done());
    QTest::qWait(30);
    EXPECT_EQ(results.size(), 1U);
}

TEST_F(BackgroundSolverTest, ToysThatComeAndGoLeaveNothingBehind) {
    for (int i = 0; i < 40; ++i) {
        BackgroundSolver other;
        for (std::uint64_t revision = 1; revision < 5; ++revision)
            other.post(request_of(revision, {6, 12, 18, 12, 6}, revision % 2 == 0));
        if (i % 4 == 0) QCoreApplication::processEvents();
    }
    QTest::qWait(20);
    EXPECT_TRUE(results.empty());
}

}  // namespace
}  // namespace roundwright::app
