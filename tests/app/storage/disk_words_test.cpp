#include "app/storage/disk_words.h"

#include <cerrno>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace roundwright::app {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string words(int error, DiskStep step = DiskStep::write) {
    return disk_fault_words({step, error, QStringLiteral("/harbour/pup")}).toStdString();
}

constexpr int known[] = {ENOSPC,   EDQUOT,       EFBIG,        EROFS,   EIO,      ESTALE, ENOTCONN, EACCES,
                         EPERM,    ENAMETOOLONG, ENOENT,       ENOTDIR, EISDIR,   ELOOP,  EMFILE,   ENFILE,
                         ENOMEM,   ETXTBSY,      EBUSY,        EINVAL,  EILSEQ,   EPIPE,  ENXIO,    ENOTSUP,
                         ENETDOWN, ETIMEDOUT,    EHOSTUNREACH, ENODEV,  ENOMEDIUM};

TEST(DiskWords, EachFaultIsSaidInSentencesOfItsOwn) {
    for (const int error : known) {
        EXPECT_THAT(words(error), Not(HasSubstr("The system says"))) << error;
        EXPECT_EQ(words(error).back(), '.') << error;
    }
    EXPECT_THAT(words(ENOTRECOVERABLE), HasSubstr("The system says"));
}

TEST(DiskWords, WhoReadsIsNotToldToSave) {
    for (const int error : {EIO, ESTALE, ENOTCONN, EACCES, EPERM, ENOENT, ENOTDIR, EISDIR, ELOOP, ENOTSUP,
                            ENXIO, ENETDOWN, ETIMEDOUT, EHOSTUNREACH, ENODEV, ENOMEDIUM, EMFILE, ENOMEM})
        EXPECT_THAT(words(error, DiskStep::read), Not(HasSubstr("ave to a"))) << error;
}

TEST(DiskWords, AFaultThatCanBeDealtWithSaysHow) {
    for (const int error : {ENOSPC, EDQUOT, EFBIG, EROFS, EIO, ESTALE, EACCES, EPERM})
        EXPECT_THAT(words(error), HasSubstr("ave to a")) << error;
    EXPECT_THAT(words(ENAMETOOLONG), HasSubstr("Choose a shorter one"));
    EXPECT_THAT(words(EMFILE), HasSubstr("try again"));
}

TEST(DiskWords, WhatIsToBeKnownOfAFileIsSaidAndMostlyThereIsNothing) {
    WrittenFile written;
    EXPECT_EQ(written_remarks(written), QString());
    written.other_names_left = true;
    EXPECT_THAT(written_remarks(written).toStdString(), HasSubstr("hard links"));
    written.attributes_lost = written.not_yet_safe = true;
    EXPECT_EQ(written_remarks(written).count(QLatin1Char('.')), 4);
}

}  // namespace
}  // namespace roundwright::app
