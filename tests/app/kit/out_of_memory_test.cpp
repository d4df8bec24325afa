#include "app/kit/out_of_memory.h"

#include <csignal>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include "tests/support/sanitizers.h"

namespace roundwright::app {
namespace {

constexpr int without_memory = 3;

class OutOfMemoryDeathTest : public ::testing::Test {
  protected:
    void SetUp() override {
        if (test::under_sanitizer) GTEST_SKIP() << "the sanitizers take the signals of faults";
    }
};

void leave_no_core_behind() {
    const rlimit none{0, 0};
    setrlimit(RLIMIT_CORE, &none);
}

/// A fault as Qt has it with the null of a malloc that failed.
void write_to_nothing() {
    volatile int* nothing = nullptr;
    *nothing = 1;
}

void take_address_space() {
    const rlimit none{0, 0};
    setrlimit(RLIMIT_AS, &none);
}

// Ended by the signal, as the system and whoever sent it expect, at the first one.
TEST_F(OutOfMemoryDeathTest, ASignalThatIsSentEndsTheProgram) {
    const auto sent = [] {
        leave_no_core_behind();
        end_in_words_without_memory(without_memory);
        kill(getpid(), SIGSEGV);
        _exit(0);
    };
    EXPECT_EXIT(sent(), ::testing::KilledBySignal(SIGSEGV), "^$");
}

TEST_F(OutOfMemoryDeathTest, SoDoesAFaultWhileThereIsMemory) {
    const auto fault = [] {
        leave_no_core_behind();
        end_in_words_without_memory(without_memory);
        write_to_nothing();
        _exit(0);
    };
    EXPECT_EXIT(fault(), ::testing::KilledBySignal(SIGSEGV), "^$");
}

TEST_F(OutOfMemoryDeathTest, AFaultWithoutMemoryEndsInWords) {
    const auto fault = [] {
        end_in_words_without_memory(without_memory);
        take_address_space();
        write_to_nothing();
        _exit(0);
    };
    EXPECT_EXIT(fault(), ::testing::ExitedWithCode(without_memory), "There is not enough memory for this.");
}

// Where somebody ends the program by its signal, it is not the memory's fault.
TEST_F(OutOfMemoryDeathTest, ASignalThatIsSentIsNoLackOfMemory) {
    const auto sent = [] {
        leave_no_core_behind();
        end_in_words_without_memory(without_memory);
        take_address_space();
        kill(getpid(), SIGSEGV);
        _exit(0);
    };
    EXPECT_EXIT(sent(), ::testing::KilledBySignal(SIGSEGV), "^$");
}

}  // namespace
}  // namespace roundwright::app
