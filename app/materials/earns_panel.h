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

  private:
    /// A field and the figure of `Making` that it shows; absent where it stands at 0.
    struct Figure {
        QDoubleSpinBox* box;
        std::optional<double> Making::*part;
        QString step;
        bool is_money;
    };
    void add_figure(QFormLayout& form, const QString& label, std::optional<double> Making::*part,
                    const QString& step, bool is_money, double most, int decimals, const QString& unit = {});
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
