#pragma once

#include <optional>
#include <vector>

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include "app/versions/version_folder.h"

namespace roundwright::app {

/// What came of keeping.
struct KeptVersion {
    std::optional<DiskFault> fault;
    std::optional<FileStamp> of{};  ///< the state of the toy's file whose content is kept
};

/// The earlier versions of all toys: `versions/<SHA-256 of the file's canonical path>/` in the state folder,
/// private (0700, files 0600) and never reached through links. Holds nothing itself: may be copied, and used
/// by several threads and programs at once.
class VersionStore {
  public:
    /// `state_folder` empty: the usual one.
    explicit VersionStore(const QString& state_folder = {}, Disk& disk = Disk::in_use(),
                          const VersionLimits& limits = {});

    /// Keeps `bytes` as the newest version of the toy in `path`, unless the newest is just that, and takes
    /// away what the limits leave no room for. The file need not be there.
    [[nodiscard]] KeptVersion keep(const QString& path, const QByteArray& bytes, VersionKind kind,
                                   const QDateTime& when = QDateTime::currentDateTimeUtc()) const;
    /// Keeps what stands in the file now, if it is not the newest version yet: what was saved just before a
    /// crash, what another program wrote, what is about to be replaced. No file, or one that is no toy's (too
    /// large, a device), is no fault.
    ///
    /// A file without versions takes over those of a toy that is no longer where it was, if its content is
    /// their newest: it was moved or renamed.
    [[nodiscard]] KeptVersion keep_what_stands_in(const QString& path) const;

    /// Newest first.
    [[nodiscard]] std::vector<Version> versions_of(const QString& path) const;
    /// The bytes of a version, for `read_document`.
    [[nodiscard]] ReadFile read(const Version& version) const;
    /// Removes all versions of a toy.
    [[nodiscard]] std::optional<DiskFault> forget(const QString& path) const;

  private:
    [[nodiscard]] std::optional<DiskFault> add(const QString& path, const QByteArray& bytes, VersionKind kind,
                                               const QDateTime& when) const;
    [[nodiscard]] QString all_folder() const;
    [[nodiscard]] VersionFolder folder_of(const QString& canonical) const;
    [[nodiscard]] std::optional<DiskFault> make_folder(const VersionFolder& folder) const;
    void take_over(const VersionFolder& own, const QByteArray& sha256) const;
    [[nodiscard]] bool is_gone(const VersionFolder& folder) const;
    void thin_all(const VersionFolder& spared) const;
    [[nodiscard]] std::vector<VersionFolder> folders() const;

    QString state_folder_;
    Disk& disk_;
    VersionLimits limits_;
};

/// The path by which a toy's versions are found: without links, whether or not a file is there.
[[nodiscard]] QString canonical_toy_path(const QString& path);

/// `VersionStore::keep` in the usual place: what stood in a file, or was to, when something else takes its
/// place.
std::optional<DiskFault> keep_version(const QString& path, const QByteArray& bytes, VersionKind kind);

}  // namespace roundwright::app
