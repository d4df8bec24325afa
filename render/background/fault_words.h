#pragma once

#include <exception>

#include <QString>

namespace roundwright::render {

/// Whether an exception says that memory is not enough: an allocation failed, a size is beyond what memory
/// may hold at all, or the system has no thread left.
[[nodiscard]] bool is_out_of_memory(const std::exception& problem) noexcept;
/// That, as a sentence.
[[nodiscard]] QString not_enough_memory_words();

/// What was thrown, as a sentence of plain text in the maker's language. Never throws: where there is no
/// memory left for words, it gives back part of its own (`keep_memory_for_words`).
[[nodiscard]] QString fault_words(const std::exception_ptr& fault) noexcept;

/// Sets memory aside, so that the lack of it can be told and what was typed can be saved. Again after each
/// time it was used; to be called where a program begins.
void keep_memory_for_words() noexcept;

}  // namespace roundwright::render
