#include "app/kit/save_path.h"

#include <QFileDialog>
#include <QFileInfo>

namespace roundwright::app {

QString ask_save_path(QWidget* parent, const QString& title, const QString& suggested, const QString& filter,
                      const QString& suffix) {
    const QString folder = suggested.contains(QLatin1Char('/')) ? QFileInfo(suggested).path() : QString();
    QFileDialog dialog(parent, title, folder, filter);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(suffix);
    dialog.selectFile(QFileInfo(suggested).fileName());
    return dialog.exec() == QDialog::Accepted ? dialog.selectedFiles().value(0) : QString();
}

}  // namespace roundwright::app
