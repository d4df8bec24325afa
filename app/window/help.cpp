#include "app/window/help.h"

#include <algorithm>

#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QRegularExpression>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/kit/room_on_screen.h"

namespace roundwright::app {
namespace {

struct HelpText {
    Q_DECLARE_TR_FUNCTIONS(Help)
};

QString plain(QString text) {
    static const QRegularExpression mnemonic(QStringLiteral("&(.)"));
    return text.replace(mnemonic, QStringLiteral("\\1")).toHtmlEscaped();
}

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
    return row(HelpText::tr("Set the count"), HelpText::tr("30")) +
           row(HelpText::tr("From the round below"), HelpText::tr("+6  -6  =")) +
           row(HelpText::tr("On to the next round"), HelpText::tr("Enter")) +
           row(HelpText::tr("The words of the round"), HelpText::tr("F2, Tab")) +
           row(HelpText::tr("First, last round"), HelpText::tr("Home, End")) +
           row(HelpText::tr("Discard what is being typed"), HelpText::tr("Escape"));
}

}  // namespace

QString line_rows() {
    return row(HelpText::tr("Add the rounds"), HelpText::tr("Enter")) +
           row(HelpText::tr("Up to the table"), HelpText::tr("Up")) +
           row(HelpText::tr("Clear the line"), HelpText::tr("Escape"));
}

QString work_along_rows() {
    return row(HelpText::tr("Round done"), HelpText::tr("PgDown")) +
           row(HelpText::tr("Count a stitch"), HelpText::tr("Right")) +
           row(HelpText::tr("Take a stitch back"), HelpText::tr("Backspace, Left")) +
           row(HelpText::tr("A round back"), HelpText::tr("PgUp")) +
           row(HelpText::tr("Where am I?"), HelpText::tr("Home")) +
           row(HelpText::tr("Say again"), HelpText::tr("End, F7")) +
           row(HelpText::tr("Close"), HelpText::tr("Escape, Ctrl+W"));
}

QString picture_rows() {
    return row(HelpText::tr("Choose an eye, then move it"), HelpText::tr("Click, Ctrl+arrows"));
}

void show_keyboard_help(QMainWindow& window) {
    QString text = heading(HelpText::tr("In the rounds table"), table_rows()) +
                   heading(HelpText::tr("In the line of next rounds"), line_rows()) +
                   heading(HelpText::tr("On the shape"), picture_rows()) +
                   heading(HelpText::tr("While you work along"), work_along_rows());
    for (const QAction* action : window.menuBar()->actions()) {
        if (!action->menu()) continue;
        text += heading(plain(action->text()), menu_rows(*action->menu()));
    }
    QDialog dialog(&window);
    dialog.setWindowTitle(HelpText::tr("Keyboard"));
    auto* browser = new QTextBrowser(&dialog);
    browser->setAccessibleName(HelpText::tr("Keys and what they do"));
    browser->setHtml(text);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* layout = new QVBoxLayout(&dialog);
    layout->addWidget(browser);
    layout->addWidget(buttons);
    constexpr int characters = 70;
    const int width = std::max(460, characters * dialog.fontMetrics().averageCharWidth());
    dialog.resize(room_on_screen(dialog, {width, 600}));
    dialog.exec();
}

void show_about(QMainWindow& window) {
    QMessageBox about(
        QMessageBox::NoIcon, HelpText::tr("About Roundwright"),
        HelpText::tr("<h3>Roundwright %1</h3><p>Design stuffed crochet toys: type the rounds, and see "
                     "the stuffed shape at once.</p><p>Safety eyes, beads and buttons are small parts "
                     "and a choking hazard. This program certifies nothing: follow the toy safety rules "
                     "where the toy is sold, and ask an accredited laboratory.</p>")
            .arg(QApplication::applicationVersion()),
        QMessageBox::Ok, &window);
    about.setTextFormat(Qt::RichText);
    about.exec();
}

}  // namespace roundwright::app
