#include "app/kit/latest_task.h"

#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <utility>

namespace roundwright::app {

struct LatestTask::Shared {
    std::mutex mutex;
    std::condition_variable_any wake;
    Work waiting;
    std::uint64_t ticket = 0;  // of the one waiting
    std::stop_source running;
};

LatestTask::LatestTask(QObject* parent)
    : QObject(parent),
      shared_(std::make_shared<Shared>()),
      thread_([this](const std::stop_token& stop) { run(stop); }) {}

LatestTask::~LatestTask() {
    thread_.request_stop();
    cancel();
    thread_.join();
}

void LatestTask::start(Work work) {
    {
        const std::lock_guard lock(shared_->mutex);
        shared_->running.request_stop();
        shared_->waiting = std::move(work);
        shared_->ticket = ++newest_;
    }
    shared_->wake.notify_one();
    set_busy(true);
}

void LatestTask::cancel() {
    {
        const std::lock_guard lock(shared_->mutex);
        shared_->running.request_stop();
        shared_->waiting = nullptr;
        ++newest_;
    }
    set_busy(false);
}

void LatestTask::run(const std::stop_token& stop) {
    for (;;) {
        Work work;
        std::uint64_t ticket = 0;
        std::stop_token stopped;
        {
            std::unique_lock lock(shared_->mutex);
            if (!shared_->wake.wait(lock, stop, [this] { return static_cast<bool>(shared_->waiting); }))
                return;
            work = std::exchange(shared_->waiting, nullptr);
            ticket = shared_->ticket;
            shared_->running = {};
            stopped = shared_->running.get_token();
        }
        Delivery delivery = work(stopped);
        QMetaObject::invokeMethod(
            this,
            [this, ticket, delivery = std::move(delivery)] {
                if (ticket != newest_) return;
                set_busy(false);
                if (delivery) delivery();
            },
            Qt::QueuedConnection);
    }
}

void LatestTask::set_busy(bool busy) {
    if (busy_ == busy) return;
    busy_ = busy;
    Q_EMIT busy_changed(busy);
}

}  // namespace roundwright::app
