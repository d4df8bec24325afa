#include "render/background/workers.h"

#include <algorithm>
#include <array>
#include <condition_variable>
#include <exception>
#include <list>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

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

/// What the threads share with the Workers, and keep if they outlast them.
class Workers::Crew : public std::enable_shared_from_this<Crew> {
  public:
    explicit Crew(unsigned cores) : cores_(cores) {}

    void post(Lane lane, Job job, std::stop_source stop);
    bool finish(std::optional<std::chrono::milliseconds> patience);

  private:
    struct Work {
        Job job;
        std::stop_source stop;
    };
    using Works = std::list<Work>;  // moved from list to list: that asks for no memory, so it cannot fail
    struct Thread {
        std::thread thread;
        std::stop_source finished;
        bool ended = false;
    };
    struct Queue {
        Works waiting;
        Works running;
        std::vector<std::shared_ptr<Thread>> threads;

        [[nodiscard]] bool wants_a_thread(unsigned cores) const;
    };

    [[nodiscard]] Queue& queue(Lane lane) { return lanes_[static_cast<std::size_t>(lane)]; }
    void begin_thread(Lane lane);
    void work(Lane lane, Thread& self);
    static void do_work(Work& next);
    /// Takes the threads out of their lanes, asked to stop, and what waits with them.
    std::vector<std::shared_ptr<Thread>> dismiss(Works& dropped);

    const unsigned cores_;
    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::condition_variable ended_;
    std::array<Queue, 2> lanes_;
};

/// Work that was asked to stop and goes on nevertheless keeps no key waiting, as long as it is not the rule.
bool Workers::Crew::Queue::wants_a_thread(unsigned cores) const {
    constexpr std::size_t most_for_each_core = 4;
    if (threads.size() < cores) return true;
    if (threads.size() >= most_for_each_core * cores || running.size() < threads.size()) return false;
    return std::ranges::all_of(running, [](const Work& work) { return work.stop.stop_requested(); });
}

void Workers::Crew::post(Lane lane, Job job, std::stop_source stop) {
    Works posted;
    posted.push_back({std::move(job), std::move(stop)});
    {
        const std::lock_guard lock(mutex_);
        Queue& to = queue(lane);
        try {
            while (to.wants_a_thread(cores_)) begin_thread(lane);
        } catch (...) {
            if (to.threads.empty()) throw;  // otherwise those there are take it
        }
        to.waiting.splice(to.waiting.end(), posted);
    }
    wake_.notify_all();
}

void Workers::Crew::begin_thread(Lane lane) {
    auto& threads = queue(lane).threads;
    threads.reserve(threads.size() + 1);
    auto begun = std::make_shared<Thread>();
    begun->thread = std::thread([crew = shared_from_this(), lane, self = begun] { crew->work(lane, *self); });
    threads.push_back(std::move(begun));
}

void Workers::Crew::work(Lane lane, Thread& self) {
    if (lane == Lane::longer) give_way();
    const std::stop_token finished = self.finished.get_token();
    Queue& from = queue(lane);
    std::unique_lock lock(mutex_);
    while (wake_.wait(lock, finished, [&] { return !from.waiting.empty(); }) && !finished.stop_requested()) {
        const auto next = from.waiting.begin();
        from.running.splice(from.running.end(), from.waiting, next);
        lock.unlock();
        do_work(*next);
        lock.lock();
        from.running.erase(next);
    }
    self.ended = true;
    ended_.notify_all();
}

void Workers::Crew::do_work(Work& next) {
    try {
        next.job();
    } catch (...) {  // a job that tells of its failures has told already
    }
    next.job = nullptr;  // what it holds goes before it counts as ended
}

std::vector<std::shared_ptr<Workers::Crew::Thread>> Workers::Crew::dismiss(Works& dropped) {
    std::vector<std::shared_ptr<Thread>> dismissed;
    const std::lock_guard lock(mutex_);
    for (Queue& lane : lanes_) {
        for (Work& work : lane.running) work.stop.request_stop();
        dropped.splice(dropped.end(), lane.waiting);
        std::ranges::move(lane.threads, std::back_inserter(dismissed));
        lane.threads.clear();
    }
    return dismissed;
}

bool Workers::Crew::finish(std::optional<std::chrono::milliseconds> patience) {
    Works dropped;
    const auto dismissed = dismiss(dropped);
    for (const auto& each : dismissed) each->finished.request_stop();
    const auto all_ended = [&] { return std::ranges::all_of(dismissed, &Thread::ended); };
    {
        std::unique_lock lock(mutex_);
        if (patience)
            ended_.wait_for(lock, *patience, all_ended);
        else
            ended_.wait(lock, all_ended);
    }
    bool whole = true;
    for (const auto& each : dismissed) {
        const bool ended = [&] {
            const std::lock_guard lock(mutex_);
            return each->ended;
        }();
        ended ? each->thread.join() : each->thread.detach();
        whole = whole && ended;
    }
    return whole;
}

Workers::Workers(unsigned cores)
    : cores_(std::max(cores, 1U)), crew_(std::make_shared<Crew>(std::max(cores, 1U))) {}

Workers::~Workers() { crew_->finish(std::nullopt); }

/// Never destroyed, since a thread that was let go may still use them.
Workers& Workers::shared() {
    static Workers& workers = *new Workers(std::thread::hardware_concurrency());
    static const bool finishes_with_the_application = [] {
        qAddPostRoutine([] { shared().finish(patience_at_the_end); });
        return true;
    }();
    static_cast<void>(finishes_with_the_application);
    return workers;
}

void Workers::post(Lane lane, Job job, std::stop_source stop) {
    crew_->post(lane, std::move(job), std::move(stop));
}

bool Workers::finish(std::chrono::milliseconds patience) { return crew_->finish(patience); }

namespace {

/// Without helpers (no memory, no thread) the work is done all the same, here.
void ask_for_help(const std::shared_ptr<SharedCall>& shared, Lane lane, Workers& workers) {
    try {
        for (unsigned k = 1; k < workers.cores(); ++k) workers.post(lane, [shared] { shared->help(); });
    } catch (...) {
    }
}

}  // namespace

void share_out(Lane lane, const std::function<void()>& work, Workers& workers) {
    const auto shared = std::make_shared<SharedCall>(work);
    ask_for_help(shared, lane, workers);
    shared->call();
    shared->close();
}

}  // namespace roundwright::render
