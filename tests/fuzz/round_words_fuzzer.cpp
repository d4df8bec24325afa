#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/round/completion.h"
#include "core/language/round/read_round.h"
#include "tests/fuzz/share_of_inputs.h"

// The words of one round as they are typed: whatever is offered to complete them can be read, a completion
// that is said to end the round ends it, and so does every mend that is offered.
namespace {

using namespace roundwright;

RoundSetting setting_of(std::uint8_t loops, std::uint8_t choices) {
    RoundSetting setting;
    setting.work.loops_below = loops;
    setting.work.into_ring = loops == 0;
    const bool another_language = (choices & 6) == 6;
    const std::size_t languages = all_terms.size() - 2;
    setting.terms = another_language     ? all_terms[2 + (choices / 8) % languages]
                    : (choices & 1) != 0 ? Terms::uk
                                         : Terms::us;
    return setting;
}

bool proved(const std::string& words, RoundSetting setting) {
    setting.find_mends = false;
    YarnTable yarns;
    return read_round(words, setting, yarns).proved();
}

/// A round that was proved leaves loops, and no fewer than it has stitches that leave one.
void check_reading(std::string_view words, RoundSetting setting) {
    setting.find_mends = false;
    YarnTable yarns;
    const ReadRound read = read_round(words, setting, yarns);
    if (!read.proved() || read.syntax.repeats_from != 0) return;
    int left = 0;
    for (const GraphStitch& made : read.made.stitches) left += loops_left(made.stitch);
    if (read.made.loops_left == 0 || left > read.made.loops_left) std::abort();
}

void check_completion(std::string_view before, const RoundSetting& setting, unsigned choice) {
    const std::vector<Completion> offered = completions(before, setting, {});
    if (offered.empty()) return;
    const Completion& completion = offered[choice % offered.size()];
    if (completion.replaced > before.size()) std::abort();
    const std::string words =
        std::string(before.substr(0, before.size() - completion.replaced)) + completion.words;
    const bool ends = proved(words, setting);
    if (completion.ends_round && !ends) std::abort();
}

void check_mend(std::string_view words, const RoundSetting& setting, unsigned choice) {
    YarnTable yarns;
    std::vector<Mend> mends;
    for (const ReadDiagnostic& diagnostic : read_round(words, setting, yarns).diagnostics)
        mends.insert(mends.end(), diagnostic.mends.begin(), diagnostic.mends.end());
    if (!mends.empty()) (void)proved(mended(words, mends[choice % mends.size()]), setting);
}

}  // namespace

// The first three bytes are the loops below, the terms, and which of all the offers is tried: one a run.
// Reading takes a tenth of the time of completing or mending, so most inputs are read alone.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    constexpr std::size_t settings = 3;
    constexpr std::size_t most = 100;
    if (size < settings || size > most) return 0;
    const RoundSetting setting = setting_of(data[0], data[1]);
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const std::string_view words = bytes.substr(settings);
    const testing::Share share(bytes);
    if (share.is_first_of(16))
        check_completion(words, setting, data[2]);
    else if (share.is_second_of(16))
        check_mend(words, setting, data[2]);
    else
        check_reading(words, setting);
    return 0;
}
