#include "core/document/migrate.h"

#include <array>

#include "core/document/json_document.h"

namespace roundwright {

std::span<const Migration> migrations() {
    static const std::array<Migration, document_version - 1> steps{};
    return steps;
}

void migrate(nlohmann::json& document, int from, std::span<const Migration> steps) {
    for (std::size_t step = static_cast<std::size_t>(from - 1); step < steps.size(); ++step)
        steps[step](document);
}

}  // namespace roundwright
