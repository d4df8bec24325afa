#pragma once

#include <vector>

#include <QWidget>

#include "app/session/document_session.h"

class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QLineEdit;

namespace roundwright::app {

/// What a toy costs to make and what a price leaves for it. Every figure is the maker's own, and what follows
/// from it is shown with its range.
class EarnsPanel : public QWidget {
    Q_OBJECT
  public:
    explicit EarnsPanel(DocumentSession& session, QWidget* parent = nullptr);

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    /// A figure of `Making` that is asked for, and absent while it stands at 0.
    struct Asked {
        QString label;
        std::optional<double> Making::*part;
        QString step;  ///< what undo calls a change of it
        double most;
        int decimals = 2;
        QString unit{};
    };
    struct Figure {
        QDoubleSpinBox* box;
        std::optional<double> Making::*part;
    };
    void ask(QFormLayout& form, const Asked& asked);
    void build();
    void connect_all();
    void show_all();
    void show_answers();
    void change(const QString& step, const std::function<void(Making&)>& how, const QString& merge_key);

    DocumentSession& session_;
    QLineEdit* currency_;
    QDoubleSpinBox* other_;
    std::vector<Figure> figures_;
    QLabel* answers_;
};

}  // namespace roundwright::app
