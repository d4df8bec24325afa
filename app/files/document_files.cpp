#include "app/files/document_files.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

#include "app/kit/action_maker.h"
#include "app/kit/save_path.h"
#include "app/pieces/piece_edits.h"
#include "app/toy/toy_details.h"

namespace roundwright::app {
namespace {

const auto suffix = QStringLiteral(".roundwright");
const auto folder_setting = QStringLiteral("last-folder");

QString file_filter() { return DocumentFiles::tr("Toys (*.roundwright);;All files (*)"); }

}  // namespace

QString toy_name(const DocumentSession& session) {
    if (!session.path().isEmpty()) return QFileInfo(session.path()).completeBaseName();
    const QString title = QString::fromStdString(session.toy().title);
    return title.isEmpty() ? DocumentFiles::tr("New toy") : title;
}

DocumentFiles::DocumentFiles(DocumentSession& session, Autosave& autosave, QWidget* window)
    : QObject(window), session_(session), autosave_(autosave), window_(window) {
    connect(&recent_, &RecentFiles::chosen, this, &DocumentFiles::open);
}

void DocumentFiles::fill(QMenu* menu) {
    const auto add = [&](const QString& text, const QKeySequence& keys, const QString& icon_name, auto act) {
        auto* action = make_action(window_, text, keys, icon_name);
        connect(action, &QAction::triggered, this, act);
        menu->addAction(action);
    };
    add(tr("&New toy"), QKeySequence::New, QStringLiteral("new"), [this] { start_new(); });
    add(tr("&Open…"), QKeySequence::Open, QStringLiteral("open"), [this] { ask_open(); });
    auto* recent = menu->addMenu(tr("Open &recent"));
    connect(menu, &QMenu::aboutToShow, this, [this, recent] { recent_.fill(recent); });
    recent_.fill(recent);
    fill_samples(menu->addMenu(tr("Open a sa&mple")));
    menu->addSeparator();
    add(tr("&Save"), QKeySequence::Save, QStringLiteral("save"), [this] { save(); });
    add(tr("Save &as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), {}, [this] { save_as(); });
    menu->addSeparator();
    add(tr("About this &toy…"), QKeySequence(Qt::ALT | Qt::Key_Return), QStringLiteral("note"),
        [this] { ask_toy_details(session_, window_); });
}

/// A sample opens as a new toy, so that saving never writes over it.
void DocumentFiles::start_sample(const QString& resource) {
    if (!may_leave()) return;
    auto loaded = load_document_file(resource);
    if (loaded.problem) return tell(tr("The sample could not be opened."), *loaded.problem);
    session_.start(std::move(loaded.document.toy));
    Q_EMIT opened();
}

void DocumentFiles::fill_samples(QMenu* menu) {
    const std::pair<QString, QString> samples[] = {
        {tr("Seal &pup"), QStringLiteral(":/samples/seal-pup.roundwright")},
        {tr("P&uffin"), QStringLiteral(":/samples/puffin.roundwright")},
        {tr("&Starfish"), QStringLiteral(":/samples/starfish.roundwright")}};
    Qt::Key key = Qt::Key_F9;
    for (const auto& [name, resource] : samples) {
        auto* action = make_action(window_, name, QKeySequence(Qt::CTRL | key));
        connect(action, &QAction::triggered, this, [this, resource = resource] { start_sample(resource); });
        menu->addAction(action);
        key = static_cast<Qt::Key>(key + 1);
    }
}

bool DocumentFiles::may_leave() {
    if (!session_.modified()) return true;
    QMessageBox question(QMessageBox::Warning, tr("Unsaved changes"),
                         tr("Save the changes to “%1”?").arg(toy_name(session_)), QMessageBox::NoButton,
                         window_);
    question.setInformativeText(tr("If you don’t save them, they are lost."));
    const auto* save_button = question.addButton(tr("&Save"), QMessageBox::AcceptRole);
    const auto* drop_button = question.addButton(tr("&Don’t save"), QMessageBox::DestructiveRole);
    question.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    question.setDefaultButton(qobject_cast<QPushButton*>(question.buttons().front()));
    question.exec();
    if (question.clickedButton() == save_button) return save();
    if (question.clickedButton() != drop_button) return false;
    autosave_.forget();
    return true;
}

void DocumentFiles::start_new() {
    if (!may_leave()) return;
    session_.start(empty_toy());
    Q_EMIT new_toy();
}

QString DocumentFiles::usual_folder() const {
    if (!session_.path().isEmpty()) return QFileInfo(session_.path()).path();
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return QSettings().value(folder_setting, documents).toString();
}

QString DocumentFiles::suggested_path() const {
    if (!session_.path().isEmpty()) return session_.path();
    QString name = toy_name(session_);
    for (QChar& letter : name) {
        if (QStringLiteral("/\\:*?\"<>|").contains(letter)) letter = u'-';
    }
    return QDir(usual_folder()).filePath(name + suffix);
}

void DocumentFiles::ask_open() {
    const QString path =
        QFileDialog::getOpenFileName(window_, tr("Open a toy"), usual_folder(), file_filter());
    if (!path.isEmpty()) open(path);
}

bool DocumentFiles::open(const QString& path) {
    if (!may_leave()) return false;
    if (const auto left = autosave_.left_beside(path); left && offer(*left)) {
        recent_.add(session_.path());
        Q_EMIT opened();
        return true;
    }
    if (const auto problem = session_.open(path)) {
        tell(tr("“%1” could not be opened.").arg(QFileInfo(path).fileName()), *problem);
        if (!QFileInfo::exists(path)) recent_.remove(path);
        return false;
    }
    recent_.add(session_.path());
    QSettings().setValue(folder_setting, QFileInfo(session_.path()).path());
    Q_EMIT opened();
    tell_left_out();
    return true;
}

/// A file written by a newer program is read only: nothing of it can be lost.
void DocumentFiles::tell_left_out() const {
    if (session_.read_only()) return;
    const QString name = QFileInfo(session_.path()).fileName();
    const auto tell_lines = [this](const QString& what, const QStringList& lines) {
        if (!lines.isEmpty()) tell(what, {lines.join(QLatin1Char('\n')), {}});
    };
    QStringList dropped;
    for (const UnreadKey& key : session_.left_out()) dropped << unread_key_words(key);
    tell_lines(tr("Some of “%1” is not understood here. It is kept as it stands.").arg(name), dropped);
    QStringList mended;
    for (const MendedId& id : session_.mended()) mended << mended_id_words(id);
    tell_lines(tr("“%1” was mended in some places. Nothing is lost.").arg(name), mended);
}

bool DocumentFiles::save() {
    if (session_.path().isEmpty() || session_.read_only()) return save_as();
    return save_to(session_.path());
}

bool DocumentFiles::save_as() {
    const QString path =
        ask_save_path(window_, tr("Save the toy"), suggested_path(), file_filter(), suffix.mid(1));
    return !path.isEmpty() && save_to(path);
}

bool DocumentFiles::save_to(const QString& path) {
    if (const auto problem = session_.save(path)) {
        tell(tr("“%1” could not be saved.").arg(QFileInfo(path).fileName()), *problem);
        return false;
    }
    recent_.add(session_.path());
    QSettings().setValue(folder_setting, QFileInfo(session_.path()).path());
    return true;
}

bool DocumentFiles::offer_left_behind() {
    for (const auto& left : autosave_.left_behind()) {
        if (offer(left)) return true;
    }
    return false;
}

bool DocumentFiles::offer(const LeftBehind& left) {
    const QString name = left.document.isEmpty() ? tr("a toy that was not saved yet")
                                                 : tr("“%1”").arg(QFileInfo(left.document).fileName());
    QMessageBox question(
        QMessageBox::Question, tr("Unsaved changes were kept"),
        tr("Roundwright stopped before changes to %1 were saved. The latest copy is from %2.")
            .arg(name, QLocale().toString(left.kept, QLocale::ShortFormat)),
        QMessageBox::NoButton, window_);
    question.setInformativeText(tr("Bring it back?"));
    const auto* back = question.addButton(tr("&Bring it back"), QMessageBox::AcceptRole);
    const auto* discard = question.addButton(tr("&Delete the copy"), QMessageBox::DestructiveRole);
    question.addButton(tr("&Later"), QMessageBox::RejectRole);
    question.setDefaultButton(qobject_cast<QPushButton*>(question.buttons().front()));
    question.exec();
    if (question.clickedButton() == discard) Autosave::discard(left);
    if (question.clickedButton() != back) return false;
    if (const auto problem = autosave_.recover(left)) {
        tell(tr("The copy could not be read."), *problem);
        return false;
    }
    Q_EMIT brought_back(left.pending);
    return true;
}

void DocumentFiles::tell(const QString& what, const FileProblem& problem) const {
    QMessageBox message(QMessageBox::Warning, tr("Roundwright"), what, QMessageBox::Ok, window_);
    QString text = problem.message;
    if (!problem.place.isEmpty())
        text += QStringLiteral("\n") + tr("Place in the file: %1").arg(problem.place);
    message.setInformativeText(text);
    message.setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    message.exec();
}

}  // namespace roundwright::app
