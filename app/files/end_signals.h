#pragma once

#include <QObject>

class QSocketNotifier;

namespace roundwright::app {

/// SIGTERM, SIGHUP and SIGINT as a signal of Qt, in the window's thread: a handler of the system's may hardly
/// do anything, so it writes the number into a socket and the event loop reads it (signal-safety(7)). What
/// was ignored when the program began (nohup) stays ignored. One at a time.
class EndSignals : public QObject {
    Q_OBJECT
  public:
    explicit EndSignals(QObject* parent = nullptr);
    ~EndSignals() override;

    /// Ends the program as the signal would have done without this.
    [[noreturn]] static void end_by(int number);

  Q_SIGNALS:
    void asked_to_end(int number);

  private:
    void tell();

    QSocketNotifier* notifier_ = nullptr;
};

}  // namespace roundwright::app
