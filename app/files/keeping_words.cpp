#include "app/files/keeping_words.h"

#include <cerrno>

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>

#include "app/storage/disk_words.h"

namespace roundwright::app {
namespace {

struct KeepingText {
    Q_DECLARE_TR_FUNCTIONS(Keeping)
};

}  // namespace

QString keeping_fault_words(const DiskFault& fault) {
    const QString folder = QDir::toNativeSeparators(QFileInfo(fault.path).path());
    switch (fault.error) {
        case ENOSPC:
            return KeepingText::tr("The disk with the folder “%1” is full.").arg(folder);
        case EDQUOT:
            return KeepingText::tr("Your share of the disk with the folder “%1” is used up.").arg(folder);
        case EACCES:
        case EPERM:
            return KeepingText::tr("You have no right to write in the folder “%1”.").arg(folder);
        case EROFS:
            return KeepingText::tr("The disk with the folder “%1” can only be read.").arg(folder);
        case ELOOP:
        case ENOTDIR:
        case EEXIST:
            return KeepingText::tr("“%1” is not a folder of its own: something else is in its place.")
                .arg(folder);
        default:
            return disk_fault_words(fault);
    }
}

}  // namespace roundwright::app
