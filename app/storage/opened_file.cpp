#include "app/storage/opened_file.h"

#include <algorithm>

namespace roundwright::app {

bool write_all(Disk& disk, int file, const QByteArray& bytes) {
    for (qsizetype written = 0; written < bytes.size();) {
        const auto taken =
            disk.write(file, bytes.constData() + written, static_cast<std::size_t>(bytes.size() - written));
        if (taken < 0 && errno == EINTR) continue;
        if (taken == 0) errno = ENOSPC;
        if (taken <= 0) return false;
        written += taken;
    }
    return true;
}

bool read_all(Disk& disk, int file, qint64 most, QByteArray& bytes) {
    constexpr qint64 at_once = 1 << 20;
    while (bytes.size() <= most) {
        const auto before = bytes.size();
        const auto wanted = std::min<qint64>(at_once, most + 1 - before);
        bytes.resize(before + wanted);
        const auto got = disk.read(file, bytes.data() + before, static_cast<std::size_t>(wanted));
        bytes.resize(before + std::max<ssize_t>(got, 0));
        if (got < 0 && errno != EINTR) return false;
        if (got == 0) return true;
    }
    return true;
}

}  // namespace roundwright::app
