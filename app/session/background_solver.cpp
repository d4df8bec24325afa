#include "app/session/background_solver.h"

#include <algorithm>
#include <utility>

#include "core/study/fabric_stage.h"
#include "render/raster/fabric_picture.h"

namespace roundwright::app {
namespace {

using render::Delivery;
using render::Lane;
using render::TaskRun;

/// So that an oval is not shown as a ball at every key; as many as a key can wait for.
constexpr std::size_t most_stitches_at_once = 1'500;

std::shared_ptr<const PieceStudy> stitched_at_once(const SolveRequest& request,
                                                   std::shared_ptr<const PieceStudy> study,
                                                   const std::stop_token& stop) {
    if (!request.every_stitch || study->shape->stitched || !study->measures().converged()) return study;
    if (is_round_as_worked(request.toy->pieces[request.piece], *study)) return study;
    return with_every_stitch(
               study, *request.toy, request.piece,
               {.before = request.stitched_before, .most_stitches = most_stitches_at_once, .stop = stop})
        .study;
}

/// What the request asks for, but for the checks.
StudiedPiece worked_out(const SolveRequest& request, const std::stop_token& stop) {
    std::optional<SurfaceWanted> wanted;
    if (request.surface_wanted)
        wanted = {request.unstuffed, {.relief = Relief::shaded, .most_triangles = request.most_triangles}};
    auto study = request.known;
    if (!study) {
        study = study_in_stages(*request.toy, request.piece, request.before, std::nullopt, stop,
                                request.graph.get())
                    .study;
        study = stitched_at_once(request, std::move(study), stop);
    }
    if (!wanted) return {study, study, nullptr};
    return with_surface(study, *request.toy, request.piece, request.before, *wanted, stop);
}

SolveResult result_of(const SolveRequest& request, const StudiedPiece& made) {
    SolveResult result;
    result.revision = request.revision;
    result.study = made.study;
    result.shown = made.shown;
    result.surface = made.surface();
    result.drawn = made.drawn;
    return result;
}

SolveResult first_step(const SolveRequest& request, const std::stop_token& stop) {
    SolveResult result = result_of(request, worked_out(request, stop));
    result.has_checks = request.known != nullptr;
    if (result.surface)
        static_cast<void>(render::face_pictures(result.surface->mesh));  // not when first drawn
    return result;
}

SolveResult with_last_step(const SolveRequest& request, SolveResult result, const std::stop_token& stop) {
    if (result.has_checks || stop.stop_requested()) return result;
    return result_of(request, with_checks({result.study, result.shown, result.drawn}, *request.toy,
                                          request.piece, request.before, stop));
}

}  // namespace

SolveResult solve_request(const SolveRequest& request, const std::stop_token& stop) {
    return with_last_step(request, first_step(request, stop), stop);
}

BackgroundSolver::BackgroundSolver(QObject* parent) : QObject(parent) {
    connect(&background_, &render::Background::failed, this, &BackgroundSolver::take_failure);
}

void BackgroundSolver::post(SolveRequest request) {
    if (request.urgent) {
        start_urgent(std::move(request));
    } else {
        later_.push_back({std::move(request), nullptr});
        start_later();
    }
    count(+1);
}

void BackgroundSolver::start_urgent(SolveRequest request) {
    const std::uint64_t revision = request.revision;
    tickets_[revision] = background_.start(
        Lane::next_key, [this, request = std::move(request)](const TaskRun& run) -> Delivery {
            SolveResult result = first_step(request, run.stop);
            return [this, request, result] {
                result.has_checks ? take_last(result) : take_shape(request, result);
            };
        });
}

void BackgroundSolver::start_later() {
    if (running_later_ != 0 || later_.empty()) return;
    Later next = std::move(later_.front());
    later_.pop_front();
    const std::uint64_t revision = running_later_ = next.request.revision;
    tickets_[revision] =
        background_.start(Lane::longer, [this, next = std::move(next)](const TaskRun& run) -> Delivery {
            SolveResult result = next.begun ? *next.begun : first_step(next.request, run.stop);
            result = with_last_step(next.request, std::move(result), run.stop);
            result.again = next.begun != nullptr;
            return [this, result] { take_last(result); };
        });
}

/// The shape on its way to the screen; its checks go before everything else that may take longer.
void BackgroundSolver::take_shape(const SolveRequest& request, SolveResult result) {
    tickets_.erase(request.revision);
    later_.push_front({request, std::make_shared<const SolveResult>(result)});
    Q_EMIT solved(result);
    start_later();
}

void BackgroundSolver::take_last(SolveResult result) {
    tickets_.erase(result.revision);
    if (running_later_ == result.revision) running_later_ = 0;
    start_later();
    count(-1);
    Q_EMIT solved(result);
}

void BackgroundSolver::take_failure(render::Background::Ticket ticket, const QString& why) {
    const auto found = std::ranges::find(tickets_, ticket, [](const auto& entry) { return entry.second; });
    if (found == tickets_.end()) return;
    SolveResult nothing;
    nothing.revision = found->first;
    Q_EMIT failed(why);
    take_last(std::move(nothing));
}

void BackgroundSolver::cancel(std::uint64_t revision) {
    if (!drop_waiting(revision) && !drop_running(revision)) return;
    start_later();
    count(-1);
}

bool BackgroundSolver::drop_waiting(std::uint64_t revision) {
    return std::erase_if(later_, [&](const Later& later) { return later.request.revision == revision; }) > 0;
}

bool BackgroundSolver::drop_running(std::uint64_t revision) {
    const auto found = tickets_.find(revision);
    if (found == tickets_.end()) return false;
    background_.cancel(found->second);
    tickets_.erase(found);
    if (running_later_ == revision) running_later_ = 0;
    return true;
}

void BackgroundSolver::count(int change) {
    const bool was_busy = busy();
    waiting_ += change;
    if (busy() != was_busy) Q_EMIT busy_changed(busy());
}

}  // namespace roundwright::app
