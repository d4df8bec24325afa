#include "app/kit/save_path.h"

#include <gtest/gtest.h>

#include <QDialogButtonBox>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QTemporaryDir>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

// "pup" is "pup.roundwright" before the dialog looks whether that is there already.
TEST(SavePath, AsksBeforeAFileNamedWithoutItsEndingIsReplaced) {
    const QTemporaryDir folder;
    QFile kept(folder.filePath(QStringLiteral("pup.roundwright")));
    ASSERT_TRUE(kept.open(QIODevice::WriteOnly));
    kept.close();
    bool typed = false, asked = false;
    int ticks = 0;
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, &timer, [&] {
        QWidget* modal = QApplication::activeModalWidget();
        if (++ticks > 60) {  // whatever is open: the test fails below
            if (auto* open = qobject_cast<QDialog*>(modal)) open->reject();
            return;
        }
        if (auto* question = qobject_cast<QMessageBox*>(modal)) {
            asked = true;
            question->button(QMessageBox::No)->click();
        } else if (auto* dialog = qobject_cast<QFileDialog*>(modal); dialog && typed && asked) {
            dialog->reject();
        } else if (dialog && !typed) {
            typed = true;
            auto* name = dialog->findChild<QLineEdit*>();
            name->setText(QStringLiteral("pup"));
            // Later: a question opened from here would hold up this timer.
            QTimer::singleShot(0, dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Save),
                               &QPushButton::click);
        }
    });
    timer.start(50);
    const QString path =
        ask_save_path(nullptr, QStringLiteral("Save"), folder.filePath(QStringLiteral("toy.roundwright")),
                      QStringLiteral("Toys (*.roundwright)"), QStringLiteral("roundwright"));
    EXPECT_TRUE(asked);
    EXPECT_TRUE(path.isEmpty()) << path.toStdString();
}

}  // namespace
}  // namespace roundwright::app
