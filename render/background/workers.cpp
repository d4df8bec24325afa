#include "render/background/workers.h"

#include <algorithm>
#include <exception>
#include <memory>
#include <new>
#include <system_error>
#include <utility>

#ifdef __linux__
#include <sys/resource.h>
#include <unistd.h>
#endif

#include <QCoreApplication>

namespace roundwright::render {

namespace {

/// Linux keeps a niceness for each thread (setpriority(2), "C library/kernel differences").
void give_way() {
#ifdef __linux__
    constexpr int nicer = 10;
    static_cast<void>(setpriority(PRIO_PROCESS, static_cast<id_t>(gettid()), nicer));
#endif
}

/// What the calls of one `share_out` have in common; a helper that comes late finds it closed.
class SharedCall {
  public:
    explicit SharedCall(const std::function<void()>& work) : work_(&work) {}

    void help() {
        {
            const std::lock_guard lock(mutex_);
            if (closed_) return;
            ++helping_;
        }
        call();
        const std::lock_guard lock(mutex_);
        if (--helping_ == 0) ended_.notify_one();
    }
    void call() {
        try {
            (*work_)();
        } catch (...) {
            const std::lock_guard lock(mutex_);
            if (!thrown_) thrown_ = std::current_exception();
        }
    }
    void close() {
        std::unique_lock lock(mutex_);
        closed_ = true;
        ended_.wait(lock, [this] { return helping_ == 0; });
        if (thrown_) std::rethrow_exception(std::exchange(thrown_, nullptr));
    }

  private:
    const std::function<void()>* work_;  // the caller's: there until `close` has given back
    std::mutex mutex_;
    std::condition_variable ended_;
    int helping_ = 0;
    bool closed_ = false;
    std::exception_ptr thrown_;
};

}  // namespace

Workers::Workers(unsigned cores) : cores_(std::max(cores, 1U)) {}

Workers& Workers::shared() {
    static Workers workers(std::thread::hardware_concurrency());
    static const bool finishes_with_the_application = [] {
        qAddPostRoutine([] { workers.finish(); });
        return true;
    }();
    static_cast<void>(finishes_with_the_application);
    return workers;
}

void Workers::post(Lane lane, Job job, std::stop_source stop) {
    {
        const std::lock_guard lock(mutex_);
        Queue& queue = lanes_[static_cast<std::size_t>(lane)];
        queue.waiting.push_back({std::move(job), std::move(stop)});
        start_threads(lane);
        if (queue.threads.empty()) {
            queue.waiting.pop_back();
            throw std::bad_alloc();
        }
    }
    wake_.notify_all();
}

/// A system that is short of memory gives fewer threads than are asked for.
void Workers::start_threads(Lane lane) {
    auto& threads = lanes_[static_cast<std::size_t>(lane)].threads;
    try {
        while (threads.size() < cores_)
            threads.emplace_back([this, lane](const std::stop_token& finished) { work(lane, finished); });
    } catch (const std::system_error&) {
    }
}

void Workers::finish() {
    std::vector<std::jthread> threads;
    std::deque<Waiting> dropped;
    {
        const std::lock_guard lock(mutex_);
        for (std::stop_source& stop : running_) stop.request_stop();
        for (Queue& queue : lanes_) {
            std::ranges::move(queue.threads, std::back_inserter(threads));
            std::ranges::move(queue.waiting, std::back_inserter(dropped));
            queue.threads.clear();
            queue.waiting.clear();
        }
    }
    for (std::jthread& thread : threads) thread.request_stop();
    for (std::jthread& thread : threads) thread.join();
}

void Workers::work(Lane lane, const std::stop_token& finished) {
    if (lane == Lane::longer) give_way();
    auto& waiting = lanes_[static_cast<std::size_t>(lane)].waiting;
    std::unique_lock lock(mutex_);
    while (wake_.wait(lock, finished, [&] { return !waiting.empty(); }) && !finished.stop_requested()) {
        Waiting next = std::move(waiting.front());
        waiting.pop_front();
        const auto running = running_.insert(running_.end(), next.stop);
        lock.unlock();
        next.job();
        next.job = nullptr;  // what it holds goes before it counts as ended
        lock.lock();
        running_.erase(running);
    }
}

void share_out(Lane lane, const std::function<void()>& work, Workers& workers) {
    const auto shared = std::make_shared<SharedCall>(work);
    try {
        for (unsigned k = 1; k < workers.cores(); ++k) workers.post(lane, [shared] { shared->help(); });
    } catch (const std::bad_alloc&) {  // then it is done without help
    }
    shared->call();
    shared->close();
}

}  // namespace roundwright::render
