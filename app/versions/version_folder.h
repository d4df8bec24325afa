#pragma once

#include <optional>
#include <vector>

#include "app/storage/disk.h"
#include "app/storage/whole_file.h"
#include "app/versions/thin_versions.h"
#include "app/versions/version.h"

namespace roundwright::app {

/// The versions of one toy in their folder, with a note that says which file they belong to. What a version
/// is stands in the name of its file, so it is there whole or not at all, and there is no index that could
/// disagree. What is no version is left alone, but for what a write that was cut off left behind.
class VersionFolder {
  public:
    VersionFolder(QString path, Disk& disk) : path_(std::move(path)), disk_(disk) {}

    [[nodiscard]] const QString& path() const { return path_; }
    /// Newest first.
    [[nodiscard]] std::vector<Version> versions() const;
    /// The newest that stood in the toy's file.
    [[nodiscard]] std::optional<Version> newest_in_file() const;
    /// The path of the toy's file; empty: no note can be read.
    [[nodiscard]] QString noted_path() const;

    [[nodiscard]] std::optional<DiskFault> note_path(const QString& toy) const;
    struct Added {
        std::optional<DiskFault> fault;
        bool is_safe = false;  ///< also from a loss of power: only then may an older one go for it
    };
    /// Keeps `bytes` as the newest version.
    [[nodiscard]] Added add(const QByteArray& bytes, VersionKind kind, const QDateTime& when) const;
    void remove(const Version& version) const;
    /// Takes away what is more than the limits allow.
    void thin(const VersionLimits& limits, const QDateTime& now) const;
    /// Removes everything that is ours, and the folder with it.
    [[nodiscard]] std::optional<DiskFault> clear() const;

  private:
    void drop_same_before(const Version& newest) const;
    void sweep(const QDateTime& now) const;

    QString path_;
    Disk& disk_;
};

}  // namespace roundwright::app
