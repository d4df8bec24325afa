#include "tests/app/listener.h"

#if __has_include(<qpa/qplatformaccessibility.h>)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wpedantic"
#pragma GCC diagnostic ignored "-Wshadow"
#include <private/qguiapplication_p.h>

#include <qpa/qplatformaccessibility.h>
#include <qpa/qplatformintegration.h>
#pragma GCC diagnostic pop
#define ROUNDWRIGHT_CAN_LISTEN
#endif

namespace roundwright::app {

void Listener::set_active(bool active) {
#ifdef ROUNDWRIGHT_CAN_LISTEN
    QGuiApplicationPrivate::platformIntegration()->accessibility()->setActive(active);
#endif
    QAccessible::setActive(active);
}

}  // namespace roundwright::app
