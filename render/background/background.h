#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <stop_token>

#include <QObject>
#include <QString>

#include "render/background/workers.h"

namespace roundwright::render {

/// What to do with an answer, in the owner's thread; may be empty.
using Delivery = std::function<void()>;

/// What a task knows of its own run. May be used from any thread until the task returns.
struct TaskRun {
    std::stop_token stop;                          ///< asked to stop: nobody wants the answer any more
    std::function<void(int done, int of)> report;  ///< sends `Background::progressed`
    std::function<void(Delivery)> deliver;         ///< sends an answer before the last one, in order
};

/// Work in the background, for one owner: the kit that everything in the program uses which a window's thread
/// must not wait for.
///
///     background_.start_latest(Lane::longer, [this, toy](const TaskRun& run) -> Delivery {
///         const auto pages = compose(*toy, run.stop);   // on a thread of Workers
///         return [this, pages] { show(pages); };        // in the thread of the owner
///     });
///
/// - A task holds values of its own. It may carry the owner's address for its deliveries, but must not use
/// it:
///   only deliveries run in the owner's thread, by its event loop, and only while this object is there.
/// - Tasks of a lane begin in the order they were started, and may run side by side.
/// - No answer, progress or failure of a cancelled task comes, from the moment it is cancelled. A task that
/// has
///   not begun never begins; one that runs is told by its stop token, and nobody waits for it.
/// - What a task throws becomes the signal `failed`.
/// - Destroying this object cancels its tasks.
///
/// Use it in the thread it lives in.
class Background : public QObject {
    Q_OBJECT
  public:
    using Ticket = std::uint64_t;
    using Work = std::function<Delivery(const TaskRun&)>;

    explicit Background(QObject* parent = nullptr, Workers& workers = Workers::shared());
    ~Background() override;

    Ticket start(Lane lane, Work work);
    /// The same in place of all that were started before.
    Ticket start_latest(Lane lane, Work work);
    void cancel(Ticket ticket);
    void cancel();
    /// Something was started, and its last answer has not come yet.
    [[nodiscard]] bool busy() const { return !tasks_.empty(); }

  Q_SIGNALS:
    void busy_changed(bool busy);
    void progressed(int done, int of);
    /// `why`: as a sentence.
    void failed(roundwright::render::Background::Ticket ticket, const QString& why);

  private:
    class Task;
    class Mailbox;

    Q_INVOKABLE void take_message();
    void take(Ticket ticket, const Delivery& delivery, bool last);
    void take_failure(Ticket ticket, const QString& why);
    void forget(Ticket ticket);
    void tell_busy();

    Workers& workers_;
    std::shared_ptr<Mailbox> mailbox_;
    std::map<Ticket, std::shared_ptr<Task>> tasks_;
    Ticket last_ = 0;
    bool told_busy_ = false;
};

}  // namespace roundwright::render
