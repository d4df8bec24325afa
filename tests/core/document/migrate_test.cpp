#include "core/document/migrate.h"

#include <array>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "core/document/json_document.h"

namespace roundwright {
namespace {

void add_letter(nlohmann::json& document, char letter) {
    document["steps"] = document.value("steps", std::string()) + letter;
}

TEST(Migrate, AppliesTheStepsFromTheDocumentsOwnVersionOn) {
    const std::array<Migration, 3> steps{[](nlohmann::json& document) { add_letter(document, 'a'); },
                                         [](nlohmann::json& document) { add_letter(document, 'b'); },
                                         [](nlohmann::json& document) { add_letter(document, 'c'); }};
    for (const auto& [version, expected] :
         {std::pair{1, "abc"}, std::pair{2, "bc"}, std::pair{3, "c"}, std::pair{4, ""}}) {
        nlohmann::json document = nlohmann::json::object();
        migrate(document, version, steps);
        EXPECT_EQ(document.value("steps", std::string()), expected) << "version " << version;
    }
}

TEST(Migrate, HasOneStepForEachVersionBeforeThisOne) { EXPECT_EQ(migrations().size() + 1, document_version); }

}  // namespace
}  // namespace roundwright
