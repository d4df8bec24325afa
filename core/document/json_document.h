#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

#include "core/pattern/toy.h"

namespace roundwright {

/// Version of the `.roundwright` format that this program writes.
inline constexpr int document_version = 1;

/// A file that cannot be read, with the place in it as a JSON pointer ("/pieces/0/rounds/3/stitches") or,
/// where the text is not JSON at all, a byte offset.
class DocumentError : public std::runtime_error {
  public:
    DocumentError(std::string path, const std::string& what)
        : std::runtime_error(what), path_(std::move(path)) {}
    [[nodiscard]] const std::string& path() const { return path_; }

  private:
    std::string path_;
};

struct ReadDocument {
    Toy toy;
    int version = document_version;
    bool newer = false;  ///< written by a newer program: what this one knows was read; open read-only
};

/// Reads a document of any version up to this one (older ones are migrated step by step), or what can be
/// understood of a newer one. Throws DocumentError; never anything else, whatever the bytes are.
[[nodiscard]] ReadDocument read_document(std::string_view json);

/// The document as UTF-8 JSON, indented, keys in a fixed order; the same toy gives the same bytes.
[[nodiscard]] std::string write_document(const Toy& toy);

}  // namespace roundwright
