#pragma once

#include <functional>

#include <QWidget>

#include "app/gauge/measurements_model.h"

class QLabel;
class QListView;
class QToolButton;

namespace roundwright::app {

/// Several measurements together: what each is to the gauge, which of them disagrees, and more of them.
class SeveralPage : public QWidget {
    Q_OBJECT
  public:
    /// `from_finished_piece` (may be null) is one of the ways to add a measurement.
    SeveralPage(DocumentSession& session, QAction* from_finished_piece, QWidget* parent = nullptr);

    [[nodiscard]] QListView& list() { return *list_; }
    [[nodiscard]] MeasurementsModel& model() { return *model_; }
    [[nodiscard]] QString disagreement() const;

    /// Asks for a measurement, and adds it.
    void add_circle();
    void add_swatch();

  private:
    void lay_out(QAction* from_finished_piece);
    void ask(GaugeMeasurement measurement, std::function<void(const GaugeMeasurement&)> use);
    void edit_current();
    void delete_current();
    void update_state();

    DocumentSession& session_;
    MeasurementsModel* model_;
    QListView* list_;
    QLabel* disagreement_;
    QToolButton* add_;
    QToolButton* edit_;
    QToolButton* delete_;
};

}  // namespace roundwright::app
