#pragma once

#include <optional>

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

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void follow();
    void offer_cures(const QPoint& place);
    void keep_current();
    void find_current();
    void fit_height();

    ChecksModel model_;
    std::optional<Check> current_;  ///< the one under the cursor before the last edit
    int current_row_ = 0;
    QLabel* title_;
    QLabel* nothing_;
    QListView* view_;
};

}  // namespace roundwright::app
