#include "app/kit/alt_sent_again.h"

#include <QAccessible>
#include <QApplication>
#include <QKeyEvent>

namespace roundwright::app {

AltSentAgain::AltSentAgain(QObject* parent) : QObject(parent) { qApp->installEventFilter(this); }

void AltSentAgain::pass_over() {
    if (!qApp->findChild<AltSentAgain*>(QString(), Qt::FindDirectChildrenOnly)) new AltSentAgain(qApp);
}

/// The menu bar begins to wait for the release of Alt at this event.
bool AltSentAgain::eventFilter(QObject*, QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride || event->spontaneous() || !QAccessible::isActive())
        return false;
    const int key = static_cast<QKeyEvent*>(event)->key();
    return key == Qt::Key_Alt || key == Qt::Key_Meta;
}

}  // namespace roundwright::app
