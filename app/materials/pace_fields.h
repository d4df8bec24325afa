#pragma once

#include <optional>

#include <QWidget>

#include "app/session/document_session.h"

class QDoubleSpinBox;
class QLabel;
class QPushButton;

namespace roundwright::app {

/// How long the current piece takes to work, at whose pace, and where the maker's own pace comes from: typed,
/// or the rounds that were timed while working along.
class PaceFields : public QWidget {
    Q_OBJECT
  public:
    explicit PaceFields(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void set_pace(double stitches_per_minute);
    void show_all();
    void show_time();
    void show_timed();
    [[nodiscard]] std::optional<double> timed_pace() const;

    DocumentSession& session_;
    QLabel* time_;
    QDoubleSpinBox* pace_;
    QPushButton* use_timed_;
};

}  // namespace roundwright::app
