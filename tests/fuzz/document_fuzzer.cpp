#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/document/json_document.h"

// Parse, write, parse, write and compare: whatever can be read comes back the same and in the same bytes, and
// what cannot is refused with a DocumentError that says where.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace roundwright;
    constexpr std::size_t most = 4'096;
    if (size > most) return 0;
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    Toy toy;
    try {
        toy = read_document(bytes).toy;
    } catch (const DocumentError& error) {
        if (error.fault() != DocumentFault::not_a_toy && error.line() == 0) std::abort();
        return 0;
    }
    const std::string once = write_document(toy);
    const Toy again = read_document(once).toy;
    if (again != toy || write_document(again) != once) std::abort();
    return 0;
}
