#pragma once

#include <QDialog>
#include <QPlainTextEdit>

#include "app/session/document_session.h"

namespace roundwright::app {

/// What the picture, the chart and the plot show, as a text to be read round by round. It follows the toy.
class RoundsInWords : public QDialog {
    Q_OBJECT
  public:
    explicit RoundsInWords(DocumentSession& session, QWidget* parent = nullptr);

    [[nodiscard]] QString words() const { return text_->toPlainText(); }

  private:
    void show_words();

    DocumentSession& session_;
    QPlainTextEdit* text_;
};

/// Opens it over `window`, or brings the one that is open to the front.
void show_rounds_in_words(DocumentSession& session, QWidget* window);

}  // namespace roundwright::app
