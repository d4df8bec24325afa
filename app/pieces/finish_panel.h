#pragma once

#include <QWidget>

#include "app/session/document_session.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QSpinBox;

namespace roundwright::app {

/// How the current piece starts, is joined and ends, which way up it stands, and how many are made.
class FinishPanel : public QWidget {
    Q_OBJECT
  public:
    explicit FinishPanel(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void build();
    void connect_all();
    void set_start(int kind, int chains);
    void show_piece();
    [[nodiscard]] std::size_t current() const;

    DocumentSession& session_;
    QComboBox* start_;
    QLabel* chains_label_;
    QSpinBox* chains_;
    QComboBox* joining_;
    QComboBox* end_;
    QCheckBox* starts_at_top_;
    QSpinBox* make_;
};

}  // namespace roundwright::app
