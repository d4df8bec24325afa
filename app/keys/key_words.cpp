#include "app/keys/key_words.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct KeyWords {
    Q_DECLARE_TR_FUNCTIONS(KeyWords)
};

}  // namespace

QString keys_in_words(const KeyList& keys) {
    QString words;
    for (const QKeySequence& each : keys) {
        const QString one = each.toString(QKeySequence::NativeText);
        words = words.isEmpty() ? one : KeyWords::tr("%1 or %2").arg(words, one);
    }
    return words;
}

QString key_fault_words(const QKeySequence& keys, const KeyFault& fault) {
    const QString shown = keys.toString(QKeySequence::NativeText);
    switch (fault.code) {
        case KeyFault::Code::for_typing:
            return KeyWords::tr(
                       "%1 is needed for typing and moving about. Add Ctrl or Alt, or take a function key.")
                .arg(shown);
        case KeyFault::Code::opens_menu:
            return KeyWords::tr("%1 opens the menu %2.").arg(shown, place_name(fault.menu));
        case KeyFault::Code::taken:
            break;
    }
    return KeyWords::tr("%1 belongs to “%2” (%3).")
        .arg(shown, action_name(*fault.other), place_name(fault.other->place));
}

}  // namespace roundwright::app
