#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// Version of the `.roundwright` format that this program writes.
inline constexpr int document_version = 2;

/// Why a file cannot be read.
enum class DocumentFault {
    not_a_toy,    ///< a text, a picture, another program's JSON
    broken_off,   ///< its end is missing
    damaged,      ///< no JSON from some place on
    too_large,    ///< more than `max_file_bytes`
    too_deep,     ///< nested deeper than `deepest_nesting`
    wrong_value,  ///< a value is missing, or is not what belongs in its place
};

/// A file that cannot be read, with the place in it as a JSON pointer ("/pieces/0/rounds/3/stitches") or,
/// where it is no JSON from some place on, the line and column of that place. `what()` says in the format's
/// own terms what was expected and what was found, for whoever writes such files.
class DocumentError : public std::runtime_error {
  public:
    DocumentError(DocumentFault fault, std::string path, const std::string& what, int line = 0,
                  int column = 0)
        : std::runtime_error(what), fault_(fault), path_(std::move(path)), line_(line), column_(column) {}
    [[nodiscard]] DocumentFault fault() const { return fault_; }
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] int line() const { return line_; }      ///< from 1; 0: not known
    [[nodiscard]] int column() const { return column_; }  ///< bytes, from 1

  private:
    DocumentFault fault_;
    std::string path_;
    int line_;
    int column_;
};

/// A key that stands in a file and means nothing there: misspelt, or in the wrong place.
struct UnreadKey {
    std::string place;   ///< JSON pointer of the first
    std::string likely;  ///< the key of that place that was most likely meant; may be empty
    std::size_t more =
        0;  ///< further places like it ("/pieces/0/rounds/1/stich", "/pieces/0/rounds/2/stich" ...)

    friend bool operator==(const UnreadKey&, const UnreadKey&) = default;
};

/// Why a piece was given another id than the file says.
enum class IdFault {
    missing,
    taken,     ///< an earlier piece has the same
    no_number  ///< not a whole number from 1 to `largest_piece_id`
};

/// A piece whose id was put right when the file was read: all the rest of it is as it was.
struct MendedId {
    std::string place;  ///< JSON pointer of the id
    IdFault fault = IdFault::missing;

    friend bool operator==(const MendedId&, const MendedId&) = default;
};

struct ReadDocument {
    Toy toy;
    int version = document_version;
    bool newer = false;  ///< written by a newer program: what this one knows was read; open read-only
    std::vector<UnreadKey>
        unread{};  ///< what was left out, in the order of the file; the first `most_unread_keys`
    std::vector<MendedId> mended{};  ///< in the order of the pieces
};

inline constexpr std::size_t most_unread_keys = 20;

/// Reads a document of any version up to this one (older ones are migrated step by step), or what can be
/// understood of a newer one. Throws DocumentError; never anything else, whatever the bytes are.
[[nodiscard]] ReadDocument read_document(std::string_view json);

/// The document as UTF-8 JSON, indented, keys in a fixed order; the same toy gives the same bytes.
[[nodiscard]] std::string write_document(const Toy& toy);

}  // namespace roundwright
