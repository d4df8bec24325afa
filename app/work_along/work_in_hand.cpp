#include "app/work_along/work_in_hand.h"

#include <algorithm>
#include <numeric>

#include <QCoreApplication>

#include "app/work_along/work_notes.h"
#include "core/language/round/write.h"
#include "core/reshape/frog_back.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

struct WorkInHandText {
    Q_DECLARE_TR_FUNCTIONS(WorkInHand)
};

void forget_times_from(int round, WorkedSoFar& worked) {
    const auto measured = std::min(worked.seconds_of_round.size(), static_cast<std::size_t>(round));
    worked.seconds_of_round.resize(measured);
}

}  // namespace

WorkInHand::WorkInHand(DocumentSession& session, RoundClock clock)
    : session_(session), clock_(std::move(clock)) {
    read_piece();
}

void WorkInHand::read_piece() {
    graph_ = session_.piece() ? session_.graph_of(session_.toy(), session_.current_piece()) : nullptr;
    counts_ = graph_ ? stitch_counts(graph_->get().graph) : std::vector<int>{};
}

const WorkedSoFar& WorkInHand::worked() const {
    static const WorkedSoFar nothing;
    return session_.piece() != nullptr ? session_.piece()->worked : nothing;
}

int WorkInHand::round() const { return std::clamp(worked().rounds, 0, rounds()); }

QString WorkInHand::words_of(int round) const {
    return QString::fromStdString(
        round_words(graph_->get().graph, round, session_.preferences().terms(), session_.piece()->start));
}

WorkInHand::Share WorkInHand::share_done() const {
    const int all = std::accumulate(counts_.begin(), counts_.end(), 0);
    const int rounds_done = std::accumulate(counts_.begin(), counts_.begin() + round(), 0);
    return {finished() ? all : std::min(rounds_done + stitches_worked(), all), all};
}

// --- moving on and back

void WorkInHand::change(const QString& step, const std::function<void(WorkedSoFar&)>& change,
                        const QString& merge_key) {
    session_.edit_piece(
        step, [&](Piece& piece) { change(piece.worked); }, merge_key);
}

void WorkInHand::finish_round() {
    if (finished()) return;
    const int done = round();
    const double took = seconds();
    clock_.restart();
    change(WorkInHandText::tr("Round %1 of %2 done").arg(done + 1).arg(name_in_words(session_.piece()->name)),
           [done, took](WorkedSoFar& worked) {
               worked.rounds = done + 1;
               worked.stitches = 0;
               if (took <= 0) return;
               worked.seconds_of_round.resize(static_cast<std::size_t>(done) + 1, 0.0);
               worked.seconds_of_round.back() = took;
           });
}

void WorkInHand::go_back() {
    if (round() == 0 && stitches_worked() == 0) return;
    clock_.restart();
    const int back_to = stitches_worked() > 0 ? round() : round() - 1;
    change(WorkInHandText::tr("Back to round %1").arg(back_to + 1), [back_to](WorkedSoFar& worked) {
        worked.rounds = back_to;
        worked.stitches = 0;
        forget_times_from(back_to, worked);
    });
}

void WorkInHand::count_stitch() {
    if (finished()) return;
    const int stitches = stitches_worked() + 1;
    stitches >= stitches_of(round()) ? finish_round() : set_stitches(stitches);
}

void WorkInHand::take_stitch_back() {
    if (stitches_worked() > 0) return set_stitches(stitches_worked() - 1);
    if (round() == 0) return;
    const int back_to = round() - 1;
    const int stitches = std::max(stitches_of(back_to) - 1, 0);
    clock_.restart();
    change(WorkInHandText::tr("Back to stitch %1 of round %2").arg(stitches).arg(back_to + 1),
           [back_to, stitches](WorkedSoFar& worked) {
               worked.rounds = back_to;
               worked.stitches = stitches;
               forget_times_from(back_to, worked);
           });
}

void WorkInHand::set_stitches(int stitches) {
    change(
        WorkInHandText::tr("Count stitches of round %1").arg(round() + 1),
        [stitches](WorkedSoFar& worked) { worked.stitches = stitches; },
        QStringLiteral("count-stitches-%1").arg(round()));
}

void WorkInHand::begin_again() {
    clock_.restart();
    change(WorkInHandText::tr("Begin %1 again").arg(name_in_words(session_.piece()->name)),
           [](WorkedSoFar& worked) { worked = {}; });
}

// --- times

void WorkInHand::measure_time(bool measure) {
    if (measure)
        clock_.run();
    else
        clock_.pause();
}

double WorkInHand::seconds_of_last_round() const {
    const auto& seconds = worked().seconds_of_round;
    const auto last = static_cast<std::size_t>(round());
    return last > 0 && last <= seconds.size() ? seconds[last - 1] : 0;
}

double WorkInHand::seconds_to_go() const { return finished() ? 0 : seconds_left(worked(), counts_); }

}  // namespace roundwright::app
