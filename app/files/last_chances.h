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
};

}  // namespace roundwright::app
