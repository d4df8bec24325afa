#include "app/window/toy_details.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "app/session/document_session.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("ToyDetails", text); }

}  // namespace

void ask_toy_details(DocumentSession& session, QWidget* window) {
    const Toy& toy = session.toy();
    QDialog dialog(window);
    dialog.setWindowTitle(tr("About this toy"));
    auto* title = new QLineEdit(QString::fromStdString(toy.title), &dialog);
    auto* designer = new QLineEdit(QString::fromStdString(toy.designer), &dialog);
    auto* notes = new QPlainTextEdit(QString::fromStdString(toy.notes), &dialog);
    notes->setTabChangesFocus(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* form = new QFormLayout(&dialog);
    form->addRow(tr("&Title"), title);
    form->addRow(tr("&Designer"), designer);
    form->addRow(tr("&Notes"), notes);
    form->addRow(buttons);
    dialog.resize(460, 320);
    if (dialog.exec() != QDialog::Accepted) return;
    session.edit(tr("Change the title and notes"), [&](Toy changed) {
        changed.title = title->text().trimmed().toStdString();
        changed.designer = designer->text().trimmed().toStdString();
        changed.notes = notes->toPlainText().toStdString();
        return changed;
    });
}

}  // namespace roundwright::app
