#include "app/kit/action_maker.h"

#include <QWidget>

#include "app/kit/action_keys.h"
#include "app/kit/icons.h"

namespace roundwright::app {

QAction* make_action(QWidget* window, const char* id) {
    const ActionEntry& entry = action_entry(QLatin1String(id));
    auto* action = new QAction(action_text(entry), window);
    if (!entry.icon.isEmpty()) action->setIcon(icon(entry.icon));
    ActionKeys::instance().give_to(*action, entry.id);
    window->addAction(action);
    return action;
}

QAction* make_choice(QWidget* window, const char* id, QActionGroup* group) {
    auto* action = make_action(window, id);
    action->setCheckable(true);
    if (group) group->addAction(action);
    return action;
}

}  // namespace roundwright::app
