#pragma once

#include <QDialog>
#include <QTimer>

#include "app/session/document_session.h"
#include "core/language/pattern/read_pattern.h"

class QComboBox;
class QLabel;
class QListWidget;
class QPlainTextEdit;
class QPushButton;
class QTableView;

namespace roundwright::app {

class ReviewModel;

/// A pattern's text and, beside it, what was understood of every line, before any of it lands in the toy. The
/// text can be mended here, by hand or with the mends that are offered.
class PatternReview : public QDialog {
    Q_OBJECT
  public:
    PatternReview(DocumentSession& session, const QString& text, QWidget* parent = nullptr);

    [[nodiscard]] const ReadPattern& pattern() const { return pattern_; }
    [[nodiscard]] QPlainTextEdit& source() { return *source_; }
    /// Makes the likeliest mend of a problem, an index into the pattern's diagnostics.
    void mend(int problem);
    /// The toy with the pieces that were read; those it had stay before them.
    [[nodiscard]] Toy toy_with_pieces() const;

  private:
    void build();
    QWidget* lower_part();
    void read();
    int lines_not_read() const;
    void show_problems();
    void mark_source();
    void go_to(int problem);
    void take();

    DocumentSession& session_;
    ReadPattern pattern_;
    QTimer soon_;
    QPlainTextEdit* source_;
    QTableView* understood_;
    ReviewModel* model_;
    QListWidget* problems_;
    QPushButton* mend_;
    QComboBox* terms_;
    QLabel* summary_;
    QPushButton* take_;
};

}  // namespace roundwright::app
