#include "render/background/fault_words.h"

#include <gtest/gtest.h>
#include <new>
#include <stdexcept>
#include <vector>

namespace roundwright::render {
namespace {

template <typename Fault>
QString words(const Fault& fault) {
    return fault_words(std::make_exception_ptr(fault));
}

TEST(FaultWords, SayWhatWasThrown) {
    keep_memory_for_words();
    EXPECT_EQ(words(std::bad_alloc()), QStringLiteral("There is not enough memory for this."));
    EXPECT_EQ(words(std::length_error("vector")), QStringLiteral("There is not enough memory for this."));
    EXPECT_EQ(words(std::runtime_error("the tide")), QStringLiteral("This could not be finished: the tide"));
    EXPECT_EQ(words(1), QStringLiteral("This could not be finished."));
    keep_memory_for_words();
}

TEST(FaultWords, WhatTheMakerNamedIsNotReadAsAPlaceholder) {
    EXPECT_EQ(words(std::runtime_error("%1 %2")), QStringLiteral("This could not be finished: %1 %2"));
}

}  // namespace
}  // namespace roundwright::render
