#include "app/keys/keys_field.h"

#include <QKeyEvent>

namespace roundwright::app {
namespace {

constexpr qint64 second_key_within_ms = 1200;

bool is_tab(int key) { return key == Qt::Key_Tab || key == Qt::Key_Backtab; }

bool is_modifier(int key) {
    switch (key) {
        case Qt::Key_Control:
        case Qt::Key_Shift:
        case Qt::Key_Alt:
        case Qt::Key_AltGr:
        case Qt::Key_Meta:
        case Qt::Key_Super_L:
        case Qt::Key_Super_R:
        case Qt::Key_CapsLock:
        case Qt::Key_NumLock:
        case Qt::Key_unknown:
        case 0:
            return true;
        default:
            return false;
    }
}

/// Shift that only makes the sign, as with "+" on many keyboards, is part of the sign.
QKeyCombination pressed(const QKeyEvent& key) {
    auto modifiers = key.modifiers() & ~(Qt::KeypadModifier | Qt::GroupSwitchModifier);
    const QChar sign = key.key() < 0xFFFF ? QChar(static_cast<char16_t>(key.key())) : QChar();
    if (!sign.isNull() && !sign.isLetterOrNumber() && !sign.isSpace()) modifiers &= ~Qt::ShiftModifier;
    return QKeyCombination(modifiers, static_cast<Qt::Key>(key.key()));
}

}  // namespace

KeysField::KeysField(QWidget* parent) : QLineEdit(parent) {
    setReadOnly(true);
    setContextMenuPolicy(Qt::NoContextMenu);
    setAttribute(Qt::WA_InputMethodEnabled, false);
}

void KeysField::forget() {
    keys_ = {};
    clear();
}

bool KeysField::event(QEvent* event) {
    const bool override = event->type() == QEvent::ShortcutOverride;
    if (!override && event->type() != QEvent::KeyPress) return QLineEdit::event(event);
    const auto& key = *static_cast<QKeyEvent*>(event);
    const auto control = key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier);
    if (is_tab(key.key()) && control == 0) return QLineEdit::event(event);
    event->accept();
    if (!override) take(key);
    return true;
}

void KeysField::take(const QKeyEvent& key) {
    if (is_modifier(key.key()) || key.isAutoRepeat()) return;
    const bool plain = (key.modifiers() & ~Qt::KeypadModifier) == 0;
    if (plain && key.key() == Qt::Key_Escape) return Q_EMIT ended(false);
    if (plain && (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter)) return Q_EMIT ended(true);
    if (plain && key.key() == Qt::Key_Backspace)
        forget();
    else
        add(pressed(key));
    Q_EMIT keys_pressed();
}

void KeysField::add(QKeyCombination keys) {
    const bool second =
        keys_.count() == 1 && since_last_.isValid() && since_last_.elapsed() < second_key_within_ms;
    keys_ = second ? QKeySequence(keys_[0], keys) : QKeySequence(keys);
    since_last_.start();
    setText(keys_.toString(QKeySequence::NativeText));
}

}  // namespace roundwright::app
