#pragma once

#include <functional>

#include <QDialog>
#include <QTimer>

#include "app/session/document_session.h"
#include "core/language/pattern/read_pattern.h"
#include "render/background/background.h"

class QComboBox;
class QLabel;
class QListWidget;
class QPlainTextEdit;
class QPushButton;
class QTableView;

namespace roundwright::app {

class ReviewModel;

/// By which the text is kept.
inline const auto pattern_review_draft = QStringLiteral("pattern-review");

/// A pattern's text and, beside it, what was understood of every line, before any of it lands in the toy. The
/// text can be mended here, by hand or with the mends that are offered. It is read in the background; what is
/// asked for meanwhile is done as soon as it has been read.
class PatternReview : public QDialog {
    Q_OBJECT
  public:
    PatternReview(DocumentSession& session, const QString& text, QWidget* parent = nullptr);

    /// As it was read last; see `is_read`.
    [[nodiscard]] const ReadPattern& pattern() const { return pattern_; }
    /// The text as it stands now has been read.
    [[nodiscard]] bool is_read() const { return !soon_.isActive() && !reading_.busy(); }
    [[nodiscard]] QPlainTextEdit& source() { return *source_; }
    /// Makes the likeliest mend of a problem, an index into the pattern's diagnostics.
    void mend(int problem);
    /// The toy with the pieces that were read; those it had stay before them.
    [[nodiscard]] Toy toy_with_pieces() const;

  private:
    void build();
    QWidget* lower_part();
    void text_changed();
    void read();
    void show_pattern(ReadPattern pattern);
    /// Now if the text has been read, otherwise as soon as it has.
    void when_read(const std::function<void()>& act);
    void insert_mended(int problem);
    int lines_not_read() const;
    void show_problems();
    void mark_source();
    void go_to(int problem);
    void take();

    DocumentSession& session_;
    DialogDraft draft_;
    ReadPattern pattern_;
    QTimer soon_;
    render::Background reading_;
    std::function<void()> after_reading_;
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
