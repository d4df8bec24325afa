#pragma once

#include <QWidget>

#include "app/session/document_session.h"

class QCheckBox;
class QLabel;
class QSpinBox;

namespace roundwright::app {

class MeasureSpinBox;

/// Which rounds of the current piece are stuffed, and what weight of pellets lies in it.
class StuffedPartFields : public QWidget {
    Q_OBJECT
  public:
    explicit StuffedPartFields(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void build();
    void connect_all();
    void show_piece();
    void show_rounds(const Piece& piece);
    void show_pellets(const Piece& piece);
    void stuff_a_part(bool part);
    void set_rounds(RoundSpan rounds, const QString& merge_key);

    DocumentSession& session_;
    QCheckBox* part_;
    QWidget* rounds_;
    QSpinBox* first_;
    QSpinBox* last_;
    MeasureSpinBox* pellets_;
    QLabel* caution_;
};

}  // namespace roundwright::app
