#pragma once

#include <functional>

#include <QWidget>

#include "app/session/document_session.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;
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
    void connect_all();
    void add_yarn();
    void remove_yarn();
    void choose_colour();
    void change_yarn(const QString& step, const std::function<void(Yarn&)>& change,
                     const QString& merge_key = {});
    [[nodiscard]] int current() const;
    void show_toy();
    void show_yarn();
    void show_hook();

    DocumentSession& session_;
    YarnsModel* model_;
    QListView* list_;
    QPushButton* add_;
    QPushButton* remove_;
    QPushButton* colour_;
    QComboBox* weight_;
    QDoubleSpinBox* metres_;
    QDoubleSpinBox* hook_;
    QLabel* hook_names_;
};

}  // namespace roundwright::app
