#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/language/round/completion.h"
#include "core/language/round/read_round.h"

// The words of one round as they are typed: whatever is offered to complete them can be read, a completion
// that is said to end the round ends it, and so does every mend that is offered.
namespace {

using namespace roundwright;

RoundSetting setting_of(std::uint8_t loops, std::uint8_t choices) {
    RoundSetting setting;
    setting.work.loops_below = loops;
    setting.work.into_ring = loops == 0;
    setting.terms = (choices & 1) != 0 ? Terms::uk : Terms::us;
    return setting;
}

bool proved(const std::string& words, const RoundSetting& setting) {
    YarnTable yarns;
    return read_round(words, setting, yarns).proved();
}

void check_completions(std::string_view before, const RoundSetting& setting) {
    for (const Completion& completion : completions(before, setting, {})) {
        if (completion.replaced > before.size()) std::abort();
        const std::string words =
            std::string(before.substr(0, before.size() - completion.replaced)) + completion.words;
        const bool ends = proved(words, setting);
        if (completion.ends_round && !ends) std::abort();
    }
}

void check_mends(std::string_view words, const RoundSetting& setting) {
    YarnTable yarns;
    for (const ReadDiagnostic& diagnostic : read_round(words, setting, yarns).diagnostics) {
        for (const Mend& mend : diagnostic.mends) (void)proved(mended(words, mend), setting);
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    constexpr std::size_t most = 200;
    if (size < 2 || size > most) return 0;
    const RoundSetting setting = setting_of(data[0], data[1]);
    const std::string_view words(reinterpret_cast<const char*>(data) + 2, size - 2);
    check_completions(words, setting);
    check_mends(words, setting);
    return 0;
}
