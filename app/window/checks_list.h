#pragma once

#include <QLabel>
#include <QListView>
#include <QWidget>

#include "app/window/checks_model.h"

namespace roundwright::app {

/// The checks as a list of sentences at the foot of the window, each with a button for its first cure.
class ChecksList : public QWidget {
    Q_OBJECT
  public:
    explicit ChecksList(DocumentSession& session, QWidget* parent = nullptr);

    void step(int by);
    void cure_current();
    [[nodiscard]] QListView* view() { return view_; }
    [[nodiscard]] QString title() const { return title_->text(); }

  private:
    void follow();

    ChecksModel model_;
    QLabel* title_;
    QLabel* nothing_;
    QListView* view_;
};

}  // namespace roundwright::app
