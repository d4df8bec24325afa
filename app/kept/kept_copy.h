#pragma once

#include <cstdint>
#include <optional>

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include "app/session/typed.h"
#include "app/storage/whole_file.h"

namespace roundwright::app {

/// What is said of a kept copy: whose it is, and where it stands among others.
struct KeptHead {
    std::uint64_t number =
        0;             ///< the higher, the later; of all copies of a state folder, whatever clocks say
    QDateTime kept;    ///< by the clock, to be told to the maker and for nothing else
    QString document;  ///< the toy's file, as it was named; empty: never saved
    /// The state of that file which the changes start from; an empty `sha256`: not known.
    FileStamp began_from{};
    PendingEntry typed{};
};

/// One file with all that an unsaved toy is, so that no two files of it can disagree:
///
///     roundwright-kept 1 NUMBER SHA256      of all that follows
///     {"document": ..., "began_from": ..., "typed": ...}
///     the toy, as a document
struct KeptCopy {
    KeptHead head;
    QByteArray toy;  ///< as `write_document` has it
};

[[nodiscard]] QByteArray kept_bytes(const KeptCopy& copy);
/// Nothing if it is not such a file, was cut off, or was written by a newer program.
[[nodiscard]] std::optional<KeptCopy> read_kept(const QByteArray& bytes);
/// The number alone, from the first bytes of a file; 0 if there is none.
[[nodiscard]] std::uint64_t kept_number(const QByteArray& beginning);

}  // namespace roundwright::app
