#pragma once

#include <optional>

#include <QLabel>
#include <QListView>
#include <QWidget>

#include "app/checks/checks_model.h"

namespace roundwright::app {

/// The checks as a list of sentences at the foot of the window, each with a button for its first cure. The
/// list has a place of its own that is there without checks too, so that nothing moves when some appear.
class ChecksList : public QWidget {
    Q_OBJECT
  public:
    explicit ChecksList(DocumentSession& session, QWidget* parent = nullptr);

    void step(int by);
    void cure_current();
    bool take_keyboard();
    [[nodiscard]] QListView* view() { return view_; }
    [[nodiscard]] const ChecksModel& model() const { return model_; }
    [[nodiscard]] QString title() const { return title_->text(); }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  private:
    void follow();
    void offer_cures(const QPoint& place);
    void keep_current();
    void find_current();

    ChecksModel model_;
    std::optional<Check> current_;  ///< the one under the cursor before the last edit
    int current_row_ = 0;
    QLabel* title_;
    QListView* view_;
    QLabel* nothing_;  ///< over the list
};

}  // namespace roundwright::app
