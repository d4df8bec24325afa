#include "core/checks/sound_cures.h"

#include <algorithm>
#include <map>

namespace roundwright {

namespace {

std::ptrdiff_t errors(const std::vector<Check>& checks) {
    return std::ranges::count(checks, Severity::error, &Check::severity);
}

std::map<CheckCode, int> warnings_by_code(const std::vector<Check>& checks) {
    std::map<CheckCode, int> counts;
    for (const Check& check : checks)
        if (check.severity == Severity::warning) ++counts[check.code];
    return counts;
}

bool is_about(const Check& check, const Cure& cure) {
    const int last = cure.first + static_cast<int>(cure.rounds.size());
    return check.round >= cure.first - 1 && check.round <= last;
}

bool brings_no_warning(const Check& check, const Cure& cure, const std::vector<Check>& before,
                       const std::vector<Check>& after) {
    auto counts = warnings_by_code(before);
    if (cure.kind == CureKind::remove_flat_mark && check.code == CheckCode::ruffles_though_flat)
        ++counts[CheckCode::ruffles];
    for (const auto& [code, count] : warnings_by_code(after))
        if (count > counts[code]) return false;
    return true;
}

bool warns_only_of_its_rounds(const Cure& cure, const std::vector<Check>& before,
                              const std::vector<Check>& after) {
    const auto elsewhere = [&](const std::vector<Check>& checks) {
        std::vector<Check> rest = checks;
        std::erase_if(rest, [&](const Check& check) { return is_about(check, cure); });
        return warnings_by_code(rest);
    };
    auto counts = elsewhere(before);
    for (const auto& [code, count] : elsewhere(after))
        if (count > counts[code]) return false;
    return true;
}

}  // namespace

bool is_sound_cure(const Check& check, const Cure& cure, const std::vector<Check>& before,
                   const std::vector<Check>& after) {
    if (check.severity == Severity::error)
        return errors(after) < errors(before) && warns_only_of_its_rounds(cure, before, after);
    return errors(after) <= errors(before) && brings_no_warning(check, cure, before, after);
}

void keep_sound_cures(const Piece& piece, std::vector<Check>& checks, int most_tried,
                      const std::function<std::vector<Check>(const Piece&)>& checks_of) {
    const std::vector<Check> before = checks;
    int tried = 0;
    for (Check& check : checks)
        std::erase_if(check.cures, [&](const Cure& cure) {
            if (++tried > most_tried) return true;
            return !is_sound_cure(check, cure, before, checks_of(cured_piece(piece, cure)));
        });
}

}  // namespace roundwright
