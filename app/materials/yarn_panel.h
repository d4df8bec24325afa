#pragma once

#include <functional>

#include <QWidget>

#include "app/session/document_session.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QLineEdit;
class QListView;
class QPushButton;

namespace roundwright::app {

class YarnsModel;

/// The toy's yarns: name, colour, weight, length, and what a ball costs; and the hook.
class YarnPanel : public QWidget {
    Q_OBJECT
  public:
    explicit YarnPanel(DocumentSession& session, QWidget* parent = nullptr);

  private:
    void build();
    void build_ball();
    void connect_all();
    void read_label();
    void add_yarn();
    void remove_yarn();
    void choose_colour();
    void change_yarn(const QString& step, const std::function<void(Yarn&)>& change,
                     const QString& merge_key = {});
    [[nodiscard]] int current() const;
    void show_toy();
    void show_yarn();
    void show_hook();
    void choose_weight(YarnWeight weight);
    void offer_hook(YarnWeight weight);
    void show_offer();
    void withdraw_offer();
    [[nodiscard]] QString offer_words(YarnWeight weight, double hook_mm) const;
    void use_hook(double mm);

    DocumentSession& session_;
    YarnsModel* model_;
    QListView* list_;
    QPushButton* add_;
    QPushButton* remove_;
    QPushButton* colour_;
    QComboBox* weight_;
    QDoubleSpinBox* metres_;
    QLineEdit* label_;  ///< to be read: it holds nothing of the toy
    QLabel* label_says_;
    QDoubleSpinBox* ball_grams_;
    QDoubleSpinBox* ball_price_;
    QDoubleSpinBox* hook_;
    QLabel* hook_names_;
    QLabel* offer_;
    QPushButton* take_offer_;
    double offered_hook_mm_ = 0;  ///< 0: none is offered
};

}  // namespace roundwright::app
