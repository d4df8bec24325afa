#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "core/base/vec.h"

namespace roundwright {

/// A part of a graph that is eliminated at once: the nodes that separate its children from each other, or a
/// few nodes with no children.
struct DissectionPart {
    std::vector<std::int32_t> nodes;
    std::array<std::int32_t, 2> children{none, none};

    static constexpr std::int32_t none = -1;
};

/// Divides a graph in two again and again, by a plane across the longest axis of where its nodes lie, and
/// keeps the nodes of one side that touch the other as the separator (George, Nested dissection of a regular
/// finite element mesh, 1973). Children come before their parents; the last part is the root. On a surface of
/// n nodes the separators have about sqrt n.
[[nodiscard]] std::vector<DissectionPart> nested_dissection(
    std::size_t nodes, std::span<const std::array<std::int32_t, 2>> pairs, std::span<const Vec3> positions);

}  // namespace roundwright
