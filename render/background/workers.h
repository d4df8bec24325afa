#pragma once

#include <array>
#include <condition_variable>
#include <deque>
#include <functional>
#include <list>
#include <mutex>
#include <stop_token>
#include <thread>
#include <vector>

namespace roundwright::render {

/// Work in the background goes in two lanes, each with threads of its own, so that what takes long never
/// stands before what a key waits for.
enum class Lane {
    next_key,  ///< what the next key waits for: shapes, surfaces, the picture on the window
    longer     ///< what may take longer: checks, pages, files, the fine picture at rest
};

/// The program's threads: as many a lane as the processor has cores. They start when a lane is first used.
/// On Linux those of `Lane::longer` run at a lower priority. All members may be called from any thread.
class Workers {
  public:
    using Job = std::function<void()>;  ///< must not throw

    explicit Workers(unsigned cores);
    ~Workers() { finish(); }
    Workers(const Workers&) = delete;
    Workers& operator=(const Workers&) = delete;

    /// Those of the whole program; they finish with its QCoreApplication.
    [[nodiscard]] static Workers& shared();

    [[nodiscard]] unsigned cores() const { return cores_; }
    /// Jobs of a lane begin in the order they were posted. Throws std::bad_alloc where the system gives not
    /// one thread. `stop` is asked to stop if the workers finish.
    void post(Lane lane, Job job, std::stop_source stop = std::stop_source(std::nostopstate));
    /// Asks what runs to stop and waits until it has; what waits never begins. A job posted afterwards starts
    /// the threads anew.
    void finish();

  private:
    struct Waiting {
        Job job;
        std::stop_source stop;
    };
    struct Queue {
        std::deque<Waiting> waiting;
        std::vector<std::jthread> threads;
    };

    void start_threads(Lane lane);
    void work(Lane lane, const std::stop_token& finished);

    const unsigned cores_;
    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::list<std::stop_source> running_;
    std::array<Queue, 2> lanes_;  // last: their threads use all of the above
};

/// Calls `work` here and, as far as threads of the lane are free, on every other core at the same time; gives
/// back when all calls have ended. `work` takes its parts from a counter that the calls share. A thread that
/// comes free too late is not waited for. What one of the calls throws is thrown here.
void share_out(Lane lane, const std::function<void()>& work, Workers& workers = Workers::shared());

}  // namespace roundwright::render
