#include "app/kit/guarded_application.h"

#include <utility>

#include <QMessageBox>

#include "app/kit/plain_texts.h"
#include "render/background/fault_words.h"

namespace roundwright::app {
namespace {

/// What comes back with every picture or every tick of a timer is told once, and again after a while without
/// it, not in a pile of messages.
constexpr qint64 same_again_ms = 2'000;

}  // namespace

GuardedApplication::GuardedApplication(int& argc, char** argv) : QApplication(argc, argv) {
    render::keep_memory_for_words();
    PlainTexts::hold();
}

bool GuardedApplication::notify(QObject* receiver, QEvent* event) {
    try {
        return QApplication::notify(receiver, event);
    } catch (...) {
        take_fault(std::current_exception());
        return false;
    }
}

bool GuardedApplication::guard(const std::function<void()>& work) noexcept {
    try {
        work();
        return true;
    } catch (...) {
        take_fault(std::current_exception());
        return false;
    }
}

/// The message comes by the event loop, since what threw may stand half way through a picture or a change.
void GuardedApplication::take_fault(const std::exception_ptr& fault) noexcept {
    const QString why = render::fault_words(fault);
    if (std::exchange(telling_, true)) return;
    try {
        QMetaObject::invokeMethod(
            this,
            [this, why] {
                telling_ = false;
                Q_EMIT fault_met(why);
                tell_fault(why);
                render::keep_memory_for_words();
            },
            Qt::QueuedConnection);
    } catch (...) {  // no memory for it even now: the next one is told
        telling_ = false;
    }
}

void GuardedApplication::tell_fault(const QString& why) {
    const bool again = why == met_ && since_met_.isValid() && since_met_.elapsed() < same_again_ms;
    met_ = why;
    since_met_.start();
    if (message_ || again) return;
    message_ = new QMessageBox(QMessageBox::Warning, tr("Roundwright"), why, QMessageBox::Ok, activeWindow());
    message_->setInformativeText(
        tr("Your toy is as it was before. Save it, and if this comes back, close the program and open it "
           "again."));
    message_->setAttribute(Qt::WA_DeleteOnClose);
    message_->open();
}

}  // namespace roundwright::app
