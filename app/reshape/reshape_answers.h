#pragma once

#include <vector>

#include <QWidget>

#include "app/kit/preferences.h"
#include "core/reshape/compare.h"
#include "core/reshape/continue_from_here.h"

class QLabel;
class QTableView;

namespace roundwright::app {

class RoundsComparisonModel;
class WaysModel;

/// The right side of the reshape dialog: what to undo, what comes of it, the other ways on, and the rounds,
/// now and new, side by side.
class ReshapeAnswers : public QWidget {
    Q_OBJECT
  public:
    explicit ReshapeAnswers(const Preferences& preferences, QWidget* parent = nullptr);

    /// The piece as it is, in words.
    /// What the ways on may take of a window's screen beside the picture, in pixels.
    [[nodiscard]] static int most_width(const QWidget& window);
    /// Where there is no room beside it; the whole scrolls then.
    void stand_under_the_picture();
    void show_now(const QString& words);
    struct Words {
        QString answer;
        QString frog_back;
        QString remarks;
    };
    void show_answer(const Words& words, const Comparison& rounds);
    void show_nothing(const QString& why);
    /// Ways on to choose between, the first of them chosen; none: nothing to choose.
    void show_ways(std::vector<WayOn> ways);

    [[nodiscard]] QString answer() const;
    [[nodiscard]] QString frog_back() const;

  Q_SIGNALS:
    void way_chosen(const roundwright::WayOn& way);

  private:
    Words words_;
    QLabel* frog_back_;
    QLabel* answer_;
    QLabel* remarks_;
    QLabel* now_;
    QLabel* ways_title_;
    QTableView* ways_;
    WaysModel* ways_model_;
    QTableView* rounds_;
    RoundsComparisonModel* rounds_model_;
    bool under_the_picture_ = false;
};

}  // namespace roundwright::app
