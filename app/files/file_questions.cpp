#include "app/files/file_questions.h"

#include <QAbstractButton>
#include <QCoreApplication>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>

#include "app/kit/save_bytes.h"
#include "app/session/document_file.h"

namespace roundwright::app {
namespace {

struct FileQuestionsText {
    Q_DECLARE_TR_FUNCTIONS(FileQuestions)
};

QMessageBox question(QWidget* window, const QString& title) {
    return QMessageBox(QMessageBox::Warning, title, QString(), QMessageBox::NoButton, window);
}

/// A name may look like markup: it stands in `what`.
void say(QMessageBox& box, const QString& what, const QString& more) {
    box.setTextFormat(Qt::PlainText);
    box.setText(what);
    box.setInformativeText(more);
}

QString lines_of_both(bool is_toy) {
    const QString mine =
        FileQuestionsText::tr("Keep mine: yours is saved over theirs, which stays under Earlier versions.");
    const QString theirs =
        FileQuestionsText::tr("Take theirs: it comes into this window, and Undo brings yours back.");
    const QString both =
        FileQuestionsText::tr("Keep both: yours is saved beside it under a name of its own.");
    return (is_toy ? QStringList{mine, theirs, both} : QStringList{mine, both}).join(QLatin1Char('\n'));
}

}  // namespace

Keep ask_which_to_keep(QWidget* window, const QString& toy, bool is_toy, const QString& why) {
    QMessageBox box = question(window, FileQuestionsText::tr("The file was changed by another program"));
    const QString what =
        is_toy ? FileQuestionsText::tr("“%1” was changed outside this window. Which one do you want to keep?")
                     .arg(toy)
               : FileQuestionsText::tr("“%1” can no longer be read. %2").arg(toy, why);
    say(box, what, lines_of_both(is_toy));
    const auto* both = box.addButton(FileQuestionsText::tr("Keep &both"), QMessageBox::AcceptRole);
    const auto* theirs =
        is_toy ? box.addButton(FileQuestionsText::tr("Take &theirs"), QMessageBox::AcceptRole) : nullptr;
    const auto* mine = box.addButton(FileQuestionsText::tr("Keep &mine"), QMessageBox::AcceptRole);
    box.addButton(FileQuestionsText::tr("&Cancel"), QMessageBox::RejectRole);
    box.setDefaultButton(qobject_cast<QPushButton*>(box.buttons().front()));
    box.exec();
    const auto* clicked = box.clickedButton();
    if (clicked == nullptr) return Keep::undecided;
    if (clicked == both) return Keep::both;
    if (clicked == theirs) return Keep::theirs;
    return clicked == mine ? Keep::mine : Keep::undecided;
}

bool wants_file_instead(QWidget* window, const QString& toy, bool unsaved) {
    QMessageBox box = question(window, FileQuestionsText::tr("This toy is open already"));
    const QString what =
        unsaved ? FileQuestionsText::tr("“%1” is open here, with changes that are not in its file.").arg(toy)
                : FileQuestionsText::tr("“%1” is open here, and its file was changed by another program.")
                      .arg(toy);
    say(box, what, FileQuestionsText::tr("Undo brings back what is here now."));
    box.addButton(FileQuestionsText::tr("&Keep what is here"), QMessageBox::RejectRole);
    const auto* file =
        box.addButton(FileQuestionsText::tr("Take what is in the &file"), QMessageBox::AcceptRole);
    box.setDefaultButton(qobject_cast<QPushButton*>(box.buttons().front()));
    box.exec();
    return box.clickedButton() == file;
}

bool wants_to_replace(QWidget* window, const QString& file) {
    QMessageBox box = question(window, FileQuestionsText::tr("Not a toy"));
    say(box, FileQuestionsText::tr("“%1” is not a toy. Replace it with one?").arg(file),
        FileQuestionsText::tr("What is in it now would be lost."));
    const auto* replace = box.addButton(FileQuestionsText::tr("&Replace it"), QMessageBox::DestructiveRole);
    auto* cancel = box.addButton(FileQuestionsText::tr("&Cancel"), QMessageBox::RejectRole);
    box.setDefaultButton(cancel);
    box.exec();
    return box.clickedButton() == replace;
}

bool is_toy_or_nothing(const QString& path) {
    if (!QFileInfo::exists(path) || is_device(path) || QFileInfo(path).size() == 0) return true;
    return !load_document_file(path).problem;
}

}  // namespace roundwright::app
