#include "app/storage/disk_words.h"

#include <cerrno>

#include <QCoreApplication>
#include <QStringList>

namespace roundwright::app {
namespace {

struct DiskText {
    Q_DECLARE_TR_FUNCTIONS(Disk)
};

bool is_reading(const DiskFault& fault) {
    return fault.step == DiskStep::read || fault.step == DiskStep::look;
}

QString no_permission_words(const DiskFault& fault) {
    return is_reading(fault)
               ? DiskText::tr("You don’t have permission to read it.")
               : DiskText::tr("You don’t have permission to write here. Save to a folder of your own.");
}

QString missing_words(const DiskFault& fault) {
    return is_reading(fault) ? DiskText::tr("There is no such file.")
                             : DiskText::tr("The folder is gone. Choose another one.");
}

QString broken_disk_words(const DiskFault& fault) {
    return is_reading(fault)
               ? DiskText::tr(
                     "The disk reports an error and may be failing. Look for another copy of the "
                     "file, and have the disk checked.")
               : DiskText::tr(
                     "The disk reports an error and may be failing. Save to another disk, and have "
                     "this one checked.");
}

QString lost_disk_words(const DiskFault& fault) {
    return is_reading(fault)
               ? DiskText::tr(
                     "The folder cannot be reached: its disk or its network connection is gone. "
                     "Connect it again, then try once more.")
               : DiskText::tr(
                     "The folder cannot be reached: its disk or its network connection is gone. "
                     "Connect it again, or save to another folder.");
}

/// Nothing: not one of these.
QString words_of_place(const DiskFault& fault) {
    switch (fault.error) {
        case ENOENT:
            return missing_words(fault);
        case ENOTDIR:
            return DiskText::tr("Part of its path is a file, not a folder.");
        case EISDIR:
            return DiskText::tr("This is a folder, not a file.");
        case ELOOP:
            return DiskText::tr(
                "The name is a link that leads back to itself, or one that may not be used here.");
        case ENOTSUP:
        case ENXIO:
            return DiskText::tr("This is not an ordinary file: it is a pipe, a socket or a device.");
        case ENAMETOOLONG:
            return DiskText::tr("The name is too long for this disk. Choose a shorter one.");
        case EINVAL:
        case EILSEQ:
            return DiskText::tr(
                "This disk does not allow such a name. Choose one of plain letters and "
                "numbers.");
        case EACCES:
        case EPERM:
            return no_permission_words(fault);
        default:
            return {};
    }
}

/// Nothing: not one of these.
QString words_of_disk(const DiskFault& fault) {
    switch (fault.error) {
        case ENOSPC:
            return DiskText::tr("The disk is full. Make some room, or save to another disk.");
        case EDQUOT:
            return DiskText::tr(
                "Your share of this disk is used up. Delete something, or save to another disk.");
        case EFBIG:
            return DiskText::tr(
                "The file would be larger than this disk or your account allows. Save to "
                "another disk.");
        case EROFS:
            return DiskText::tr("This disk is read-only. Save to another one.");
        case EIO:
            return broken_disk_words(fault);
        case ESTALE:
        case ENOTCONN:
        case ECONNABORTED:
        case ECONNRESET:
        case EHOSTDOWN:
        case EHOSTUNREACH:
        case ENETDOWN:
        case ENETUNREACH:
        case ETIMEDOUT:
        case ENODEV:
        case ENOMEDIUM:
            return lost_disk_words(fault);
        default:
            return {};
    }
}

QString words_of_computer(const DiskFault& fault) {
    switch (fault.error) {
        case EMFILE:
        case ENFILE:
            return DiskText::tr(
                "Too many files are open on this computer. Close some programs, then try "
                "again.");
        case EPIPE:
            return DiskText::tr("The program that was to take it has stopped.");
        case ENOMEM:
            return DiskText::tr("The computer is out of memory. Close some programs, then try again.");
        case ETXTBSY:
        case EBUSY:
        case EAGAIN:
            return DiskText::tr("Another program is using this file. Close it there, then try again.");
        default:
            return DiskText::tr("The system says: %1.").arg(qt_error_string(fault.error));
    }
}

}  // namespace

QString disk_fault_words(const DiskFault& fault) {
    for (const auto& words : {words_of_place(fault), words_of_disk(fault)})
        if (!words.isEmpty()) return words;
    return words_of_computer(fault);
}

QString written_remarks(const WrittenFile& written) {
    QStringList remarks;
    if (written.other_names_left)
        remarks << DiskText::tr(
            "It had other names on this disk (hard links). They still lead to what was in "
            "it before.");
    if (!written.theirs_beside.isEmpty())
        remarks << DiskText::tr(
                       "Another program wrote it at the same moment. What that one wrote is in “%1”.")
                       .arg(written.theirs_beside);
    if (written.attributes_lost)
        remarks << DiskText::tr(
            "Its owner, its access rights or its extended attributes could not all be kept.");
    if (written.not_yet_safe)
        remarks << DiskText::tr("The disk could not confirm that it would survive a power failure.");
    return remarks.join(QLatin1Char(' '));
}

}  // namespace roundwright::app
