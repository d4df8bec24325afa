#include "core/gauge/hook.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace roundwright {

namespace {

// US names: Craft Yarn Council's www.YarnStandards.com, hook size chart. UK numbers: the old imperial wire
// gauge as printed beside metric sizes in the trade's conversion charts; those of 2, 3 and 7 mm from memory.
constexpr std::array<Hook, 19> table{{
    {2, "", "14"},       {2.25, "B-1", "13"},   {2.75, "C-2", "12"},    {3, "", "11"},   {3.25, "D-3", "10"},
    {3.5, "E-4", "9"},   {3.75, "F-5", ""},     {4, "G-6", "8"},        {4.5, "7", "7"}, {5, "H-8", "6"},
    {5.5, "I-9", "5"},   {6, "J-10", "4"},      {6.5, "K-10 1/2", "3"}, {7, "", "2"},    {8, "L-11", "0"},
    {9, "M/N-13", "00"}, {10, "N/P-15", "000"}, {12, "", ""},           {15, "", ""},
}};

}  // namespace

std::span<const Hook> hooks() { return table; }

const Hook* find_hook(double mm) {
    const auto found = std::find_if(table.begin(), table.end(),
                                    [mm](const Hook& hook) { return std::abs(hook.mm - mm) < 0.005; });
    return found == table.end() ? nullptr : &*found;
}

}  // namespace roundwright
