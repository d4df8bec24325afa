#include "app/session/background_solver.h"

#include <algorithm>
#include <new>
#include <utility>

namespace roundwright::app {
namespace {

/// What the request asks for, in stages.
StudiedPiece worked_out(const SolveRequest& request, const std::stop_token& stop) {
    std::optional<SurfaceWanted> wanted;
    if (request.surface_wanted)
        wanted = {request.unstuffed, {.relief = Relief::shaded, .most_triangles = request.most_triangles}};
    if (!request.known) return study_in_stages(*request.toy, request.piece, request.before, wanted, stop);
    if (!wanted) return {request.known, request.known, nullptr};
    return with_surface(request.known, *request.toy, request.piece, request.before, *wanted, stop);
}

/// A piece too large for the machine's memory gives no answer, rather than ending the program.
SolveResult solve_or_nothing(const SolveRequest& request, const std::stop_token& stop) {
    try {
        return solve_request(request, stop);
    } catch (const std::bad_alloc&) {
        return {request.revision, nullptr, nullptr, nullptr, nullptr};
    }
}

}  // namespace

SolveResult solve_request(const SolveRequest& request, const std::stop_token& stop) {
    const StudiedPiece made = worked_out(request, stop);
    return {request.revision, made.study, made.shown, made.surface(), made.drawn};
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
