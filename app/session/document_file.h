#pragma once

#include <optional>

#include <QString>

#include "app/storage/whole_file.h"
#include "core/document/json_document.h"

namespace roundwright::app {

/// Why a file could not be read or written, in the maker's language, and the place in the file (may be
/// empty).
struct FileProblem {
    QString message;
    QString place;
    /// Not written, since it is no longer the file that it was to take the place of.
    bool was_changed = false;
};

struct LoadedFile {
    ReadDocument document;
    std::optional<FileProblem> problem;
    FileStamp stamp{};  ///< which state of which file; empty for what is no file on a disk
};

/// Reads a document from disk. What is too large is refused, and what is no ordinary file too.
[[nodiscard]] LoadedFile load_document_file(const QString& path);

/// Reads a document from a pipe or a device, and waits for what comes.
[[nodiscard]] LoadedFile load_document_stream(const QString& path);

/// Reads what was read from a file.
[[nodiscard]] LoadedFile load_document(const ReadFile& file);

/// What stands in a file and was kept, but not understood, as a sentence with its place.
[[nodiscard]] QString unread_key_words(const UnreadKey& key);

/// A piece whose id was put right, as a sentence with its place.
[[nodiscard]] QString mended_id_words(const MendedId& mended);

/// Writes a document to disk, whole or not at all. Nothing on success.
[[nodiscard]] std::optional<FileProblem> save_document_file(const QString& path, const Toy& toy);

struct SavedFile {
    std::optional<FileProblem> problem;
    FileStamp stamp{};          ///< of what stands there now; empty for what is no file on a disk
    QString remarks{};          ///< what is to be known of it, as a sentence or two; mostly nothing
    bool not_yet_safe = false;  ///< see WrittenFile
};

/// The same, as the wishes say.
[[nodiscard]] SavedFile save_document_file(const QString& path, const Toy& toy, const WriteWishes& wishes);

}  // namespace roundwright::app
