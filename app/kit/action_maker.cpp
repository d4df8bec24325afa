#include "app/kit/action_maker.h"

#include <QWidget>

#include "app/kit/icons.h"

namespace roundwright::app {

QAction* make_action(QWidget* window, const QString& text, const QKeySequence& shortcut,
                     const QString& icon_name) {
    auto* action = new QAction(text, window);
    action->setShortcut(shortcut);
    if (!icon_name.isEmpty()) action->setIcon(icon(icon_name));
    const QString name = action->text().remove(u'&').remove(QChar(u'…'));
    const QString keys = shortcut.toString(QKeySequence::NativeText);
    action->setToolTip(keys.isEmpty() ? name : QStringLiteral("%1 (%2)").arg(name, keys));
    window->addAction(action);
    return action;
}

QAction* make_choice(QWidget* window, const QString& text, const QKeySequence& shortcut,
                     QActionGroup* group) {
    auto* action = make_action(window, text, shortcut);
    action->setCheckable(true);
    if (group) group->addAction(action);
    return action;
}

}  // namespace roundwright::app
