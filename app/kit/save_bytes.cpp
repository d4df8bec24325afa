#include "app/kit/save_bytes.h"

#include "app/storage/disk_words.h"

namespace roundwright::app {

WrittenFile write_bytes(const QString& path, const QByteArray& bytes, const WriteWishes& wishes) {
    return is_device(path) ? write_stream(path, bytes) : write_whole(path, bytes, wishes);
}

SavedBytes save_bytes(const QString& path, const QByteArray& bytes) {
    const WrittenFile written = write_bytes(path, bytes);
    if (written.fault) return {disk_fault_words(*written.fault), {}};
    return {std::nullopt, written_remarks(written)};
}

}  // namespace roundwright::app
