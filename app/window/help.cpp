#include "app/window/help.h"

#include <set>

#include <QApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QMainWindow>
#include <QMessageBox>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/kit/action_keys.h"
#include "app/kit/room_on_screen.h"

namespace roundwright::app {
namespace {

struct HelpText {
    Q_DECLARE_TR_FUNCTIONS(Help)
};

/// All that do the same: "Backspace, Left".
QString keys_shown(const QString& id) {
    QStringList shown;
    for (const QKeySequence& keys : ActionKeys::instance().keys(id))
        shown << keys.toString(QKeySequence::NativeText);
    return shown.join(QStringLiteral(", "));
}

QString row(const QString& what, const QString& keys) {
    return QStringLiteral("<tr><td width=\"60%\">%1</td><td width=\"40%\"><b>%2</b></td></tr>")
        .arg(what, keys.toHtmlEscaped());
}

/// Of one menu, or one of its menus.
QString place_rows(ActionPlace place) {
    QString rows;
    for (const ActionEntry& entry : action_catalogue()) {
        const QString keys = keys_shown(entry.id);
        if (entry.place == place && !keys.isEmpty()) rows += row(action_name(entry).toHtmlEscaped(), keys);
    }
    return rows;
}

QString heading(const QString& title, const QString& rows) {
    return QStringLiteral("<h3>%1</h3><table width=\"100%\">%2</table>").arg(title, rows);
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

QString picture_rows() {
    return row(HelpText::tr("Choose an eye, then move it"),
               HelpText::tr("Click, %1").arg(keys_shown(QStringLiteral("face.up"))));
}

QString toy_rows() {
    return row(HelpText::tr("Pick a piece"), HelpText::tr("Click")) +
           row(HelpText::tr("Go to its rounds"), HelpText::tr("Double click, Enter")) +
           row(HelpText::tr("Move it over the others"),
               HelpText::tr("Drag, %1").arg(keys_shown(QStringLiteral("face.up")))) +
           row(HelpText::tr("Turn it"),
               HelpText::tr("Drag the hoop, %1").arg(keys_shown(QStringLiteral("toy.turn-left")))) +
           row(HelpText::tr("Lean it"),
               HelpText::tr("Drag the knob, %1").arg(keys_shown(QStringLiteral("toy.lean-up")))) +
           row(HelpText::tr("Give a drag up"), HelpText::tr("Escape"));
}

void show_keyboard_help(QMainWindow& window) {
    QString text = heading(HelpText::tr("In the rounds table"), table_rows()) +
                   heading(HelpText::tr("In the line of next rounds"), line_rows()) +
                   heading(HelpText::tr("On the shape"), picture_rows()) +
                   heading(HelpText::tr("On the whole toy"), toy_rows());
    std::set<ActionPlace> told;
    for (const ActionEntry& entry : action_catalogue()) {
        if (!told.insert(entry.place).second) continue;
        const QString rows = place_rows(entry.place);
        if (!rows.isEmpty()) text += heading(place_name(entry.place).toHtmlEscaped(), rows);
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
