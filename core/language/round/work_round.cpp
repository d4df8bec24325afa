#include "core/language/round/work_round.h"

#include <algorithm>
#include <cstdint>

#include "core/language/round/even_spacing.h"

namespace roundwright {
namespace {

constexpr int most_visits = 10 * static_cast<int>(max_stitches_per_piece);

bool is_chain(const Stitch& stitch) { return stitch.kind == StitchKind::chain; }
bool is_skip(const Stitch& stitch) { return stitch.kind == StitchKind::skip; }

class Worker {
  public:
    Worker(const RoundSyntax& syntax, const std::vector<bool>& choices, const WorkSetting& setting)
        : syntax_(syntax), choices_(choices), setting_(setting), yarn_(setting.yarn) {
        below_ = setting.into_ring ? 0 : std::max(0, setting.loops_below - syntax.starts_at);
    }

    WorkedRound run() {
        if (syntax_.evenly_to != 0 || syntax_.evenly_more != 0) return evenly();
        work(syntax_.nodes);
        result_.taken = static_cast<int>(held(taken_));
        result_.made = static_cast<int>(held(made_));
        result_.last_yarn = yarn_;
        finish();
        result_.effort = visited_ + steps_ + static_cast<int>(result_.round.stitches.size());
        return std::move(result_);
    }

  private:
    bool chosen(const Node& node) const {
        return node.choice >= 0 && static_cast<std::size_t>(node.choice) < choices_.size() &&
               choices_[node.choice];
    }

    // So many stitches, spaced evenly over the loops below.
    WorkedRound evenly() {
        const std::int64_t wanted = syntax_.evenly_to != 0 ? std::int64_t{syntax_.evenly_to}
                                                           : std::int64_t{below_} + syntax_.evenly_more;
        const auto stitches = static_cast<int>(std::clamp<std::int64_t>(wanted, 0, setting_.most_stitches));
        if (wanted < 1 || wanted > setting_.most_stitches || (below_ == 0 && !setting_.into_ring))
            report(ReadCode::nothing_to_fill, {}, 0, below_);
        result_.round = even_round(WorkedEvenly{std::max(stitches, 1)}, below_, SpacingPhase::at_end,
                                   static_cast<std::uint16_t>(yarn_));
        result_.taken = below_;
        result_.made = result_.round.loops_left;
        result_.last_yarn = yarn_;
        result_.effort = below_ + static_cast<int>(result_.round.stitches.size());
        return std::move(result_);
    }

    void work(const std::vector<Node>& nodes) {
        for (const Node& node : nodes) {
            if (++visited_ > most_visits && !full_) run_full();
            if (full_) return;
            if (const auto* one = std::get_if<Work>(&node.what))
                work(chosen(node) && node.other_work ? *node.other_work : *one);
            else if (const auto* group = std::get_if<Group>(&node.what))
                work(*group, chosen(node) ? node.other_times : group->extent.number);
            else if (const auto* change = std::get_if<YarnChange>(&node.what))
                yarn_ = change->yarn;
            else
                part_ = std::get<PartChange>(node.what).part;
        }
    }

    // --- stitches worked in one place

    void work(const Work& one) {
        where_ = one.where;
        if (one.extent.kind == Extent::Kind::times) return units(one, one.extent.number);
        const int keep = one.extent.kind == Extent::Kind::to_last ? one.extent.number : 0;
        const std::int64_t loops = loops_of(one);
        if (!can_fill(loops, keep, one.where)) return;
        const std::int64_t left = below_ - taken_ - keep;
        units(one, left / loops);
        if (left % loops != 0) report(ReadCode::repeat_does_not_fit, one.where, loops, left);
    }

    void units(const Work& one, std::int64_t number) {
        const bool makes_room_for_itself = setting_.into_ring || loops_of(one) == 0;
        if (makes_room_for_itself && !beyond_loops() &&
            number * static_cast<std::int64_t>(one.members.size()) > setting_.most_stitches - steps_)
            return run_full();
        std::int64_t done = 0;
        for (; done < number && !full_ && !beyond_loops(); ++done) unit(one);
        if (beyond_loops()) count_rest(number - done, [&] { unit(one); });
    }

    // Stitches beyond the loops below are cut in the end: only their number matters.
    bool beyond_loops() const { return !setting_.into_ring && taken_ > below_; }

    // Beyond the loops every turn takes and makes the same.
    template <class Turn>
    void count_rest(std::int64_t turns, const Turn& turn) {
        if (turns <= 0) return;
        const std::int64_t taken = taken_;
        const std::int64_t made = made_;
        turn();
        taken_ = held(taken + turns * (taken_ - taken));
        made_ = held(made + turns * (made_ - made));
    }

    static std::int64_t held(std::int64_t number) { return std::min<std::int64_t>(number, largest_number); }

    bool can_fill(std::int64_t loops, int keep, TextSpan where) {
        const std::int64_t left = below_ - taken_;
        if (setting_.into_ring || loops <= 0 || (left <= 0 && keep == 0)) {
            report(ReadCode::nothing_to_fill, where, 0, std::max<std::int64_t>(left, 0));
            return false;
        }
        if (left < keep) {
            report(ReadCode::not_enough_left, where, keep, std::max<std::int64_t>(left, 0));
            return false;
        }
        return true;
    }

    std::int64_t loops_of(const Work& one) const {
        const auto first = std::find_if(one.members.begin(), one.members.end(),
                                        [](const Member& member) { return !is_chain(member.stitch); });
        if (first == one.members.end()) return 0;
        return first->stitch.feet - (one.in_same ? 1 : 0);
    }

    void unit(const Work& one) {
        bool shared = one.in_same;
        const bool both_sides = one.in_last && setting_.oval_chains > 0 && taken_ == setting_.oval_chains - 1;
        std::size_t footed = 0;
        for (const Member& member : one.members) {
            if (is_chain(member.stitch)) {
                put(member, false);
                continue;
            }
            put(member, shared && !(both_sides && footed == 1));
            shared = true;
            ++footed;
        }
    }

    void put(const Member& member, bool shared) {
        Stitch stitch = member.stitch;
        if (!member.own_part) stitch.part = part_;
        stitch.yarn = is_skip(stitch) ? std::uint16_t{0} : static_cast<std::uint16_t>(yarn_);
        if (setting_.into_ring) return put_in_ring(stitch);
        if (shared && taken_ == 0 && !is_chain(stitch)) {
            report(ReadCode::no_stitch_before, where_);
            shared = false;
        }
        stitch.same_foot = shared && !is_chain(stitch);
        const auto foot = static_cast<int>(taken_);
        taken_ += loops_taken(stitch);
        made_ += loops_left(stitch);
        if (!beyond_loops()) return keep({stitch, foot - (stitch.same_foot ? 1 : 0)});
        if (!over_) over_ = where_;
    }

    void keep(const GraphStitch& made) {
        if (++steps_ > setting_.most_stitches) return run_full();
        result_.round.stitches.push_back(made);
        covered_ += loops_taken(made.stitch);
    }

    void put_in_ring(Stitch stitch) {
        if (is_skip(stitch)) return report(ReadCode::nothing_to_fill, where_);
        stitch.feet = is_chain(stitch) ? 0 : 1;
        made_ += loops_left(stitch);
        keep({stitch, 0});
    }

    void run_full() {
        full_ = true;
        report(ReadCode::too_many_stitches, where_, static_cast<int>(max_stitches_per_piece),
               all_stitches(syntax_.nodes));
    }

    // Stitches the words ask for by number, as far as numbers tell.
    std::int64_t all_stitches(const std::vector<Node>& nodes) const {
        constexpr std::int64_t most = largest_number;
        std::int64_t sum = 0;
        for (const Node& node : nodes) {
            std::int64_t one = 0;
            if (const auto* work = std::get_if<Work>(&node.what))
                one = std::min(most, static_cast<std::int64_t>(work->members.size())) *
                      std::max(1, work->extent.number);
            else if (const auto* group = std::get_if<Group>(&node.what))
                one = all_stitches(group->body) * std::max(1, group->extent.number);
            sum = std::min(most, sum + std::min(most, one));
        }
        return sum;
    }

    // --- groups

    void work(const Group& group, int number) {
        if (group.extent.kind == Extent::Kind::times) return work_times(group, number);
        const int keep = group.extent.kind == Extent::Kind::to_last ? group.extent.number : 0;
        if (!can_fill(1, keep, group.where)) return;
        while (!full_ && taken_ < below_ - keep)
            if (!work_once_more(group, below_ - keep)) return;
    }

    void work_times(const Group& group, int number) {
        if (setting_.into_ring && all_stitches(group.body) * number > setting_.most_stitches - steps_)
            return run_full();
        int done = 0;
        for (; done < number && !full_ && !beyond_loops(); ++done) {
            const std::size_t before = result_.round.stitches.size();
            work(group.body);
            if (result_.round.stitches.size() == before && !beyond_loops()) return;
        }
        if (beyond_loops()) count_rest(number - done, [&] { work(group.body); });
    }

    // False when the repeat takes nothing, or more than is left; then it is taken back.
    bool work_once_more(const Group& group, std::int64_t end) {
        const std::int64_t taken = taken_;
        const std::int64_t made = made_;
        const std::size_t stitches = result_.round.stitches.size();
        work(group.body);
        if (full_) return false;
        if (taken_ == taken) {
            report(ReadCode::nothing_to_fill, group.where, 0, end - taken);
            return false;
        }
        if (taken_ <= end) return true;
        report(ReadCode::repeat_does_not_fit, group.where, taken_ - taken, end - taken);
        taken_ = covered_ = taken;
        made_ = made;
        over_.reset();
        result_.round.stitches.resize(stitches);
        return false;
    }

    // --- proof

    void report(ReadCode code, TextSpan where, std::int64_t expected = 0, std::int64_t found = 0) {
        constexpr std::size_t most = 20;
        const auto& problems = result_.problems;
        const bool known = std::any_of(problems.begin(), problems.end(), [&](const ReadDiagnostic& d) {
            return d.code == code && d.where == where;
        });
        // A round that is cut is said to be, however much else is wrong with it.
        if (known || (problems.size() >= most && code != ReadCode::too_many_stitches)) return;
        result_.problems.push_back({code,
                                    Severity::error,
                                    where,
                                    -1,
                                    -1,
                                    static_cast<int>(expected),
                                    static_cast<int>(found),
                                    {},
                                    {}});
    }

    void finish() {
        GraphRound& round = result_.round;
        const bool partial = !setting_.into_ring && (syntax_.unworked || syntax_.starts_at > 0 || full_);
        const bool fits = setting_.into_ring || taken_ == below_ || (partial && taken_ < below_);
        if (!fits && result_.problems.empty())
            report(ReadCode::loops_do_not_fit, over_.value_or(where_), below_, result_.taken);
        if (!fits) cover_loops();
        round.first_below = partial ? std::min(syntax_.starts_at, setting_.loops_below) : 0;
        round.loops_below = setting_.into_ring ? 0
                            : partial          ? std::min(static_cast<int>(taken_), below_)
                                               : below_;
        int left = 0;
        for (const GraphStitch& made : round.stitches) left += loops_left(made.stitch);
        round.loops_left = partial ? left + setting_.loops_below - round.loops_below : left;
    }

    void cover_loops() {
        taken_ = covered_;
        if (syntax_.unworked || syntax_.starts_at > 0 || full_) return;
        const Stitch skip{.kind = StitchKind::skip};
        for (; taken_ < below_; ++taken_) result_.round.stitches.push_back({skip, static_cast<int>(taken_)});
    }

    const RoundSyntax& syntax_;
    const std::vector<bool>& choices_;
    const WorkSetting& setting_;
    WorkedRound result_;
    int below_ = 0;
    std::int64_t taken_ = 0;
    std::int64_t covered_ = 0;  // loops that the stitches kept take
    std::int64_t made_ = 0;
    int steps_ = 0;    // stitches worked, those taken back too
    int visited_ = 0;  // instructions met, again in every repeat
    int yarn_ = 0;
    LoopPart part_ = LoopPart::both;
    TextSpan where_;
    std::optional<TextSpan> over_;
    bool full_ = false;
};

}  // namespace

WorkedRound work_round(const RoundSyntax& syntax, const std::vector<bool>& choices,
                       const WorkSetting& setting) {
    return Worker(syntax, choices, setting).run();
}

}  // namespace roundwright
