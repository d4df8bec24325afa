#include "app/session/background_solver.h"

#include <algorithm>
#include <new>
#include <utility>

#include "core/study/study_surface.h"

namespace roundwright::app {
namespace {

std::shared_ptr<const PieceStudy> studied(const SolveRequest& request, const std::stop_token& stop) {
    if (request.known) return request.known;
    return std::make_shared<PieceStudy>(
        study_piece(*request.toy, request.piece, request.warm.get(), stop, request.graph.get()));
}

std::shared_ptr<const PieceStudy> studied_unstuffed(const SolveRequest& request, const PieceStudy& stuffed,
                                                    const std::stop_token& stop) {
    Toy toy = *request.toy;
    toy.pieces[request.piece].area_stretch = unstuffed_stretch;
    return std::make_shared<PieceStudy>(study_piece(toy, request.piece, &stuffed, stop, request.graph.get()));
}

std::shared_ptr<const StitchSurface> surface_of(const SolveRequest& request, const PieceStudy& study) {
    if (!study.shape.usable()) return nullptr;
    RevolveOptions options;
    options.relief = Relief::shaded;
    options.most_triangles = request.most_triangles;
    return std::make_shared<StitchSurface>(study_surface(*request.toy, request.piece, study, options));
}

/// A piece too large for the machine's memory gives no answer, rather than ending the program.
SolveResult solve_or_nothing(const SolveRequest& request, const std::stop_token& stop) {
    try {
        return solve_request(request, stop);
    } catch (const std::bad_alloc&) {
        return {request.revision, nullptr, nullptr, nullptr};
    }
}

}  // namespace

SolveResult solve_request(const SolveRequest& request, const std::stop_token& stop) {
    SolveResult result;
    result.revision = request.revision;
    result.study = studied(request, stop);
    result.shown = result.study;
    if (!request.surface_wanted || stop.stop_requested()) return result;
    if (request.unstuffed) result.shown = studied_unstuffed(request, *result.study, stop);
    if (!stop.stop_requested()) result.surface = surface_of(request, *result.shown);
    return result;
}

BackgroundSolver::BackgroundSolver(QObject* parent)
    : QObject(parent), thread_([this](const std::stop_token& stop) { work(stop); }) {}

BackgroundSolver::~BackgroundSolver() {
    thread_.request_stop();
    {
        const std::lock_guard lock(mutex_);
        running_stop_.request_stop();
    }
    thread_.join();
}

void BackgroundSolver::post(SolveRequest request) {
    {
        const std::lock_guard lock(mutex_);
        const auto place =
            request.urgent ? std::ranges::find(queue_, false, &SolveRequest::urgent) : queue_.end();
        queue_.insert(place, std::move(request));
    }
    wake_.notify_one();
    count(+1);
}

void BackgroundSolver::cancel(std::uint64_t revision) {
    std::size_t dropped = 0;
    {
        const std::lock_guard lock(mutex_);
        dropped = std::erase_if(queue_, [&](const auto& request) { return request.revision == revision; });
        if (running_ == revision) running_stop_.request_stop();
    }
    count(-static_cast<int>(dropped));
}

void BackgroundSolver::work(const std::stop_token& stop) {
    for (;;) {
        SolveRequest request;
        std::stop_token cancelled;
        {
            std::unique_lock lock(mutex_);
            if (!wake_.wait(lock, stop, [this] { return !queue_.empty(); }) || stop.stop_requested()) return;
            request = std::move(queue_.front());
            queue_.pop_front();
            running_ = request.revision;
            running_stop_ = {};
            cancelled = running_stop_.get_token();
        }
        const auto result = solve_or_nothing(request, cancelled);
        QMetaObject::invokeMethod(
            this, [this, result, cancelled] { deliver(result, cancelled.stop_requested()); },
            Qt::QueuedConnection);
    }
}

void BackgroundSolver::deliver(const SolveResult& result, bool cancelled) {
    count(-1);
    if (!cancelled) Q_EMIT solved(result);
}

void BackgroundSolver::count(int change) {
    const bool was_busy = busy();
    waiting_ += change;
    if (busy() != was_busy) Q_EMIT busy_changed(busy());
}

}  // namespace roundwright::app
