#include "core/language/pattern/standing.h"

#include <algorithm>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

}  // namespace

void Standing::begin(const Start& start) {
    below_ = RoundBelow::start(start);
    begun_ = true;
    other_loops_ = -1;
    yarn_ = 0;
}

void Standing::end() {
    below_ = {};
    below_.into_ring = true;
    begun_ = false;
    other_loops_ = -1;
}

ReadRound Standing::read(const std::vector<Token>& tokens, YarnTable& yarns) {
    const YarnTable before = yarns;
    ReadRound read = read_on(below_, tokens, yarns);
    if (read.proved() || other_loops_ < 0 || state_.trial_effort < other_loops_) return read;
    RoundBelow other = below_;
    other.loops = other_loops_;
    YarnTable other_yarns = before;
    ReadRound again = read_on(other, tokens, other_yarns);
    state_.trial_effort -= again.effort;
    if (!again.proved()) return read;
    below_ = other;
    yarns = other_yarns;
    return again;
}

ReadRound Standing::try_read(const std::vector<Token>& tokens, YarnTable& yarns) {
    RoundBelow below = below_;
    below.stitches_so_far = std::max(below.stitches_so_far, most_stitches - std::max(0, state_.trial_effort));
    ReadRound read = read_on(below, tokens, yarns);
    state_.trial_effort -= read.effort;
    return read;
}

ReadRound Standing::read_on(const RoundBelow& below, const std::vector<Token>& tokens, YarnTable& yarns) {
    RoundSetting setting = below.setting(yarn_, state_.out.terms);
    if (!begun_) {
        setting.work.into_ring = true;
        setting.work.loops_below = 0;
    }
    setting.find_mends = state_.find_mends;
    setting.budget = &state_.mends;
    return read_round(tokens, setting, yarns);
}

void Standing::add(const ReadRound& read, const Round& round) {
    below_.add(read.made, std::get_if<WorkedEvenly>(&round.working));
    stand_on(read);
    yarn_ = read.last_yarn;
}

void Standing::add(const GraphRound& made, const Round& round) {
    below_.add(made, std::get_if<WorkedEvenly>(&round.working));
    other_loops_ = -1;
    yarn_ = only_yarn(made).value_or(static_cast<int>(round.yarn));
}

void Standing::stand_on(const ReadRound& read) {
    other_loops_ = -1;
    if (read.proved()) return;
    const int made = read.stitches > most_stitches ? read.made.loops_left : read.stitches;
    below_.loops = made;
    if (!read.stated || read.stated->count == made || read.stated->count > most_stitches) return;
    other_loops_ = made;
    below_.loops = read.stated->count;
}

}  // namespace roundwright
