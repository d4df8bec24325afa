#pragma once

#include <functional>

#include <QDialog>
#include <QTimer>

#include "app/session/document_session.h"
#include "core/language/pattern/read_pattern.h"
#include "render/background/background.h"

class QComboBox;
class QHBoxLayout;
class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableView;

namespace roundwright::app {

class Announcer;
class FindingsPart;
class ReviewModel;
class StillLabel;

/// By which the text is kept.
inline const auto pattern_review_draft = QStringLiteral("pattern-review");

/// A pattern's text and, beside it, what each line of it came to, before any of it lands in the toy. The text
/// can be mended here, by hand or with the mends that are offered; a key goes from finding to finding, shows
/// the place and has the likeliest mend ready. It is read in the background; what is asked for meanwhile is
/// done as soon as it has been read, unless the text changes before that.
class PatternReview : public QDialog {
    Q_OBJECT
  public:
    PatternReview(DocumentSession& session, const QString& text, QWidget* parent = nullptr);

    /// As it was read last; see `is_read`.
    [[nodiscard]] const ReadPattern& pattern() const { return pattern_; }
    /// The text as it stands now has been read.
    [[nodiscard]] bool is_read() const { return !soon_.isActive() && !reading_.busy(); }
    [[nodiscard]] QPlainTextEdit& source() { return *source_; }
    /// Makes a mend, the likeliest unless another is asked for, of a finding as it is shown now: an index
    /// into the pattern's diagnostics. If the text was changed since, the finding is looked for in it.
    void mend(int finding, int mend = 0);
    /// Goes to the next finding, or with -1 to the one before, from where the text's cursor is.
    void step(int by);
    /// Takes the last change of the text back.
    void take_back();
    /// The toy with the pieces that were read; those it had stay before them.
    [[nodiscard]] Toy toy_with_pieces() const;

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// A place in the text, as long as that is the same.
    struct Shown {
        int anchor = -1;
        int position = -1;
        int revision = -1;
        friend bool operator==(const Shown&, const Shown&) = default;
    };

    void build();
    void build_understood();
    [[nodiscard]] QHBoxLayout* head_row();
    [[nodiscard]] QHBoxLayout* button_row();
    void connect_parts();
    void add_actions();
    [[nodiscard]] QPushButton* button_for(const char* id, const QString& text,
                                          const std::function<void()>& act);
    void text_changed();
    void read();
    void show_pattern(ReadPattern pattern);
    void show_lines();
    void follow_to_line(int line, int column);
    [[nodiscard]] Shown place_shown() const;
    [[nodiscard]] QString summary_words() const;
    /// Now if the text has been read, otherwise as soon as it has.
    void when_read(const std::function<void()>& act);
    void make(const ReadDiagnostic& finding, const Mend& mend);
    void tell_made(const ReadPattern& before, const ReadDiagnostic& finding, const Mend& mend);
    void tell_taken_back();
    [[nodiscard]] const ReadDiagnostic& finding(int index) const;
    [[nodiscard]] int place_of(int finding) const;
    [[nodiscard]] int finding_from_cursor(int by) const;
    void go_to(int finding);
    /// "Finding 2 of 5. Line 4, column 20: ...", with the keyboard where it can be dealt with.
    [[nodiscard]] QString arrive_at(int finding);
    void go_to_text();
    void mark_source();
    void take();

    DocumentSession& session_;
    DialogDraft draft_;
    ReadPattern pattern_;
    QTimer soon_;
    render::Background reading_;
    std::function<void()> after_reading_;
    bool making_ = false;     ///< a mend was made and not yet read
    bool following_ = false;  ///< the table follows the text
    Shown shown_;             ///< the place that was gone to last
    Announcer* announcer_;
    QPlainTextEdit* source_;
    QTableView* understood_;
    ReviewModel* model_;
    FindingsPart* findings_;
    QComboBox* terms_;
    QLabel* summary_;
    StillLabel* said_;
    QPushButton* take_ = nullptr;
};

}  // namespace roundwright::app
