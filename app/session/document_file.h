#pragma once

#include <optional>

#include <QString>

#include "core/document/json_document.h"

namespace roundwright::app {

/// Why a file could not be read or written, in the maker's language, and the place in the file (may be
/// empty).
struct FileProblem {
    QString message;
    QString place;
};

struct LoadedFile {
    ReadDocument document;
    std::optional<FileProblem> problem;
};

/// Reads a document from disk. Sizes over the limit are refused before they are read.
[[nodiscard]] LoadedFile load_document_file(const QString& path);

/// What stands in a file and was kept, but not understood, as a sentence with its place.
[[nodiscard]] QString unread_key_words(const UnreadKey& key);

/// A piece whose id was put right, as a sentence with its place.
[[nodiscard]] QString mended_id_words(const MendedId& mended);

/// Writes a document to disk, whole or not at all. Nothing on success.
[[nodiscard]] std::optional<FileProblem> save_document_file(const QString& path, const Toy& toy);

}  // namespace roundwright::app
