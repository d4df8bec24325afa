#include "render/background/fault_words.h"

#include <atomic>
#include <cstdlib>
#include <new>
#include <stdexcept>
#include <system_error>

#include <QCoreApplication>

namespace roundwright::render {
namespace {

struct FaultText {
    Q_DECLARE_TR_FUNCTIONS(roundwright::render::Background)
};

/// More than malloc's threshold for mmap(2), so that freeing it gives the addresses back to the process at
/// once.
constexpr std::size_t kept_bytes = std::size_t{4} << 20;
std::atomic<void*> kept = nullptr;

void give_back_memory() noexcept { std::free(kept.exchange(nullptr)); }

QString words_of(const std::exception_ptr& fault) {
    try {
        std::rethrow_exception(fault);
    } catch (const std::exception& problem) {
        if (!is_out_of_memory(problem))
            return FaultText::tr("This could not be finished: %1").arg(QString::fromUtf8(problem.what()));
        give_back_memory();
        return not_enough_memory_words();
    } catch (...) {
        return FaultText::tr("This could not be finished.");
    }
}

}  // namespace

bool is_out_of_memory(const std::exception& problem) noexcept {
    if (dynamic_cast<const std::bad_alloc*>(&problem) != nullptr) return true;
    if (dynamic_cast<const std::length_error*>(&problem) != nullptr) return true;
    const auto* system = dynamic_cast<const std::system_error*>(&problem);
    return system != nullptr && (system->code() == std::errc::resource_unavailable_try_again ||
                                 system->code() == std::errc::not_enough_memory);
}

QString not_enough_memory_words() { return FaultText::tr("There is not enough memory for this."); }

QString fault_words(const std::exception_ptr& fault) noexcept {
    try {
        return words_of(fault);
    } catch (...) {
        return QStringLiteral("There is not enough memory for this.");
    }
}

void keep_memory_for_words() noexcept {
    if (kept.load() != nullptr) return;
    void* more = std::malloc(kept_bytes);
    void* none = nullptr;
    if (!kept.compare_exchange_strong(none, more)) std::free(more);
}

}  // namespace roundwright::render
