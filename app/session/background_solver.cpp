#include "app/session/background_solver.h"

#include <algorithm>
#include <utility>

#include "core/study/study_steps.h"
#include "core/study/study_surface.h"
#include "render/raster/fabric_picture.h"

namespace roundwright::app {
namespace {

using render::Delivery;
using render::Lane;
using render::TaskRun;

std::shared_ptr<const PieceStudy> studied(const SolveRequest& request, const std::stop_token& stop) {
    if (request.known) return request.known;
    return std::make_shared<PieceStudy>(study_shape(*request.toy, request.piece, request.warm.get(), stop));
}

std::shared_ptr<const PieceStudy> studied_unstuffed(const SolveRequest& request, const PieceStudy& stuffed,
                                                    const std::stop_token& stop) {
    Toy toy = *request.toy;
    toy.pieces[request.piece].area_stretch = unstuffed_stretch;
    return std::make_shared<PieceStudy>(study_shape(toy, request.piece, &stuffed, stop));
}

std::shared_ptr<const StitchSurface> surface_of(const SolveRequest& request, const PieceStudy& study) {
    if (!study.shape.usable()) return nullptr;
    RevolveOptions options;
    options.relief = Relief::shaded;
    options.most_triangles = request.most_triangles;
    auto surface =
        std::make_shared<StitchSurface>(study_surface(*request.toy, request.piece, study, options));
    static_cast<void>(render::face_pictures(surface->mesh));  // made here, not when they are first drawn
    return surface;
}

bool lacks_checks(const SolveRequest& request) { return request.checks_wanted && !request.known; }

/// All but the checks.
SolveResult first_step(const SolveRequest& request, const std::stop_token& stop) {
    SolveResult result;
    result.revision = request.revision;
    result.study = studied(request, stop);
    result.shown = result.study;
    result.has_checks = !lacks_checks(request);
    if (!request.surface_wanted || stop.stop_requested()) return result;
    if (request.unstuffed) result.shown = studied_unstuffed(request, *result.study, stop);
    if (!stop.stop_requested()) result.surface = surface_of(request, *result.shown);
    return result;
}

SolveResult with_last_step(const SolveRequest& request, SolveResult result, const std::stop_token& stop) {
    if (result.has_checks || stop.stop_requested()) return result;
    const bool shows_study = result.shown == result.study;
    result.study =
        std::make_shared<PieceStudy>(with_checks(*result.study, *request.toy, request.piece, stop));
    if (shows_study) result.shown = result.study;
    result.has_checks = true;
    return result;
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
