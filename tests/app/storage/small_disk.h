#pragma once

#include <fstream>
#include <string>
#include <sys/mount.h>

#include <QTemporaryDir>

namespace roundwright::app {

/// A real disk with room for 64 KiB (a tmpfs), where the system lets this user mount one.
class SmallDisk {
  public:
    SmallDisk() {
        const QByteArray at = folder_.path().toLocal8Bit();
        is_there_ = ::mount("tmpfs", at.constData(), "tmpfs", MS_NOSUID | MS_NODEV, "size=64k") == 0;
    }
    ~SmallDisk() {
        if (is_there_) ::umount2(folder_.path().toLocal8Bit().constData(), MNT_DETACH);
    }
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;

    [[nodiscard]] bool is_there() const { return is_there_; }
    [[nodiscard]] QString path(const QString& name) const { return folder_.filePath(name); }
    /// Writes until nothing more is taken.
    void fill() const {
        std::ofstream file(path(QStringLiteral("ballast")).toStdString(), std::ios::binary);
        const std::string page(4096, '.');
        while (file.write(page.data(), static_cast<std::streamsize>(page.size())) && file.flush()) {
        }
    }
    void make_room() const { ::remove(path(QStringLiteral("ballast")).toLocal8Bit().constData()); }
    bool become_read_only() const {
        return ::mount(nullptr, folder_.path().toLocal8Bit().constData(), nullptr,
                       MS_REMOUNT | MS_RDONLY | MS_NOSUID | MS_NODEV, nullptr) == 0;
    }

  private:
    QTemporaryDir folder_;
    bool is_there_ = false;
};

}  // namespace roundwright::app
