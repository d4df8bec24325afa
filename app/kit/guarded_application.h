#pragma once

#include <exception>
#include <functional>
#include <optional>

#include <QApplication>
#include <QElapsedTimer>
#include <QPointer>
#include <QString>

class QMessageBox;

namespace roundwright::app {

/// The application of every window. What an event, a timer or a slot throws does not end it: it is told in a
/// message, and the program goes on with the toy as it is.
class GuardedApplication : public QApplication {
    Q_OBJECT
  public:
    GuardedApplication(int& argc, char** argv);

    bool notify(QObject* receiver, QEvent* event) override;
    /// Runs what no event calls, by the same rule. False if it threw.
    bool guard(const std::function<void()>& work) noexcept;

  Q_SIGNALS:
    /// Something was thrown, and what it was about is not done. Comes by the event loop, before the message.
    void fault_met(const QString& why);

  private:
    void take_fault(const std::exception_ptr& fault) noexcept;
    void tell_fault(const QString& why);

    QPointer<QMessageBox> message_;
    QString met_;
    QElapsedTimer since_met_;
    bool telling_ = false;
};

}  // namespace roundwright::app
