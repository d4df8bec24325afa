#pragma once

#include <QObject>

class QDBusConnection;

namespace roundwright::app {

class Autosave;

/// Keeps what is not saved whenever it may be the last chance to: the maker goes to another program, the
/// computer goes to sleep, the session of the desktop ends.
class LastChances : public QObject {
    Q_OBJECT
  public:
    /// Told of sleep by the system's bus.
    explicit LastChances(Autosave& autosave, QObject* parent = nullptr);
    LastChances(Autosave& autosave, const QDBusConnection& bus, QObject* parent = nullptr);

    /// The desktop's session ends, as far as is known, and everything is kept: nobody is to be asked
    /// anything. It may be called off; then this ends with the next change.
    [[nodiscard]] bool session_ends() const { return session_ends_; }
    void goes_on() { session_ends_ = false; }

  private:
    void keep_for_end_of_session();

    Autosave& autosave_;
    bool session_ends_ = false;
};

}  // namespace roundwright::app
