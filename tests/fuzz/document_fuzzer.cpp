#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/document/json_document.h"

// Parse, write, parse, write and compare: whatever can be read comes back the same and in the same bytes, and
// what cannot is refused with a DocumentError.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    Toy toy;
    try {
        toy = read_document(bytes).toy;
    } catch (const DocumentError&) {
        return 0;
    }
    const std::string once = write_document(toy);
    const Toy again = read_document(once).toy;
    if (again != toy || write_document(again) != once) std::abort();
    return 0;
}
