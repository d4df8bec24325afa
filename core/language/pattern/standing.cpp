#include "core/language/pattern/standing.h"

#include <algorithm>

#include "core/base/limits.h"
#include "core/language/round/mends.h"

namespace roundwright {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

}  // namespace

void Standing::begin(const Start& start) {
    below_ = RoundBelow::start(start);
    begun_ = true;
    yarn_ = 0;
}

void Standing::end() {
    below_ = {};
    below_.into_ring = true;
    begun_ = false;
}

ReadRound Standing::read(const std::vector<Token>& tokens, YarnTable& yarns) {
    return read_on(below_, tokens, yarns);
}

ReadRound Standing::try_read(const std::vector<Token>& tokens, YarnTable& yarns) {
    RoundBelow below = below_;
    below.stitches_so_far = std::max(below.stitches_so_far, most_stitches - std::max(0, state_.trial_effort));
    ReadRound read = read_on(below, tokens, yarns);
    state_.trial_effort -= read.effort;
    return read;
}

RoundSetting Standing::setting_on(const RoundBelow& below) const {
    RoundSetting setting = below.setting(yarn_, state_.out.terms);
    if (!begun_) {
        setting.work.into_ring = true;
        setting.work.loops_below = 0;
    }
    return setting;
}

ReadRound Standing::read_on(const RoundBelow& below, const std::vector<Token>& tokens, YarnTable& yarns) {
    RoundSetting setting = setting_on(below);
    setting.find_mends = state_.find_mends;
    setting.budget = &state_.mends;
    return read_round(tokens, setting, yarns);
}

void Standing::mend_words(ReadRound& read, const std::vector<Token>& tokens, const YarnTable& yarns) {
    if (!state_.find_mends) return;
    RoundSetting setting = setting_on(below_);
    setting.budget = &state_.mends;
    find_mends(read, tokens, setting, yarns, true);
}

void Standing::add(const ReadRound& read, const Round& round) {
    below_.add(read.made, std::get_if<WorkedEvenly>(&round.working));
    yarn_ = read.last_yarn;
}

void Standing::add(const GraphRound& made, const Round& round) {
    below_.add(made, std::get_if<WorkedEvenly>(&round.working));
    yarn_ = only_yarn(made).value_or(static_cast<int>(round.yarn));
}

}  // namespace roundwright
