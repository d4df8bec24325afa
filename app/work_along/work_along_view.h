#pragma once

#include <QTimer>
#include <QWidget>

#include "app/session/document_session.h"
#include "app/work_along/work_in_hand.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;

namespace roundwright::app {

/// A window to follow along with the hook in hand: the round in hand in large type, what comes next, ticked
/// off by the space bar. Progress and times are kept in the toy; every tick is an undo step.
class WorkAlongView : public QWidget {
    Q_OBJECT
  public:
    explicit WorkAlongView(DocumentSession& session, RoundClock clock = RoundClock(),
                           QWidget* parent = nullptr);

    [[nodiscard]] QString words() const;
    [[nodiscard]] QString coming_up() const;
    [[nodiscard]] QString times() const;

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void build();
    void add_shortcuts();
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

    QComboBox* pieces_;
    QLabel* number_;
    QLabel* words_;
    QLabel* stitches_;
    QLabel* next_;
    QLabel* coming_up_;
    QProgressBar* progress_;
    QLabel* times_;
    QCheckBox* measure_;
    QPushButton* done_;
    QPushButton* back_;
    QPushButton* stitch_back_;
    QPushButton* stitch_;
    QPushButton* again_;
};

}  // namespace roundwright::app
