#include "core/language/words/utf16.h"

#include <cstdint>

namespace roundwright {
namespace {

void add_utf8(std::string& text, std::uint32_t c) {
    const auto put = [&](std::uint32_t byte) { text += static_cast<char>(byte); };
    if (c < 0x80) return put(c);
    if (c < 0x800) return put(0xC0 | c >> 6), put(0x80 | (c & 0x3F));
    if (c < 0x10000) return put(0xE0 | c >> 12), put(0x80 | (c >> 6 & 0x3F)), put(0x80 | (c & 0x3F));
    put(0xF0 | c >> 18);
    put(0x80 | (c >> 12 & 0x3F));
    put(0x80 | (c >> 6 & 0x3F));
    put(0x80 | (c & 0x3F));
}

}  // namespace

std::optional<std::string> utf8_of_utf16(std::string_view bytes) {
    const bool little = bytes.starts_with("\xFF\xFE");
    if (!little && !bytes.starts_with("\xFE\xFF")) return std::nullopt;
    const auto unit = [&](std::size_t at) -> std::uint32_t {
        const auto first = static_cast<unsigned char>(bytes[at]);
        const auto second = static_cast<unsigned char>(bytes[at + 1]);
        return little ? first | second << 8u : first << 8u | second;
    };
    constexpr std::uint32_t unknown = 0xFFFD;
    std::string text;
    text.reserve(bytes.size());
    for (std::size_t at = 2; at + 1 < bytes.size(); at += 2) {
        std::uint32_t c = unit(at);
        if (c >= 0xD800 && c < 0xDC00 && at + 3 < bytes.size()) {
            const std::uint32_t low = unit(at + 2);
            const bool pair = low >= 0xDC00 && low < 0xE000;
            c = pair ? 0x10000 + ((c - 0xD800) << 10) + (low - 0xDC00) : unknown;
            at += pair ? 2 : 0;
        }
        add_utf8(text, c >= 0xD800 && c < 0xE000 ? unknown : c);
    }
    return text;
}

}  // namespace roundwright
