#include "app/kit/lasting_application.h"

#include <gtest/gtest.h>
#include <new>
#include <stdexcept>
#include <system_error>

#include <QLineEdit>
#include <QTest>

#include "app/kit/out_of_memory.h"

namespace roundwright::app {
namespace {

LastingApplication& application() { return *dynamic_cast<LastingApplication*>(QCoreApplication::instance()); }

class LastingWindow : public testing::Test {
  protected:
    void SetUp() override {
        application().set_tell([this](const QString& why) { told_ += why; });
    }
    void TearDown() override { application().set_tell({}); }

    QStringList told_;
};

// The line is typed on, and the program with it.
TEST_F(LastingWindow, MemoryThatRunsOutIsSaidAndWhatIsTypedStays) {
    QLineEdit line;
    bool runs_out = true;
    QObject::connect(&line, &QLineEdit::textEdited, &line, [&](const QString& text) {
        if (runs_out && text.size() == 2) throw std::bad_alloc();
    });
    line.show();
    QTest::keyClicks(&line, QStringLiteral("24"));
    EXPECT_EQ(told_, QStringList{QStringLiteral("There is not enough memory for this.")});
    EXPECT_EQ(line.text(), QStringLiteral("24"));
    runs_out = false;
    QTest::keyClicks(&line, QStringLiteral("x4"));
    EXPECT_EQ(line.text(), QStringLiteral("24x4"));
    EXPECT_EQ(told_.size(), 1);
}

TEST_F(LastingWindow, WordsThatFindNoMemoryEither) {
    application().set_tell([](const QString&) { throw std::bad_alloc(); });
    QObject receiver;
    QMetaObject::invokeMethod(
        &receiver, [] { throw std::length_error("too long"); }, Qt::QueuedConnection);
    EXPECT_NO_THROW(QCoreApplication::sendPostedEvents(&receiver));
}

TEST(OutOfMemory, IsToldFromOtherTrouble) {
    EXPECT_TRUE(is_out_of_memory(std::bad_alloc()));
    EXPECT_TRUE(is_out_of_memory(std::bad_array_new_length()));
    EXPECT_TRUE(is_out_of_memory(std::length_error("")));
    EXPECT_TRUE(
        is_out_of_memory(std::system_error(std::make_error_code(std::errc::resource_unavailable_try_again))));
    EXPECT_FALSE(is_out_of_memory(std::out_of_range("")));
    EXPECT_FALSE(
        is_out_of_memory(std::system_error(std::make_error_code(std::errc::no_such_file_or_directory))));
}

}  // namespace
}  // namespace roundwright::app
