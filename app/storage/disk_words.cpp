#include "app/storage/disk_words.h"

#include <cerrno>

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct DiskText {
    Q_DECLARE_TR_FUNCTIONS(Disk)
};

bool is_writing(DiskStep step) { return step != DiskStep::look && step != DiskStep::read; }

QString not_allowed_words(DiskStep step) {
    return is_writing(step)
               ? DiskText::tr("You have no right to write here. Save it in a folder of your own.")
               : DiskText::tr("You have no right to read this file.");
}

}  // namespace

QString disk_fault_words(const DiskFault& fault) {
    switch (fault.error) {
        case ENOSPC:
            return DiskText::tr("The disk is full. Make some room, or save to another disk.");
        case EDQUOT:
            return DiskText::tr(
                "Your share of this disk is used up. Delete something, or save to another disk.");
        case EFBIG:
            return DiskText::tr("The file would be larger than this disk or your account allows.");
        case EACCES:
        case EPERM:
            return not_allowed_words(fault.step);
        case EROFS:
            return DiskText::tr("This disk can only be read. Save to another one.");
        case ENAMETOOLONG:
            return DiskText::tr("The name is too long for this disk. Choose a shorter one.");
        case ENOENT:
            return fault.step == DiskStep::read || fault.step == DiskStep::look
                       ? DiskText::tr("There is no such file.")
                       : DiskText::tr("The folder is gone. Choose another one.");
        case ENOTDIR:
            return DiskText::tr("A part of the path is not a folder.");
        case EISDIR:
            return DiskText::tr("This is a folder, not a file.");
        case ELOOP:
            return DiskText::tr("The name is a link that leads nowhere or in a circle.");
        case EIO:
            return DiskText::tr(
                "The disk reports a fault in itself. Save to another disk, and check this one.");
        case ESTALE:
        case ENOTCONN:
        case EHOSTDOWN:
        case EHOSTUNREACH:
        case ENETDOWN:
        case ENETUNREACH:
        case ETIMEDOUT:
        case ENODEV:
        case ENXIO:
            return DiskText::tr(
                "The folder cannot be reached: its disk or its network is gone. Save elsewhere.");
        case EMFILE:
        case ENFILE:
            return DiskText::tr(
                "Too many files are open on this computer. Close some programs and try again.");
        case ENOMEM:
            return DiskText::tr("The computer is out of memory. Close some programs and try again.");
        case ETXTBSY:
        case EBUSY:
            return DiskText::tr("Another program is using this file. Close it there and try again.");
        default:
            return DiskText::tr("The system says: %1.").arg(qt_error_string(fault.error));
    }
}

}  // namespace roundwright::app
