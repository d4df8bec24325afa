#include "render/background/background.h"

#include <chrono>
#include <exception>
#include <list>
#include <mutex>
#include <thread>
#include <utility>

#include <QPointer>

#include "render/background/fault_words.h"

namespace roundwright::render {

/// Work that waits or runs.
class Background::Task {
  public:
    explicit Task(Work work) : work_(std::move(work)) {}

    [[nodiscard]] const std::stop_source& stop() const { return stop_; }
    /// What is to be done; empty if it was cancelled.
    [[nodiscard]] Work begin() {
        const std::lock_guard lock(mutex_);
        return std::exchange(work_, nullptr);
    }
    void cancel() {
        stop_.request_stop();
        static_cast<void>(begin());
    }

  private:
    std::mutex mutex_;
    Work work_;
    std::stop_source stop_;
};

/// The way back into the owner's thread; closed when the owner goes.
class Background::Mailbox {
  public:
    explicit Mailbox(Background* owner) : owner_(owner) {}

    using Message = std::function<void(Background&)>;

    /// What is sent and not yet taken goes with the owner.
    void close() {
        std::list<Message> dropped;
        const std::lock_guard lock(mutex_);
        owner_ = nullptr;
        dropped.swap(messages_);
    }
    /// The message waits here and Qt's event only says that there is one: so it is this mutex that hands it
    /// from thread to thread, and a thread sanitizer, which sees none of Qt's own locks, sees that.
    void send(Message message) {
        std::list<Message> sent;
        sent.push_back(std::move(message));
        const std::lock_guard lock(mutex_);
        if (owner_ == nullptr) return;
        QMetaObject::invokeMethod(owner_, "take_message", Qt::QueuedConnection);
        messages_.splice(messages_.end(), sent);
    }
    [[nodiscard]] Message next() {
        const std::lock_guard lock(mutex_);
        if (messages_.empty()) return {};
        Message message = std::move(messages_.front());
        messages_.pop_front();
        return message;
    }
    void run(Ticket ticket, const Work& work, std::stop_token stop) {
        const auto answer = [this, ticket](Delivery delivery, bool last) {
            send([=](Background& owner) { owner.take(ticket, delivery, last); });
        };
        TaskRun run{std::move(stop),
                    [this, ticket](int done, int of) {
                        send([=](Background& owner) {
                            if (owner.tasks_.contains(ticket)) Q_EMIT owner.progressed(done, of);
                        });
                    },
                    [answer](Delivery delivery) { answer(std::move(delivery), false); }};
        answer(work(run), true);
    }
    /// Where there is no memory for the message, what the task held has just gone, and other tasks end: it is
    /// tried for a while.
    void fail(Ticket ticket, const QString& why) noexcept {
        constexpr int tries = 250;
        for (int k = 0; k < tries; ++k) {
            try {
                return send([=](Background& owner) { owner.take_failure(ticket, why); });
            } catch (...) {
                std::this_thread::sleep_for(std::chrono::milliseconds(20));
            }
        }
    }

  private:
    std::mutex mutex_;
    Background* owner_;
    std::list<Message> messages_;
};

Background::Background(QObject* parent, Workers& workers)
    : QObject(parent), workers_(workers), mailbox_(std::make_shared<Mailbox>(this)) {}

Background::~Background() {
    mailbox_->close();
    for (const auto& [ticket, task] : tasks_) task->cancel();
}

Background::Ticket Background::start(Lane lane, Work work) {
    const Ticket ticket = ++last_;
    const auto task = std::make_shared<Task>(std::move(work));
    tasks_.emplace(ticket, task);
    const auto run = [task, ticket, mailbox = mailbox_] {
        const Work begun = task->begin();
        if (!begun) return;
        try {
            mailbox->run(ticket, begun, task->stop().get_token());
        } catch (...) {
            mailbox->fail(ticket, fault_words(std::current_exception()));
        }
    };
    try {
        workers_.post(lane, run, task->stop());
    } catch (...) {
        mailbox_->fail(ticket, fault_words(std::current_exception()));
    }
    tell_busy();
    return ticket;
}

Background::Ticket Background::start_latest(Lane lane, Work work) {
    for (const auto& [ticket, task] : std::exchange(tasks_, {})) task->cancel();
    return start(lane, std::move(work));
}

void Background::cancel(Ticket ticket) {
    const auto found = tasks_.find(ticket);
    if (found == tasks_.end()) return;
    found->second->cancel();
    forget(ticket);
}

void Background::cancel() {
    for (const auto& [ticket, task] : std::exchange(tasks_, {})) task->cancel();
    tell_busy();
}

void Background::take_message() {
    if (const auto message = mailbox_->next()) message(*this);
}

void Background::take(Ticket ticket, const Delivery& delivery, bool last) {
    if (!tasks_.contains(ticket)) return;
    if (last) forget(ticket);
    if (delivery) delivery();
}

void Background::take_failure(Ticket ticket, const QString& why) {
    if (!tasks_.contains(ticket)) return;
    const QPointer<Background> still_there(this);
    forget(ticket);
    if (still_there) Q_EMIT failed(ticket, why);
}

void Background::forget(Ticket ticket) {
    tasks_.erase(ticket);
    tell_busy();
}

void Background::tell_busy() {
    if (std::exchange(told_busy_, busy()) != busy()) Q_EMIT busy_changed(busy());
}

}  // namespace roundwright::render
