#include "app/kit/key_labels.h"

#include <QCoreApplication>

#include "app/kit/action_keys.h"

namespace roundwright::app {
namespace {

struct KeyLabels {
    Q_DECLARE_TR_FUNCTIONS(KeyLabels)
};

}  // namespace

QString keys_spoken(const QString& id) {
    QString keys = ActionKeys::instance().shown(id);
    const auto name_in_full = [&keys](Qt::Key key, const QString& name) {
        keys.replace(QKeySequence(key).toString(QKeySequence::NativeText), name);
    };
    name_in_full(Qt::Key_PageDown, KeyLabels::tr("Page Down"));
    name_in_full(Qt::Key_PageUp, KeyLabels::tr("Page Up"));
    return keys;
}

QString with_keys(const QString& words, const QString& id) {
    const QString keys = keys_spoken(id);
    return keys.isEmpty() ? words : KeyLabels::tr("%1 (%2)").arg(words, keys);
}

}  // namespace roundwright::app
