#pragma once

#include "app/kit/read_out.h"

namespace roundwright::app {

/// Words with a room of so many lines, whatever they say, so that nothing around them moves when they change.
/// What does not fit ends in an ellipsis and is shown whole in the tool tip; a screen reader gets it whole.
class StillLabel : public ReadOut {
    Q_OBJECT
  public:
    explicit StillLabel(const QString& name, QWidget* parent = nullptr);

    void set_lines(int lines);
    void say(const QString& words);
    [[nodiscard]] const QString& words() const { return words_; }

    [[nodiscard]] bool hasHeightForWidth() const override { return false; }
    [[nodiscard]] int heightForWidth(int) const override { return -1; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

    [[nodiscard]] QString text_spoken() const override { return words_; }

  private:
    /// False: what is shown stays the same.
    bool fit_words();

    QString words_;
    int lines_ = 1;
};

/// The words broken into lines of at most this width; the last of them ends in an ellipsis if more would
/// follow.
[[nodiscard]] QString broken_and_elided(const QString& words, const QFont& font, int width, int lines);

}  // namespace roundwright::app
