#pragma once

#include <QDialog>

#include "core/language/words/terms.h"
#include "core/toy/toy.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace roundwright::app {

class DialogDraft;
class DocumentSession;

/// What the maker says of the toy in the pattern, beside what is computed: title, level, introduction, how
/// the pieces are put together, ... Left empty, assembly is what the joins say, which can be written out to
/// be changed; where joins have changed under the maker's own words, it says which.
class ToyDetailsDialog : public QDialog {
    Q_OBJECT
  public:
    explicit ToyDetailsDialog(const Toy& toy, QWidget* parent = nullptr, Terms terms = Terms::us);

    /// Has what was typed before the program was ended, and keeps what is typed.
    void keep_in(DialogDraft& draft);
    /// The toy with the words as they stand in the dialog.
    [[nodiscard]] Toy applied_to(Toy toy) const;

  private:
    QWidget* toy_page(const Toy& toy);
    QWidget* making_page(const Toy& toy, Terms terms);
    void write_out_steps();
    QPlainTextEdit* text_box(QFormLayout* form, const QString& label, const std::string& text,
                             const QString& hint);

    QLineEdit* title_ = nullptr;
    QLineEdit* designer_ = nullptr;
    QComboBox* level_ = nullptr;
    QPlainTextEdit* introduction_ = nullptr;
    QPlainTextEdit* notes_ = nullptr;
    QPlainTextEdit* private_notes_ = nullptr;
    QPlainTextEdit* copyright_ = nullptr;
    QPlainTextEdit* notions_ = nullptr;
    QPlainTextEdit* assembly_ = nullptr;
    QPushButton* write_out_ = nullptr;
    QLabel* changed_ = nullptr;
    QString worked_out_;  ///< the steps that the joins give, one a line
    QPlainTextEdit* finishing_ = nullptr;
};

/// By which what is typed there is kept.
inline const auto toy_details_draft = QStringLiteral("toy-details");

/// Asks for them; one undo step.
void ask_toy_details(DocumentSession& session, QWidget* window);

}  // namespace roundwright::app
