#pragma once

#include <optional>
#include <vector>

#include <QObject>

#include "app/session/typed.h"

class QLineEdit;
class QPlainTextEdit;

namespace roundwright::app {

/// What is typed in the fields of dialogs that are open and not entered yet, so that it is kept as it is
/// typed and comes back after the program was ended.
class TypedDrafts : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    [[nodiscard]] const std::vector<TypedText>& texts() const { return texts_; }
    /// Found again, for the dialogs to take when they open.
    void bring_back(std::vector<TypedText> texts);
    [[nodiscard]] std::optional<QString> text_in(const QString& dialog, const QString& field) const;
    void set(const QString& dialog, const QString& field, const QString& text);
    /// The dialog is closed: its texts were entered or given up.
    void forget(const QString& dialog);

  Q_SIGNALS:
    void changed();

  private:
    std::vector<TypedText> texts_;
};

/// The draft of one dialog, for as long as it lives: fields that it follows have what was found again, and
/// what is typed in them from then on is kept.
class DialogDraft {
  public:
    DialogDraft(TypedDrafts& drafts, QString dialog) : drafts_(drafts), dialog_(std::move(dialog)) {}
    ~DialogDraft() { drafts_.forget(dialog_); }
    DialogDraft(const DialogDraft&) = delete;
    DialogDraft& operator=(const DialogDraft&) = delete;

    void follow(QLineEdit& line, const QString& field);
    void follow(QPlainTextEdit& box, const QString& field);

  private:
    TypedDrafts& drafts_;
    const QString dialog_;
};

}  // namespace roundwright::app
