#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// Version of the `.roundwright` format that this program writes.
inline constexpr int document_version = 2;

/// A place in a file; both count from 1, and columns count bytes. 0: not known.
struct LineAndColumn {
    int line = 0;
    int column = 0;

    friend bool operator==(const LineAndColumn&, const LineAndColumn&) = default;
};

/// Why a file cannot be read.
enum class DocumentFault {
    not_a_toy,        ///< a text, a picture, another program's JSON
    broken_off,       ///< its end is missing
    damaged,          ///< no JSON from some place on
    too_large,        ///< more than `max_file_bytes`
    too_deep,         ///< nested deeper than `deepest_nesting`
    too_many_values,  ///< more than `most_values`
    wrong_value,      ///< a value is missing, or is not what belongs in its place
    doubled_key,      ///< a key stands twice in an object: one of the two would be lost
};

/// A file that cannot be read. Every fault but `not_a_toy` and `too_large` has the line and column of the
/// place, and where the file is JSON, its JSON pointer ("/pieces/0/rounds/3/stitches"). `what()` says in the
/// format's own terms what was expected and what was found, for whoever writes such files.
class DocumentError : public std::runtime_error {
  public:
    DocumentError(DocumentFault fault, std::string path, const std::string& what, LineAndColumn place = {},
                  LineAndColumn first = {})
        : std::runtime_error(what), fault_(fault), path_(std::move(path)), place_(place), first_(first) {}
    [[nodiscard]] DocumentFault fault() const { return fault_; }
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] LineAndColumn place() const { return place_; }
    [[nodiscard]] int line() const { return place_.line; }
    [[nodiscard]] int column() const { return place_.column; }
    /// Where a doubled key stands for the first time.
    [[nodiscard]] LineAndColumn first_place() const { return first_; }

  private:
    DocumentFault fault_;
    std::string path_;
    LineAndColumn place_;
    LineAndColumn first_;
};

/// A key that stands in a file and means nothing there: a newer program's, misspelt, or in the wrong place.
/// It is kept with its object (`KeptKeys`).
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
        unread{};  ///< what was kept, but not understood; the first `most_unread_keys` kinds
    std::vector<MendedId> mended{};  ///< in the order of the pieces
};

inline constexpr std::size_t most_unread_keys = 20;

/// Reads a document of any version up to this one (older ones are migrated step by step), or what can be
/// understood of a newer one. Throws DocumentError; never anything else, whatever the bytes are.
[[nodiscard]] ReadDocument read_document(std::string_view json);

/// The document as UTF-8 JSON, indented, keys in a fixed order; the same toy gives the same bytes.
[[nodiscard]] std::string write_document(const Toy& toy);

}  // namespace roundwright
