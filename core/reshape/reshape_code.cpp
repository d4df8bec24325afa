#include "core/reshape/reshape_code.h"

#include <array>
#include <utility>

namespace roundwright {
namespace {

constexpr std::array<std::pair<ReshapeCode, std::string_view>, 13> code_names{{
    {ReshapeCode::met, "met"},
    {ReshapeCode::unchanged, "unchanged"},
    {ReshapeCode::width_not_met, "width_not_met"},
    {ReshapeCode::height_not_met, "height_not_met"},
    {ReshapeCode::size_not_met, "size_not_met"},
    {ReshapeCode::nothing_wanted, "nothing_wanted"},
    {ReshapeCode::conflicting_target, "conflicting_target"},
    {ReshapeCode::unusable_target, "unusable_target"},
    {ReshapeCode::too_small, "too_small"},
    {ReshapeCode::too_large, "too_large"},
    {ReshapeCode::unusable_piece, "unusable_piece"},
    {ReshapeCode::not_of_revolution, "not_of_revolution"},
    {ReshapeCode::cancelled, "cancelled"},
}};

}  // namespace

std::string_view reshape_code_name(ReshapeCode code) {
    for (const auto& [value, name] : code_names)
        if (value == code) return name;
    return "";
}

bool has_piece(ReshapeCode code) { return code <= ReshapeCode::size_not_met; }

}  // namespace roundwright
