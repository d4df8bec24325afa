#pragma once

#include <QObject>
#include <QStringList>

class QMenu;

namespace roundwright::app {

/// The files opened or saved last, newest first, as a menu.
class RecentFiles : public QObject {
    Q_OBJECT
  public:
    explicit RecentFiles(QObject* parent = nullptr) : QObject(parent) {}

    void add(const QString& path);
    void remove(const QString& path);
    [[nodiscard]] QStringList paths() const;
    void fill(QMenu* menu);

  Q_SIGNALS:
    void chosen(const QString& path);
};

}  // namespace roundwright::app
