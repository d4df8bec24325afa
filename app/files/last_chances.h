#pragma once

#include <QObject>

#include "app/files/sleep_notice.h"

namespace roundwright::app {

class Autosave;

/// Keeps what is not saved whenever it may be the last chance to: the maker goes to another program, the
/// computer goes to sleep, the session of the desktop ends.
class LastChances : public QObject {
    Q_OBJECT
  public:
    explicit LastChances(Autosave& autosave, QDBusConnection bus = QDBusConnection::systemBus(),
                         QObject* parent = nullptr);

  private:
    SleepNotice sleep_;
};

}  // namespace roundwright::app
