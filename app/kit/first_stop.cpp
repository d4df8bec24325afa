#include "app/kit/first_stop.h"

#include <QWidget>

namespace roundwright::app {

QWidget* first_stop(QWidget* within) {
    for (QWidget* at = within->nextInFocusChain(); at != within; at = at->nextInFocusChain()) {
        const bool takes_tab = (at->focusPolicy() & Qt::TabFocus) != 0;
        if (takes_tab && within->isAncestorOf(at) && at->isVisibleTo(within) && at->isEnabled()) return at;
    }
    return nullptr;
}

}  // namespace roundwright::app
