#include "app/kit/lasting_application.h"

#include <new>
#include <utility>

#include "app/kit/out_of_memory.h"

namespace roundwright::app {
namespace {

constexpr std::size_t spare_bytes = std::size_t{2} << 20U;

}  // namespace

LastingApplication::LastingApplication(int& argc, char** argv) : QApplication(argc, argv) { take_spare(); }

bool LastingApplication::notify(QObject* receiver, QEvent* event) {
    try {
        return QApplication::notify(receiver, event);
    } catch (const std::exception& problem) {
        if (!is_out_of_memory(problem)) throw;
    }
    tell_of_memory();
    return false;
}

// Words need memory too, and may find none: then the next time they may.
void LastingApplication::tell_of_memory() {
    spare_.reset();
    try {
        if (tell_) tell_(not_enough_memory_words());
    } catch (const std::exception& problem) {
        if (!is_out_of_memory(problem)) throw;
    }
    take_spare();
}

void LastingApplication::take_spare() { spare_.reset(new (std::nothrow) char[spare_bytes]); }

}  // namespace roundwright::app
