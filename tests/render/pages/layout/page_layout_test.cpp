#include "render/pages/layout/page_layout.h"

#include <gtest/gtest.h>
#include <random>

namespace roundwright::render {
namespace {

BlockShape of(double height, double space = 0) {
    BlockShape shape;
    shape.height = height;
    shape.space_before = space;
    return shape;
}

BlockShape heading(double height) {
    BlockShape shape = of(height);
    shape.keep_with_next = true;
    return shape;
}

TEST(PageLayout, StacksBlocksAndTurnsThePage) {
    const std::vector<BlockShape> blocks{of(40, 10), of(40, 10), of(40, 10)};
    const auto placed = lay_out(blocks, 100);
    ASSERT_EQ(placed.size(), 3u);
    EXPECT_EQ(placed[0].top, 0);
    EXPECT_EQ(placed[1].top, 50);
    EXPECT_EQ(placed[2].page, 1);
    EXPECT_EQ(placed[2].top, 0);
    EXPECT_EQ(page_count(placed), 2);
}

TEST(PageLayout, AHeadingIsNeverLeftBehind) {
    const std::vector<BlockShape> blocks{of(70), heading(20), heading(5), of(20)};
    const auto placed = lay_out(blocks, 100);
    EXPECT_EQ(placed[1].page, 1);
    EXPECT_EQ(placed[2].page, 1);
    EXPECT_EQ(placed[3].page, 1);
}

TEST(PageLayout, ATablesHeadIsRepeated) {
    std::vector<BlockShape> blocks{heading(10)};
    for (int i = 0; i < 5; ++i) {
        blocks.push_back(of(30));
        blocks.back().header = 0;
    }
    const auto placed = lay_out(blocks, 100);
    // head and three rows; head and two rows
    ASSERT_EQ(placed.size(), 7u);
    EXPECT_EQ(placed[4].block, 0u);
    EXPECT_EQ(placed[4].page, 1);
    EXPECT_EQ(placed[5].block, 4u);
    EXPECT_EQ(placed[5].top, 10);
}

TEST(PageLayout, ABlockCanAskForAPage) {
    std::vector<BlockShape> blocks{of(10), of(10)};
    blocks[0].starts_page = blocks[1].starts_page = true;
    const auto placed = lay_out(blocks, 100);
    EXPECT_EQ(placed[0].page, 0);
    EXPECT_EQ(placed[1].page, 1);
}

TEST(PageLayout, WhatIsTooTallGetsAPageToItself) {
    const std::vector<BlockShape> blocks{of(10), of(150), of(10)};
    const auto placed = lay_out(blocks, 100);
    EXPECT_EQ(placed[1].page, 1);
    EXPECT_EQ(placed[1].top, 0);
    EXPECT_EQ(placed[2].page, 2);
}

TEST(PageLayout, NothingIsLostNothingOverlaps) {
    std::mt19937 random(7);
    for (int run = 0; run < 500; ++run) {
        std::vector<BlockShape> blocks(random() % 60);
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            blocks[i].height = static_cast<double>(1 + random() % 120);
            blocks[i].space_before = static_cast<double>(random() % 30);
            blocks[i].keep_with_next = random() % 3 == 0;
            blocks[i].starts_page = random() % 10 == 0;
        }
        const auto placed = lay_out(blocks, 100);
        ASSERT_EQ(placed.size(), blocks.size());
        for (std::size_t i = 0; i < placed.size(); ++i) {
            EXPECT_EQ(placed[i].block, i);
            const double bottom = placed[i].top + blocks[i].height;
            EXPECT_TRUE(bottom <= 100 || placed[i].top == 0);
            if (i == 0) continue;
            if (placed[i].page == placed[i - 1].page) {
                EXPECT_GE(placed[i].top, placed[i - 1].top + blocks[i - 1].height);
                EXPECT_FALSE(blocks[i].starts_page);
            } else {
                EXPECT_EQ(placed[i].page, placed[i - 1].page + 1);
            }
        }
    }
}

}  // namespace
}  // namespace roundwright::render
