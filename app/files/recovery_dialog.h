#pragma once

#include <optional>
#include <vector>

#include <QDialog>

#include "app/files/autosave.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace roundwright::app {

/// Offers the unsaved work that programs which are gone left behind: what there is of which toy, to bring
/// back, to delete after a question, or to leave for later, which changes nothing.
class RecoveryDialog : public QDialog {
    Q_OBJECT
  public:
    /// `left`: the latest first, at least one. `document`: the file that is being opened; empty: each copy's
    /// own.
    RecoveryDialog(const Autosave& autosave, std::vector<LeftBehind> left, QString document,
                   QWidget* parent = nullptr);

    /// The copy that the maker wants back.
    [[nodiscard]] std::optional<LeftBehind> take_chosen();
    [[nodiscard]] QString heading() const;
    [[nodiscard]] QString details() const;

  private:
    void lay_out();
    void show_heading();
    void show_current();
    void ask_to_delete();
    [[nodiscard]] int current() const;
    [[nodiscard]] QString document_of(const LeftBehind& left) const;
    [[nodiscard]] QString name_of(const LeftBehind& left) const;

    const Autosave& autosave_;
    std::vector<LeftBehind> left_;
    QString document_;
    QLabel* heading_;
    QListWidget* list_;
    QLabel* details_;
    QPushButton* back_;
};

}  // namespace roundwright::app
