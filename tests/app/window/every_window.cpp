#include "tests/app/window/every_window.h"

#include <vector>

#include <QAction>
#include <QFileDialog>
#include <QMenu>
#include <QPointer>

#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

std::vector<QAction*> asking_actions(const MainWindow& window) {
    std::vector<QAction*> asking;
    for (const QMenu* menu : window.findChildren<QMenu*>())
        for (QAction* action : menu->actions()) {
            const QString words = action->text().remove(u'&');
            const bool asks = words.contains(QStringLiteral("…")) || words == QStringLiteral("Keyboard") ||
                              words == QStringLiteral("About Roundwright");
            if (action->isEnabled() && asks) asking.push_back(action);
        }
    return asking;
}

}  // namespace

int for_every_dialog(MainWindow& window, const std::function<void(QWidget&, const QString&)>& look) {
    int dialogs = 0;
    for (QAction* action : asking_actions(window)) {
        const QString name = action->text().remove(u'&').remove(QStringLiteral("…"));
        const auto look_at = [&](QWidget& opened) {
            if (qobject_cast<QFileDialog*>(&opened) != nullptr) return;
            ++dialogs;
            look(opened, name);
        };
        QTimer closer;
        QObject::connect(&closer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            closer.stop();
            QTest::qWait(300);
            look_at(*dialog);
            dialog->reject();
        });
        closer.start(100);
        action->trigger();
        closer.stop();
        std::vector<QPointer<QWidget>> tops;
        for (QWidget* top : QApplication::topLevelWidgets()) tops.emplace_back(top);
        for (const QPointer<QWidget>& top : tops) {
            if (top.isNull() || !top->isVisible() || top == &window) continue;
            QTest::qWait(500);
            look_at(*top);
            if (!top.isNull()) top->close();
        }
    }
    return dialogs;
}

void for_every_window(MainWindow& window, const std::function<void(QWidget&, const QString&)>& look) {
    window.panels().fold_all();
    QTest::qWait(20);
    look(window, QStringLiteral("window"));
    for (const QString& key : window.panels().keys()) {
        window.panels().go_to_section(key);
        QTest::qWait(50);
        look(window, QStringLiteral("panel %1").arg(key));
    }
    for_every_dialog(window, look);
}

}  // namespace roundwright::app
