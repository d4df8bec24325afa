#include <gtest/gtest.h>
#include <new>
#include <stdexcept>
#include <system_error>

#include "render/background/fault_words.h"

namespace roundwright::render {
namespace {

TEST(OutOfMemory, IsToldFromOtherTrouble) {
    EXPECT_TRUE(is_out_of_memory(std::bad_alloc()));
    EXPECT_TRUE(is_out_of_memory(std::bad_array_new_length()));
    EXPECT_TRUE(is_out_of_memory(std::length_error("")));
    EXPECT_TRUE(
        is_out_of_memory(std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again))));
    EXPECT_FALSE(is_out_of_memory(std::out_of_range("")));
    EXPECT_FALSE(
        is_out_of_memory(std::system_error(std::make_error_code(std::errc::no_such_file_or_directory))));
}

}  // namespace
}  // namespace roundwright::render
