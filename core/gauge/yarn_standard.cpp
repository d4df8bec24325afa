#include "core/gauge/yarn_standard.h"

namespace roundwright {

namespace {

// Source: Craft Yarn Council's www.YarnStandards.com, "Standard Yarn Weight System": stitches, hooks and
// wraps as printed; metres per 100 g computed from its yards per pound (0.2015907 m per 100 g for each yard
// per pound). Lace hooks are those of the 2018 edition; the older one gives steel hooks of 1.4 to 1.6 mm.
constexpr std::array<YarnStandard, 8> table{{
    {YarnWeight::lace, 0, "Lace", std::nullopt, {1.5, 2.25}, {30, 40}, {484, 0}},
    {YarnWeight::super_fine, 1, "Super Fine", Range{21, 32}, {2.25, 3.5}, {14, 30}, {383, 484}},
    {YarnWeight::fine, 2, "Fine", Range{16, 20}, {3.5, 4.5}, {12, 18}, {242, 383}},
    {YarnWeight::light, 3, "Light", Range{12, 17}, {4.5, 5.5}, {11, 15}, {182, 242}},
    {YarnWeight::medium, 4, "Medium", Range{11, 14}, {5.5, 6.5}, {9, 12}, {121, 181}},
    {YarnWeight::bulky, 5, "Bulky", Range{8, 11}, {6.5, 9}, {6, 9}, {81, 121}},
    {YarnWeight::super_bulky, 6, "Super Bulky", Range{6, 9}, {9, 16}, {5, 6}, {0, 81}},
    {YarnWeight::jumbo, 7, "Jumbo", Range{0, 5}, {16, 0}, {1, 4}, {0, 0}},
}};

}  // namespace

const std::array<YarnStandard, 8>& yarn_standards() { return table; }

const YarnStandard& yarn_standard(YarnWeight weight) { return table[static_cast<std::size_t>(weight)]; }

}  // namespace roundwright
