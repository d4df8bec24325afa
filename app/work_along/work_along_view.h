#pragma once

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include "app/session/document_session.h"
#include "app/work_along/work_in_hand.h"

class QCheckBox;
class QShortcut;
class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;

namespace roundwright::app {

class Announcer;

/// A window to follow along with the hook in hand: the round in hand in large type, what comes next, each
/// step by the touch of one key and spoken. A key that is held down acts once, and for a moment after a round
/// is done no other can be. Progress and times are kept in the toy; every tick is an undo step.
class WorkAlongView : public QWidget {
    Q_OBJECT
  public:
    explicit WorkAlongView(DocumentSession& session, RoundClock clock = RoundClock(),
                           QWidget* parent = nullptr);

    [[nodiscard]] QString words() const;
    [[nodiscard]] QString coming_up() const;
    [[nodiscard]] QString times() const;
    /// What was said last.
    [[nodiscard]] QString said() const;
    /// How long after a round is done another cannot be.
    void set_lock_ms(int ms) { lock_ms_ = ms; }

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void build();
    void make_read_outs();
    void make_buttons();
    void lay_out();
    void name_buttons();
    void add_shortcuts();
    void finish_round();
    void count_stitch();
    void go_back();
    void take_stitch_back();
    void begin_again();
    void undo_or_redo(bool undo);
    void say_where();
    [[nodiscard]] bool locked() const;
    [[nodiscard]] QString round_in_hand() const;
    [[nodiscard]] QString after_a_round() const;
    void connect_all();
    void list_pieces();
    void show_all();
    void show_round();
    [[nodiscard]] QString stitches_text() const;
    void show_finished();
    void show_coming_up();
    [[nodiscard]] QStringList lines_coming_up() const;
    void show_progress();
    void show_times();
    void set_measuring(bool measuring);

    DocumentSession& session_;
    WorkInHand work_;
    QTimer second_;
    Announcer* announcer_;
    QElapsedTimer since_done_;
    int lock_ms_ = 700;  ///< longer than a double press, shorter than the shortest round

    QComboBox* pieces_;
    QLabel* number_;
    QLabel* words_;
    QLabel* stitches_;
    QLabel* next_;
    QLabel* coming_up_;
    QProgressBar* progress_;
    QLabel* times_;
    QLabel* said_;
    QPushButton* where_;
    QPushButton* say_again_;
    QCheckBox* measure_;
    QPushButton* done_;
    QPushButton* back_;
    QPushButton* stitch_back_;
    QPushButton* stitch_;
    QPushButton* again_;
};

}  // namespace roundwright::app
