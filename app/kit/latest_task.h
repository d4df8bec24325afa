#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <stop_token>
#include <thread>

#include <QObject>

namespace roundwright::app {

/// Works out the newest wish on a thread of its own; what an older one was doing is stopped and its answer
/// dropped. The answer comes in the thread this object lives in.
class LatestTask : public QObject {
    Q_OBJECT
  public:
    /// What to do with the answer, in the thread of this object.
    using Delivery = std::function<void()>;
    using Work = std::function<Delivery(const std::stop_token&)>;

    explicit LatestTask(QObject* parent = nullptr);
    ~LatestTask() override;

    /// `work` runs on the thread and returns what is to be done with its answer (may be empty).
    void start(Work work);
    void cancel();
    [[nodiscard]] bool busy() const { return busy_; }

  Q_SIGNALS:
    void busy_changed(bool busy);

  private:
    void run(const std::stop_token& stop);
    void set_busy(bool busy);

    struct Shared;
    std::shared_ptr<Shared> shared_;
    std::uint64_t newest_ = 0;
    bool busy_ = false;
    std::jthread thread_;  // last: it uses all of the above
};

}  // namespace roundwright::app
