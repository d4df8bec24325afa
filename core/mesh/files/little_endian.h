#pragma once

#include <bit>
#include <cstdint>
#include <string>

namespace roundwright {

/// Appends numbers to bytes, least byte first, whatever the machine's order.
inline void append_little_endian(std::string& bytes, std::uint16_t value) {
    bytes += static_cast<char>(value & 0xFFU);
    bytes += static_cast<char>(value >> 8U);
}

inline void append_little_endian(std::string& bytes, std::uint32_t value) {
    for (unsigned shift = 0; shift < 32; shift += 8) bytes += static_cast<char>((value >> shift) & 0xFFU);
}

inline void append_little_endian(std::string& bytes, float value) {
    append_little_endian(bytes, std::bit_cast<std::uint32_t>(value));
}

}  // namespace roundwright
