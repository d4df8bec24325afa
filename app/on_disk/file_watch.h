#pragma once

#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <QTimer>

namespace roundwright::app {

/// Tells that something may have happened to a file. Its folder is watched too, since a file that is replaced
/// by a rename is another one, which the system's watch on the old one does not see. A link's target is
/// watched as the file.
class FileWatch : public QObject {
    Q_OBJECT
  public:
    explicit FileWatch(QObject* parent = nullptr);

    /// Empty: nothing is watched.
    void follow(const QString& path);
    /// The file or its folder was away: they are watched again, if they are back.
    void renew();

  Q_SIGNALS:
    /// A moment after the first sign of it, so that a file that is written in many pieces is looked at a few
    /// times, not a thousand.
    void stirred();

  private:
    QString path_;
    QFileSystemWatcher watcher_;
    QTimer moment_;
};

}  // namespace roundwright::app
