#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <stop_token>

namespace roundwright::render {

/// Work in the background goes in two lanes, each with threads of its own, so that what takes long never
/// stands before what a key waits for.
enum class Lane {
    next_key,  ///< what the next key waits for: shapes, surfaces, the picture on the window
    longer     ///< what may take longer: checks, pages, files, the fine picture at rest
};

/// The program's threads: as many a lane as the processor has cores. They start when a lane is first used,
/// and one more starts when all of a lane are still at work that nobody wants any more. On Linux those of
/// `Lane::longer` run at a lower priority. All members may be called from any thread.
class Workers {
  public:
    using Job =
        std::function<void()>;  ///< should not throw: what it throws ends the job and is told to nobody

    explicit Workers(unsigned cores);
    /// As long as it takes: what jobs use may go afterwards.
    ~Workers();
    Workers(const Workers&) = delete;
    Workers& operator=(const Workers&) = delete;

    /// Those of the whole program; never destroyed. They finish with its QCoreApplication, if not before.
    [[nodiscard]] static Workers& shared();

    [[nodiscard]] unsigned cores() const { return cores_; }
    /// Jobs of a lane begin in the order they were posted. `stop` is asked to stop if the workers finish.
    /// Throws std::system_error if the system gives no thread, and std::bad_alloc; the job is then dropped.
    void post(Lane lane, Job job, std::stop_source stop = std::stop_source(std::nostopstate));
    /// Asks what runs to stop and waits until it has, at most this long; what waits never begins. False if
    /// something still runs: its thread is let go, and whatever it uses must stay until the process ends. A
    /// job posted afterwards starts the threads anew.
    bool finish(std::chrono::milliseconds patience);

  private:
    class Crew;

    const unsigned cores_;
    const std::shared_ptr<Crew> crew_;
};

/// How long the program waits at its end for work that was asked to stop.
inline constexpr std::chrono::milliseconds patience_at_the_end{2000};

/// Calls `work` here and, as far as threads of the lane are free, on every other core at the same time; gives
/// back when all calls have ended. `work` takes its parts from a counter that the calls share. A thread that
/// comes free too late is not waited for. What one of the calls throws is thrown here.
void share_out(Lane lane, const std::function<void()>& work, Workers& workers = Workers::shared());

}  // namespace roundwright::render
