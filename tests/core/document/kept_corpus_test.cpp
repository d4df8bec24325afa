#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

#include "core/document/json_document.h"

namespace roundwright {
namespace {

std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// What the fuzzer has found so far, replayed: each file is refused with a DocumentError, or comes back the
// same.
TEST(KeptCorpus, IsReadAndWrittenTheSameOrRefused) {
    int read = 0;
    int refused = 0;
    for (const auto& entry : std::filesystem::directory_iterator(DOCUMENT_CORPUS)) {
        try {
            const Toy toy = read_document(contents(entry.path())).toy;
            const std::string once = write_document(toy);
            EXPECT_EQ(read_document(once).toy, toy) << entry.path();
            EXPECT_EQ(write_document(read_document(once).toy), once) << entry.path();
            ++read;
        } catch (const DocumentError&) {
            ++refused;
        }
    }
    EXPECT_GE(read, 10);
    EXPECT_GE(refused, 10);
}

}  // namespace
}  // namespace roundwright
