#pragma once

#include <cstdint>
#include <optional>

#include <QByteArray>
#include <QDateTime>
#include <QString>

namespace roundwright::app {

/// How a version came about.
enum class VersionKind {
    found,     ///< stood in the file when it was opened, or before it was replaced
    saved,     ///< by this program
    not_saved  ///< given up by the maker; never stood in the file
};

/// An earlier state of a toy's file.
struct Version {
    std::uint64_t number = 0;  ///< larger is newer, whatever the clock said
    QDateTime when;            ///< UTC, in milliseconds
    VersionKind kind = VersionKind::saved;
    QByteArray sha256;  ///< of the content, in hexadecimal
    QString file;       ///< that holds it: an ordinary toy file
    qint64 bytes = 0;

    friend bool operator==(const Version&, const Version&) = default;
};

/// Whether it stood in the toy's file.
[[nodiscard]] inline bool stood_in_file(const Version& version) {
    return version.kind != VersionKind::not_saved;
}

/// "00000012-20260304T140503250Z-saved-<sha256>.roundwright".
[[nodiscard]] QString version_file_name(const Version& version);
/// What such a name says; nothing if it is none.
[[nodiscard]] std::optional<Version> version_named(const QString& file_name);

[[nodiscard]] QByteArray content_sha256(const QByteArray& bytes);

}  // namespace roundwright::app
