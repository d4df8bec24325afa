#include "app/files/document_files.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>
#include <QStandardPaths>

#include "app/files/recovery_dialog.h"
#include "app/kit/action_catalogue.h"
#include "app/kit/action_keys.h"
#include "app/kit/action_maker.h"
#include "app/kit/save_path.h"
#include "app/kit/toy_files.h"
#include "app/pieces/piece_edits.h"
#include "app/toy/toy_details.h"
#include "render/wording/printable.h"

namespace roundwright::app {
namespace {

const auto folder_setting = QStringLiteral("last-folder");

}  // namespace

QString toy_name(const DocumentSession& session) {
    if (!session.path().isEmpty()) return QFileInfo(session.path()).completeBaseName();
    const QString title = QString::fromStdString(session.toy().title);
    return title.isEmpty() ? DocumentFiles::tr("New toy") : title;
}

DocumentFiles::DocumentFiles(DocumentSession& session, Autosave& autosave, FileFollower& follower,
                             QWidget* window)
    : QObject(window), session_(session), autosave_(autosave), follower_(follower), window_(window) {
    connect(&recent_, &RecentFiles::chosen, this, &DocumentFiles::open);
}

void DocumentFiles::fill(QMenu* menu) {
    const auto add = [&](const char* id, auto act) {
        auto* action = make_action(window_, id);
        connect(action, &QAction::triggered, this, act);
        menu->addAction(action);
    };
    add("file.new", [this] { start_new(); });
    add("file.open", [this] { ask_open(); });
    auto* recent = menu->addMenu(place_text(ActionPlace::recent));
    connect(menu, &QMenu::aboutToShow, this, [this, recent] { recent_.fill(recent); });
    connect(&ActionKeys::instance(), &ActionKeys::changed, recent, [this, recent] { recent_.fill(recent); });
    recent_.fill(recent);
    fill_samples(menu->addMenu(place_text(ActionPlace::samples)));
    menu->addSeparator();
    add("file.save", [this] { save(); });
    add("file.save-as", [this] { save_as(); });
    add("file.kept-copies", [this] { show_kept_copies(); });
    add("file.take-theirs", [this] { reload(); });
    auto* take = menu->actions().constLast();
    const auto offer_take = [this, take] { take->setEnabled(!session_.path().isEmpty()); };
    connect(&session_, &DocumentSession::file_changed, take, offer_take);
    offer_take();
    menu->addSeparator();
    add("file.about-toy", [this] { ask_toy_details(session_, window_); });
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
    const std::pair<const char*, QString> samples[] = {
        {"sample.seal-pup", QStringLiteral(":/samples/seal-pup.roundwright")},
        {"sample.puffin", QStringLiteral(":/samples/puffin.roundwright")},
        {"sample.starfish", QStringLiteral(":/samples/starfish.roundwright")}};
    for (const auto& [id, resource] : samples) {
        auto* action = make_action(window_, id);
        connect(action, &QAction::triggered, this, [this, resource = resource] { start_sample(resource); });
        menu->addAction(action);
    }
}

bool DocumentFiles::may_leave() {
    if (!session_.modified()) return true;
    QMessageBox question(QMessageBox::Warning, tr("Unsaved changes"),
                         tr("Save the changes to “%1”?").arg(toy_name(session_)), QMessageBox::NoButton,
                         window_);
    question.setInformativeText(
        session_.path().isEmpty()
            ? tr("If you don’t save them, they are lost.")
            : tr("If you don’t save them, they stay among the earlier versions of the toy for a while."));
    question.setObjectName(QStringLiteral("unsaved-changes"));
    const auto* save_button = question.addButton(tr("&Save"), QMessageBox::AcceptRole);
    const auto* drop_button = question.addButton(tr("&Don’t save"), QMessageBox::DestructiveRole);
    question.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    question.setDefaultButton(qobject_cast<QPushButton*>(question.buttons().front()));
    question.exec();
    if (question.clickedButton() == save_button) return save();
    if (question.clickedButton() != drop_button) return false;
    Q_EMIT gave_up();
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

/// Return goes into a folder that has the name, so where one has taken the file's place another is suggested.
QString DocumentFiles::suggested_path() const {
    if (!session_.path().isEmpty()) {
        QString path = session_.path();
        while (QFileInfo(path).isDir()) path = next_free_name(path);
        return path;
    }
    QString name = printable_name(toy_name(session_));
    for (QChar& letter : name) {
        if (QStringLiteral("/\\:*?\"<>|").contains(letter)) letter = u'-';
    }
    return QDir(usual_folder()).filePath(name + u'.' + toy_ending());
}

void DocumentFiles::ask_open() {
    const QString path =
        QFileDialog::getOpenFileName(window_, tr("Open a toy"), usual_folder(), toy_file_filter());
    if (!path.isEmpty()) open(path);
}

bool DocumentFiles::open(const QString& path) {
    auto left = autosave_.left_of(path);
    if (follower_.is_open_here(path) && left.empty()) return open_again();
    if (!may_leave()) return false;
    if (!left.empty() && offer(std::move(left), path)) return true;
    if (const auto problem = session_.open(path)) {
        tell(tr("“%1” could not be opened.").arg(QFileInfo(path).fileName()), *problem);
        if (!QFileInfo::exists(path)) recent_.remove(path);
        return false;
    }
    recent_.add(session_.path());
    QSettings().setValue(folder_setting, QFileInfo(session_.path()).path());
    Q_EMIT opened();
    tell_not_understood();
    return true;
}

/// A file written by a newer program is read only: nothing of it can be lost.
void DocumentFiles::tell_not_understood() const {
    if (session_.read_only()) return;
    const QString name = QFileInfo(session_.path()).fileName();
    const auto tell_lines = [this](const QString& what, const QStringList& lines) {
        if (!lines.isEmpty()) tell(what, {lines.join(QLatin1Char('\n')), {}});
    };
    QStringList kept;
    for (const UnreadKey& key : session_.not_understood()) kept << unread_key_words(key);
    tell_lines(tr("Some of “%1” is not understood here. It is kept as it stands.").arg(name), kept);
    QStringList mended;
    for (const MendedId& id : session_.mended()) mended << mended_id_words(id);
    tell_lines(tr("“%1” was mended in some places. Nothing is lost.").arg(name), mended);
}

/// The file of the toy that is open here: there is nothing to open, but there may be something to go back to.
bool DocumentFiles::open_again() {
    follower_.look_now();
    const bool is_same = !session_.modified() && session_.standing().on_disk == OnDisk::same;
    if (!is_same && wants_file_instead(window_, toy_name(session_), session_.modified())) reload();
    Q_EMIT opened();
    return true;
}

void DocumentFiles::reload() {
    if (session_.path().isEmpty()) return;
    if (const auto problem = follower_.take_theirs())
        tell(tr("“%1” could not be read.").arg(QFileInfo(session_.path()).fileName()), *problem);
}

bool DocumentFiles::save() {
    if (!may_be_saved(session_.standing())) return save_as();
    return save_to(session_.path());
}

bool DocumentFiles::save_as() {
    const QString path =
        ask_save_path(window_, tr("Save the toy"), suggested_path(), toy_file_filter(), toy_ending());
    return !path.isEmpty() && save_to(path);
}

/// A name that can be saved under, as far as is known before it is tried.
bool DocumentFiles::may_save_to(const QString& path) {
    const QString name = QFileInfo(path).fileName();
    const QString problem = tr("“%1” was not saved.").arg(name);
    if (QFileInfo(path).isDir()) {
        tell(problem, {tr("This is the name of a folder. Choose another name."), {}});
    } else if (!follower_.claim(path)) {
        tell(problem, {tr("It is open in another window. Close it there, or choose another name."), {}});
    } else if (FileFollower::is_protected(path)) {
        tell(problem, {tr("It is write-protected. Choose another name or another folder."), {}});
    } else {
        return follower_.is_open_here(path) || is_toy_or_nothing(path) || wants_to_replace(window_, name);
    }
    return false;
}

bool DocumentFiles::save_to(const QString& path) {
    if (!may_save_to(path)) return false;
    const auto problem = session_.save(path);
    if (!problem) return saved();
    if (problem->was_changed) return settle_conflict();
    tell_not_saved(QFileInfo(path).fileName(), *problem);
    return false;
}

bool DocumentFiles::saved() {
    recent_.add(session_.path());
    QSettings().setValue(folder_setting, QFileInfo(session_.path()).path());
    return true;
}

/// The file is another one than was read. True: the maker's toy is saved.
bool DocumentFiles::settle_conflict() {
    follower_.look_now();
    const bool is_toy = session_.standing().on_disk == OnDisk::changed;
    return keep(ask_which_to_keep(window_, toy_name(session_), is_toy, follower_.why_unreadable()));
}

/// What was the maker's is one step back after theirs was taken: no reason to leave it.
bool DocumentFiles::keep(Keep whose) {
    if (whose == Keep::theirs) reload();
    if (whose == Keep::theirs || whose == Keep::undecided) return false;
    if (whose == Keep::mine && !may_save_to(session_.path())) return false;
    const QString name = QFileInfo(session_.path()).fileName();
    const auto problem = whose == Keep::mine ? follower_.keep_mine() : follower_.keep_both();
    if (!problem) return saved();
    tell_not_saved(name, *problem);
    return false;
}

bool DocumentFiles::offer_left_behind() {
    auto left = autosave_.left_behind();
    return !left.empty() && offer(std::move(left), {});
}

int DocumentFiles::copies_left() const { return static_cast<int>(autosave_.left_behind().size()); }

void DocumentFiles::show_kept_copies() {
    auto left = autosave_.left_behind();
    if (!left.empty()) {
        static_cast<void>(offer(std::move(left), {}));
        return;
    }
    QMessageBox::information(
        window_, tr("Kept copies"),
        tr("No unsaved changes were left behind. While you work, what is not saved yet is "
           "kept every second, and offered here if the program ever stops before you save."));
}

bool DocumentFiles::offer(std::vector<LeftBehind> left, const QString& document) {
    RecoveryDialog dialog(autosave_, std::move(left), document, window_);
    dialog.exec();
    auto chosen = dialog.take_chosen();
    if (!chosen) return false;
    const QString path = document.isEmpty() ? chosen->head.document : document;
    // What is open has been asked about before a file is opened, but not before a list is shown.
    if (document.isEmpty() && !may_leave()) return false;
    return bring_back(std::move(*chosen), path.isEmpty() ? path : QFileInfo(path).absoluteFilePath());
}

bool DocumentFiles::bring_back(LeftBehind left, const QString& document) {
    const PendingEntry typed = left.head.typed;
    if (const auto problem = autosave_.recover(std::move(left), document)) {
        tell(tr("The copy could not be read."), *problem);
        return false;
    }
    if (!session_.path().isEmpty()) recent_.add(session_.path());
    Q_EMIT opened();
    Q_EMIT brought_back(typed);
    return true;
}

/// The copy is looked for first: what is said of it must hold.
void DocumentFiles::tell_not_saved(const QString& name, const FileProblem& problem) {
    autosave_.keep_now();
    const QString safe =
        !session_.modified() ? tr("The toy in the window is safe.")
        : autosave_.all_kept()
            ? tr("The toy in the window is safe, and its copy is kept.")
            : tr("The toy is only in this window now, and no copy of it can be kept either. Leave the window "
                 "open until the toy is saved.");
    tell(tr("“%1” could not be saved.").arg(name),
         {problem.message + QLatin1Char(' ') + safe, problem.place});
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
