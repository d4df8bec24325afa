#include "core/document/migrate.h"

#include <array>
#include <gtest/gtest.h>
#include <string>

#include "core/document/json_document.h"
#include "core/document/json_parser.h"

namespace roundwright {
namespace {

std::string steps_of(const JsonTree& document) {
    const JsonTree::Id steps = document.find(JsonTree::root, "steps");
    return steps == JsonTree::none ? std::string() : document.text_of(steps);
}

void add_letter(JsonTree& document, char letter) {
    document.put(JsonTree::root, "steps", JsonKind::text, '"' + steps_of(document) + letter + '"');
}

TEST(Migrate, AppliesTheStepsFromTheDocumentsOwnVersionOn) {
    const std::array<Migration, 3> steps{[](JsonTree& document) { add_letter(document, 'a'); },
                                         [](JsonTree& document) { add_letter(document, 'b'); },
                                         [](JsonTree& document) { add_letter(document, 'c'); }};
    for (const auto& [version, expected] :
         {std::pair{1, "abc"}, std::pair{2, "bc"}, std::pair{3, "c"}, std::pair{4, ""}}) {
        JsonTree document = parse_json("{}");
        migrate(document, version, steps);
        EXPECT_EQ(steps_of(document), expected) << "version " << version;
    }
}

TEST(Migrate, HasOneStepForEachVersionBeforeThisOne) { EXPECT_EQ(migrations().size() + 1, document_version); }

}  // namespace
}  // namespace roundwright
