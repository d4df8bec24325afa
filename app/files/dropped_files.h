#pragma once

#include <QObject>
#include <QString>

namespace roundwright::app {

/// Files dropped anywhere on the program. They fall on widgets and on the window of the 3D view alike, so the
/// whole program's events are watched.
class DroppedFiles : public QObject {
    Q_OBJECT
  public:
    explicit DroppedFiles(QObject* parent);
    ~DroppedFiles() override;

  Q_SIGNALS:
    /// Once the drop is over: what it opens may ask a question.
    void dropped(const QString& path);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace roundwright::app
