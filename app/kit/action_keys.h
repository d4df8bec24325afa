#pragma once

#include <map>
#include <optional>

#include <QKeySequence>
#include <QList>
#include <QObject>
#include <QString>

#include "app/kit/action_catalogue.h"

class QAction;

namespace roundwright::app {

using KeyList = QList<QKeySequence>;

/// Whether one begins as the other does, so that the shorter one would never, or always, be meant.
[[nodiscard]] bool keys_clash(const QKeySequence& one, const QKeySequence& other);

/// Why keys cannot be an action's.
struct KeyFault {
    enum class Code {
        for_typing,  ///< moves, types or chooses: nothing else may have it
        opens_menu,  ///< Alt and the letter of a menu
        taken        ///< by `other`
    };
    Code code = Code::for_typing;
    const ActionEntry* other = nullptr;    ///< of `taken`
    ActionPlace menu = ActionPlace::file;  ///< of `opens_menu`
};

/// The keys of every action: the usual ones, or those that the maker has chosen. One for the whole program.
/// What differs from the usual is kept in QSettings below "keys", as it changes.
class ActionKeys : public QObject {
    Q_OBJECT
  public:
    /// Made on first use; the application object has to be there.
    [[nodiscard]] static ActionKeys& instance();

    [[nodiscard]] KeyList keys(const QString& id) const;
    [[nodiscard]] bool is_usual(const QString& id) const { return chosen_.count(id) == 0; }
    /// As the desktop writes them, the first ones only: "Ctrl+B, M".
    [[nodiscard]] QString shown(const QString& id) const;

    /// What stands against giving `keys` to the action; none: nothing does.
    [[nodiscard]] std::optional<KeyFault> fault(const QString& id, const QKeySequence& keys) const;

    /// The other actions that have the keys, or keys that begin alike, where this one would.
    [[nodiscard]] std::vector<const ActionEntry*> owners(const QString& id, const QKeySequence& keys) const;

    /// An empty list takes the keys away. What stands against it is not asked here.
    void choose(const QString& id, const KeyList& keys);
    void take_usual(const QString& id);
    void take_usual_for_all();

    /// The action has these keys from now on, and its tool tip says so.
    void give_to(QAction& action, const QString& id);

    /// Reads the settings again, which counts as a change of every action.
    void read();
    /// Names of the actions whose chosen keys could not be read, or belong to another. They have their usual
    /// ones, and what was stored stays until the maker chooses again.
    [[nodiscard]] QStringList unreadable() const { return unreadable_; }

  Q_SIGNALS:
    void changed();

  private:
    explicit ActionKeys(QObject* parent);
    [[nodiscard]] bool read_one(const ActionEntry& entry, const QVariant& stored);

    std::map<QString, KeyList> chosen_;
    QStringList unreadable_;
};

}  // namespace roundwright::app
