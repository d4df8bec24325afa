#pragma once

#include <QObject>

#include "app/session/document_session.h"

class QMenu;

namespace roundwright::app {

/// Patterns as text: opened from a file or taken from the clipboard, after a review; copied out in the terms
/// of choice.
class PatternTextActions : public QObject {
    Q_OBJECT
  public:
    PatternTextActions(DocumentSession& session, QWidget* window);

    void fill(QMenu* menu);
    void review(const QString& text);
    void copy_piece() const;
    void copy_toy() const;

  private:
    void open_text();
    void paste_text();

    DocumentSession& session_;
    QWidget* window_;
};

}  // namespace roundwright::app
