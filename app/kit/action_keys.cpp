#include "app/kit/action_keys.h"

#include <algorithm>

#include <QAction>
#include <QApplication>
#include <QSettings>

namespace roundwright::app {
namespace {

constexpr auto keys_group = "keys";
constexpr auto told_tip = "told_tip";

QString setting_of(const QString& id) { return QLatin1String(keys_group) + u'/' + id; }

/// None: the text is no keys.
std::optional<KeyList> keys_in(const QVariant& stored) {
    if (stored.typeId() != QMetaType::QString) return std::nullopt;
    const QString text = stored.toString();
    if (text.isEmpty()) return KeyList();
    const KeyList keys = QKeySequence::listFromString(text, QKeySequence::PortableText);
    const bool sound = std::ranges::all_of(keys, [](const QKeySequence& sequence) {
        for (int k = 0; k < sequence.count(); ++k)
            if (sequence[static_cast<uint>(k)].key() == Qt::Key_unknown) return false;
        return !sequence.isEmpty();
    });
    // What is written back alike was understood.
    if (keys.isEmpty() || !sound) return std::nullopt;
    if (QKeySequence::listToString(keys, QKeySequence::PortableText) != text) return std::nullopt;
    return keys;
}

/// Whether both can be meant when keys are pressed.
bool share_a_window(ActionWindow one, ActionWindow other) {
    if (one == other) return true;
    const bool beside = one == ActionWindow::beside || other == ActionWindow::beside;
    return beside && one != ActionWindow::main && other != ActionWindow::main;
}

bool types_text(int key) { return key < 0x01000000; }  // Unicode below, keys with names above (Qt::Key)

/// Keys that every field, list and button knows.
bool is_of_every_field(int key) {
    switch (key) {
        case Qt::Key_Tab:
        case Qt::Key_Backtab:
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Escape:
        case Qt::Key_Backspace:
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Up:
        case Qt::Key_Down:
        case Qt::Key_Home:
        case Qt::Key_End:
        case Qt::Key_PageUp:
        case Qt::Key_PageDown:
            return true;
        default:
            return false;
    }
}

/// In the main window and the preview; nothing is typed while one works along.
bool is_for_typing(QKeyCombination keys, ActionWindow window) {
    const auto modifiers = keys.keyboardModifiers() & ~Qt::KeypadModifier;
    if (keys.key() == Qt::Key_Tab || keys.key() == Qt::Key_Backtab) return modifiers != Qt::ControlModifier;
    if ((modifiers & ~Qt::ShiftModifier) != 0 || window == ActionWindow::work_along) return false;
    return types_text(keys.key()) || is_of_every_field(keys.key());
}

/// The menu of the menu bar that the keys open.
std::optional<ActionPlace> menu_opened_by(const QKeySequence& keys) {
    for (const ActionEntry& entry : action_catalogue()) {
        if (window_of(entry.place) != ActionWindow::main || !stands_in_menu_bar(entry.place)) continue;
        if (QKeySequence::mnemonic(place_text(entry.place)) == QKeySequence(keys[0])) return entry.place;
    }
    return std::nullopt;
}

void show_keys(QAction& action, const QString& id) {
    const ActionKeys& all = ActionKeys::instance();
    action.setShortcuts(all.keys(id));
    // A tip of its own says what the action does, and stays.
    if (action.toolTip() != action.property(told_tip).toString() && action.property(told_tip).isValid())
        return;
    const QString name = action_name(action_entry(id)), keys = all.shown(id);
    action.setToolTip(keys.isEmpty() ? name : QStringLiteral("%1 (%2)").arg(name, keys));
    action.setProperty(told_tip, action.toolTip());
}

}  // namespace

bool keys_clash(const QKeySequence& one, const QKeySequence& other) {
    if (one.isEmpty() || other.isEmpty()) return false;
    return one.matches(other) != QKeySequence::NoMatch || other.matches(one) != QKeySequence::NoMatch;
}

ActionKeys& ActionKeys::instance() {
    static auto* all = new ActionKeys(qApp);
    return *all;
}

ActionKeys::ActionKeys(QObject* parent) : QObject(parent) { read(); }

KeyList ActionKeys::keys(const QString& id) const {
    const auto found = chosen_.find(id);
    return found != chosen_.end() ? found->second : action_entry(id).usual;
}

QString ActionKeys::shown(const QString& id) const {
    const KeyList all = keys(id);
    return all.isEmpty() ? QString() : all.front().toString(QKeySequence::NativeText);
}

std::optional<KeyFault> ActionKeys::fault(const QString& id, const QKeySequence& keys) const {
    if (keys.isEmpty()) return std::nullopt;
    const ActionWindow window = window_of(action_entry(id).place);
    if (is_for_typing(keys[0], window)) return KeyFault{};
    if (const auto menu = menu_opened_by(keys); menu && window == ActionWindow::main)
        return KeyFault{KeyFault::Code::opens_menu, nullptr, *menu};
    const auto others = owners(id, keys);
    if (!others.empty()) return KeyFault{KeyFault::Code::taken, others.front(), {}};
    return std::nullopt;
}

std::vector<const ActionEntry*> ActionKeys::owners(const QString& id, const QKeySequence& keys) const {
    const ActionWindow window = window_of(action_entry(id).place);
    std::vector<const ActionEntry*> found;
    for (const ActionEntry& other : action_catalogue()) {
        if (other.id == id || !share_a_window(window, window_of(other.place))) continue;
        const KeyList theirs = this->keys(other.id);
        if (std::ranges::any_of(theirs, [&](const QKeySequence& one) { return keys_clash(one, keys); }))
            found.push_back(&other);
    }
    return found;
}

void ActionKeys::choose(const QString& id, const KeyList& keys) {
    if (keys == action_entry(id).usual) return take_usual(id);
    chosen_[id] = keys;
    QSettings settings;
    settings.setValue(setting_of(id), QKeySequence::listToString(keys, QKeySequence::PortableText));
    settings.sync();
    Q_EMIT changed();
}

void ActionKeys::take_usual(const QString& id) {
    chosen_.erase(id);
    QSettings settings;
    settings.remove(setting_of(id));
    settings.sync();
    Q_EMIT changed();
}

void ActionKeys::take_usual_for_all() {
    chosen_.clear();
    QSettings settings;
    settings.remove(QLatin1String(keys_group));
    settings.sync();
    Q_EMIT changed();
}

void ActionKeys::give_to(QAction& action, const QString& id) {
    action.setObjectName(id);
    show_keys(action, id);
    connect(this, &ActionKeys::changed, &action, [&action, id] { show_keys(action, id); });
}

bool ActionKeys::read_one(const ActionEntry& entry, const QVariant& stored) {
    const auto keys = keys_in(stored);
    if (!keys) return false;
    chosen_[entry.id] = *keys;
    return true;
}

/// All are read before they are held against each other: two actions may have changed places.
void ActionKeys::read() {
    chosen_.clear();
    unreadable_.clear();
    const QSettings settings;
    for (const ActionEntry& entry : action_catalogue()) {
        const QString setting = setting_of(entry.id);
        if (settings.contains(setting) && !read_one(entry, settings.value(setting)))
            unreadable_ << action_name(entry);
    }
    for (const ActionEntry& entry : action_catalogue()) {
        const auto found = chosen_.find(entry.id);
        if (found == chosen_.end()) continue;
        const auto is_faulty = [&](const QKeySequence& one) { return fault(entry.id, one).has_value(); };
        if (std::ranges::none_of(found->second, is_faulty)) continue;
        unreadable_ << action_name(entry);
        chosen_.erase(found);
    }
    Q_EMIT changed();
}

}  // namespace roundwright::app
