#pragma once

#include <vector>

#include <QHash>
#include <QObject>
#include <QPersistentModelIndex>
#include <QPointer>
#include <QString>
#include <QTimer>

class QAbstractItemView;
class QAccessibleInterface;
class QWidget;

namespace roundwright::app {

/// What a message is about, by how much it matters: what matters more is said first.
enum class Weight {
    place,   ///< where an eye is now
    checks,  ///< checks that come and go
    size,
    lie,  ///< a round that begins to cup or to ruffle
    count,
    answer,  ///< to a key that asked, or to an entry
    fault,   ///< what could not be taken
};

/// A model that lends its current cell's description to what is announced while the table has the keyboard.
class AnnouncedAtACell {
  public:
    AnnouncedAtACell() = default;
    virtual ~AnnouncedAtACell() = default;
    AnnouncedAtACell(const AnnouncedAtACell&) = delete;
    AnnouncedAtACell& operator=(const AnnouncedAtACell&) = delete;
    /// Empty words: the cell has its own again.
    virtual void set_announced(const QModelIndex& cell, const QString& words) = 0;
};

/// Says what happens in a window to assistive technology, and in a line that stays (`shown`). Messages that
/// come within a short time are one, in the order of their weight; news that was said last of its topic is
/// not said again. From Qt 6.8 on they are announcements; before, they become the description of what has the
/// keyboard, which has its own back when the keyboard leaves it.
class Announcer : public QObject {
    Q_OBJECT
  public:
    explicit Announcer(QWidget* window);
    ~Announcer() override;

    /// Plain text, a sentence or two. A later message takes the place of one of its topic that waits.
    void say(const QString& topic, const QString& words, Weight weight);
    /// What a key asked for: said at once, as often as it is asked.
    void answer(const QString& words);
    /// Said at once, and shown until it is dealt with, whatever else is said meanwhile.
    void complain(const QString& words);
    void dealt_with();
    /// What still waits and is of this topic is not said any more.
    void drop(const QString& topic);
    void say_again();

    /// The complaint that stands, or what was said last.
    [[nodiscard]] QString shown() const;

  Q_SIGNALS:
    void shown_changed(const QString& words);

  private:
    struct Message {
        QString topic;
        QString words;
        Weight weight;
    };

    void speak(const QString& words, Weight weight);
    void say_waiting();
    void tell(const QString& words, Weight weight);
    void describe(QWidget* widget, const QString& words);
    QAccessibleInterface* describe_current_cell(QAbstractItemView* view, const QString& words);
    void give_back();

    QWidget* window_;
    QTimer together_;
    std::vector<Message> waiting_;
    QHash<QString, QString> said_;  ///< last, by topic
    QString last_;
    QString complaint_;
    QPointer<QWidget> described_;
    QString own_words_;  ///< of what is described
    QString lent_words_;
    QPointer<QObject> cells_;  ///< an AnnouncedAtACell
};

/// In a dialog, which has no menus, the keys of the menu's "Say again" do the same.
void say_again_by_key(QWidget& window, Announcer& announcer);

/// Sentences in a row, each with its full stop.
[[nodiscard]] QString joined_sentences(const QStringList& sentences);

}  // namespace roundwright::app
