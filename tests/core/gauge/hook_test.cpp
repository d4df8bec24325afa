#include "core/gauge/hook.h"

#include <cmath>
#include <gtest/gtest.h>
#include <string>
#include <tuple>
#include <vector>

namespace roundwright {
namespace {

// Craft Yarn Council's www.YarnStandards.com, hook sizes in mm and US; UK numbers as in printed conversion
// charts; those of 2, 3 and 7 mm from memory.
TEST(Hooks, PublishedNames) {
    const std::vector<std::tuple<double, std::string, std::string>> published{
        {2.25, "B-1", "13"},   {2.75, "C-2", "12"},     {3.25, "D-3", "10"},    {3.5, "E-4", "9"},
        {3.75, "F-5", ""},     {4.0, "G-6", "8"},       {4.5, "7", "7"},        {5.0, "H-8", "6"},
        {5.5, "I-9", "5"},     {6.0, "J-10", "4"},      {6.5, "K-10 1/2", "3"}, {8.0, "L-11", "0"},
        {9.0, "M/N-13", "00"}, {10.0, "N/P-15", "000"}, {2.0, "", "14"},        {3.0, "", "11"},
        {7.0, "", "2"}};
    for (const auto& [mm, us, uk] : published) {
        const Hook* hook = find_hook(mm);
        ASSERT_NE(hook, nullptr) << mm;
        EXPECT_EQ(hook->us, us);
        EXPECT_EQ(hook->uk, uk);
    }
}

TEST(Hooks, ThinnestFirst) {
    for (std::size_t i = 1; i < hooks().size(); ++i) EXPECT_LT(hooks()[i - 1].mm, hooks()[i].mm);
}

TEST(Hooks, OddSizesHaveNoName) {
    EXPECT_EQ(find_hook(4.2), nullptr);
    EXPECT_EQ(find_hook(std::nan("")), nullptr);
}

}  // namespace
}  // namespace roundwright
