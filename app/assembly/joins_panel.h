#pragma once

#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QWidget>

#include "app/assembly/join_fields.h"
#include "app/assembly/units_model.h"

namespace roundwright::app {

/// How the toy is sewn together: its pieces as a list of what is sewn to what, and the place of the one that
/// is picked in fields.
class JoinsPanel : public QWidget {
    Q_OBJECT
  public:
    JoinsPanel(DocumentSession& session, ToyState& state, QWidget* parent = nullptr);

    bool take_keyboard();
    [[nodiscard]] UnitsModel& model() { return *model_; }
    [[nodiscard]] QListView& list() { return *list_; }
    /// The row that is picked; null: there is none.
    [[nodiscard]] const ToyUnit* unit() const;
    void put_together();

  Q_SIGNALS:
    /// Enter or a double click on a piece: to its rounds.
    void opened();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void build();
    void connect_fields();
    void follow();
    void pick_row(int row);

    DocumentSession& session_;
    ToyState& state_;
    UnitsModel* model_;
    QListView* list_;
    QPushButton* together_;
    QLabel* fault_;
    JoinFields* fields_;
    bool showing_ = false;
};

}  // namespace roundwright::app
