#pragma once

#include <string_view>

#include "core/stitches/stitch.h"

namespace roundwright {

/// The two ways the trade names its stitches.
enum class Terms { us, uk };

/// Abbreviation of a stitch: "sc" in US terms is "dc" in UK terms, and so on.
/// Source: Craft Yarn Council, Standards and Guidelines for Crochet and Knitting, table of US and UK terms.
[[nodiscard]] std::string_view abbreviation(StitchKind kind, Terms terms);

/// The stitch's name in full: "single crochet" in US terms is "double crochet" in UK terms.
[[nodiscard]] std::string_view full_name(StitchKind kind, Terms terms);

}  // namespace roundwright
