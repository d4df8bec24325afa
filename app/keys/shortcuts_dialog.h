#pragma once

#include <QDialog>
#include <QSortFilterProxyModel>

#include "app/keys/shortcuts_model.h"

class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace roundwright::app {

class KeysField;

/// The list of all shortcuts, to search and to change. Every change is there at once and stays: there is
/// nothing to confirm.
class ShortcutsDialog : public QDialog {
    Q_OBJECT
  public:
    explicit ShortcutsDialog(QWidget* parent = nullptr);

    /// Goes to the action; without one of that id nothing changes.
    void show_action(const QString& id);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void build();
    void connect_all();
    [[nodiscard]] QWidget* change_row();
    [[nodiscard]] QWidget* end_row();
    [[nodiscard]] const ActionEntry* current() const;
    void search(const QString& text);
    void show_current();
    void look_at_keys();
    void use_keys();
    static void take_over(const ActionEntry& entry, const QKeySequence& wanted);
    void say(const QString& text);

    ShortcutsModel model_;
    QSortFilterProxyModel found_;
    QLineEdit* search_;
    QTableView* table_;
    QLabel* said_;
    KeysField* keys_;
    QPushButton* use_;
    QPushButton* none_;
    QPushButton* usual_;
    QPushButton* all_usual_;
};

}  // namespace roundwright::app
