#pragma once

#include <functional>
#include <vector>

#include <QString>
#include <QWidget>

class QBoxLayout;
class QPushButton;
class QScrollArea;

namespace roundwright::app {

/// The more a notice matters, the higher it stands.
enum class NoticeRank {
    remark,   ///< good to know
    caution,  ///< something is to be decided
    danger    ///< work may be lost
};

struct NoticeAnswer {
    QString words;  ///< with its mnemonic
    std::function<void()> act;
    QString hint{};  ///< what it does, where the words do not say all
};

struct Notice {
    NoticeRank rank = NoticeRank::remark;
    QString words;                        ///< plain text, a sentence or two
    std::vector<NoticeAnswer> answers{};  ///< at most three; the first is what most makers will want
};

class NoticeRow;

/// What holds for the window as long as it lasts: the file was changed by another program, keeping copies is
/// impossible. Each notice has a cause, under which it is put up, changed and taken down. It stops nobody
/// from working on: no dialog, no time limit, and no more than a share of the window, beyond which notices
/// scroll.
class NoticeBar : public QWidget {
    Q_OBJECT
  public:
    explicit NoticeBar(QWidget* parent = nullptr);

    /// Puts a notice up, or changes the one of the same cause. A button that stays the same stays where the
    /// pointer or the keyboard is on it.
    void put_up(const QString& cause, const Notice& notice);
    void take_down(const QString& cause);

    [[nodiscard]] QStringList causes() const;  ///< from the top
    /// Empty: there is no such notice.
    [[nodiscard]] QString words(const QString& cause) const;
    [[nodiscard]] QStringList answers(const QString& cause) const;  ///< without their mnemonics
    /// The button with these words, without mnemonic; null if there is none.
    [[nodiscard]] QPushButton* button(const QString& cause, const QString& words) const;

    /// Brings the keyboard to the first button of what matters most; false: there is none.
    bool take_keyboard();

  Q_SIGNALS:
    /// The keyboard was here and is to go back to the maker's work: Escape, or its notice is gone.
    void left();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void fit_height();
    [[nodiscard]] int most_height() const;
    [[nodiscard]] NoticeRow* row(const QString& cause) const;
    void place(NoticeRow* row);

    QScrollArea* area_;
    QBoxLayout* layout_;
    std::vector<NoticeRow*> rows_;  ///< from the top
};

}  // namespace roundwright::app
