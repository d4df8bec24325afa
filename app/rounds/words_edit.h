#pragma once

#include <QLineEdit>
#include <QPointer>

#include "core/language/round/completion.h"
#include "core/language/round/read_round.h"

class QCompleter;
class QKeyEvent;
class QLabel;
class QStringListModel;

namespace roundwright::app {

/// The words of a round while they are written. What may go on pops up: Down and Up choose, Enter takes what
/// is chosen, Tab takes the first, Escape puts it away, Ctrl+Space brings it back. What does not come out is
/// underlined and said under the line, and the keys for it make the likeliest mend.
class WordsEdit : public QLineEdit {
    Q_OBJECT
  public:
    WordsEdit(const RoundSetting& setting, YarnTable yarns, QWidget* parent = nullptr);
    ~WordsEdit() override;

    [[nodiscard]] const ReadRound& reading() const { return reading_; }
    [[nodiscard]] QString hint() const;
    [[nodiscard]] QStringList offered() const;
    /// What a maker who listens is told once the hand rests: the hint, and the word that Tab would complete.
    [[nodiscard]] QString spoken_hint() const;
    [[nodiscard]] QWidget* popup() const;
    /// Makes the likeliest mend in the line; false when none is offered.
    bool mend();
    /// Words that were typed before stand in the line again, as if they had just been typed. Nothing is
    /// offered yet: a list that opens before the keyboard is here keeps it away, and every shortcut with it.
    void bring_back(const QString& words);

  Q_SIGNALS:
    /// The words have changed and were read again.
    void words_read();
    /// Of what is offered, by its keys.
    void offer_chosen(const QString& words);

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void moveEvent(QMoveEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    void read();
    [[nodiscard]] QString sentence() const;
    void say();
    void place_hint();
    void find_completions();
    void offer();
    void hide_popup();
    void take(int row);
    bool take_key(const QKeyEvent& key);
    bool take_popup_key(const QKeyEvent& key);
    [[nodiscard]] bool popup_open() const;
    [[nodiscard]] int chosen() const;
    [[nodiscard]] const ReadDiagnostic* fault() const;
    [[nodiscard]] bool unfinished() const;

    RoundSetting setting_;
    YarnTable yarns_;
    ReadRound reading_;
    std::vector<Completion> completions_;
    QStringListModel* offered_;
    QCompleter* completer_;
    QPointer<QLabel> hint_;  ///< the parent's, so that it can lie over its neighbours
    bool taking_ = false;
    bool offering_ = false;
};

}  // namespace roundwright::app
