#include "app/window/help.h"

#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Help", text); }

QString plain(QString text) { return text.remove(u'&').toHtmlEscaped(); }

QString row(const QString& what, const QString& keys) {
    return QStringLiteral("<tr><td>%1</td><td>&nbsp;&nbsp;</td><td><b>%2</b></td></tr>")
        .arg(what, keys.toHtmlEscaped());
}

QString menu_rows(const QMenu& menu) {
    QString rows;
    for (const QAction* action : menu.actions()) {
        if (const auto* submenu = action->menu()) {
            rows += menu_rows(*submenu);
        } else if (!action->shortcut().isEmpty()) {
            rows += row(plain(action->text()), action->shortcut().toString(QKeySequence::NativeText));
        }
    }
    return rows;
}

QString heading(const QString& title, const QString& rows) {
    return QStringLiteral("<h3>%1</h3><table>%2</table>").arg(title, rows);
}

QString table_rows() {
    return row(tr("Set the count"), tr("30")) + row(tr("From the round below"), tr("+6  -6  =")) +
           row(tr("On to the next round"), tr("Enter")) + row(tr("The words of the round"), tr("F2, Tab")) +
           row(tr("First, last round"), tr("Home, End")) +
           row(tr("Discard what is being typed"), tr("Escape"));
}

}  // namespace

QString line_rows() {
    return row(tr("Add the rounds"), tr("Enter")) + row(tr("Up to the table"), tr("Up")) +
           row(tr("Clear the line"), tr("Escape"));
}

QString work_along_rows() {
    return row(tr("Round done"), tr("Space")) + row(tr("Count a stitch"), tr("Right")) +
           row(tr("Take a stitch back"), tr("Backspace, Left")) + row(tr("A round back"), tr("PgUp")) +
           row(tr("Close"), tr("Escape, Ctrl+W"));
}

QString picture_rows() { return row(tr("Choose an eye, then move it"), tr("Click, Ctrl+arrows")); }

void show_keyboard_help(QMainWindow& window) {
    QString text = heading(tr("In the rounds table"), table_rows()) +
                   heading(tr("In the line of next rounds"), line_rows()) +
                   heading(tr("On the shape"), picture_rows()) +
                   heading(tr("While you work along"), work_along_rows());
    for (const QAction* action : window.menuBar()->actions()) {
        if (!action->menu()) continue;
        text += heading(plain(action->text()), menu_rows(*action->menu()));
    }
    QDialog dialog(&window);
    dialog.setWindowTitle(tr("Keyboard"));
    auto* browser = new QTextBrowser(&dialog);
    browser->setHtml(text);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* layout = new QVBoxLayout(&dialog);
    layout->addWidget(browser);
    layout->addWidget(buttons);
    dialog.resize(460, 600);
    dialog.exec();
}

void show_about(QMainWindow& window) {
    QMessageBox::about(&window, tr("About Roundwright"),
                       tr("<h3>Roundwright %1</h3><p>Design stuffed crochet toys: type the rounds, and see "
                          "the stuffed shape at once.</p><p>Safety eyes, beads and buttons are small parts "
                          "and a choking hazard. This program certifies nothing: follow the toy safety rules "
                          "where the toy is sold, and ask an accredited laboratory.</p>")
                           .arg(QApplication::applicationVersion()));
}

}  // namespace roundwright::app
