#include "app/files/autosave.h"

#include <algorithm>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <QStandardPaths>
#include <QUuid>

namespace roundwright::app {
namespace {

constexpr int usual_interval_ms = 4000;
constexpr qint64 most_note_bytes = 8 << 20;
const auto document_key = QStringLiteral("document");
const auto copy_key = QStringLiteral("copy");
const auto pending_key = QStringLiteral("typed");
const auto pending_piece_key = QStringLiteral("typed_for_piece");
const auto note_suffix = QStringLiteral(".note");
const auto lock_suffix = QStringLiteral(".lock");

QString usual_folder() {
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    const QString home = state.isEmpty() ? QDir::homePath() + QStringLiteral("/.local/state") : state;
    return home + QStringLiteral("/roundwright");
}

/// "/harbour/pup.roundwright" is kept as "/harbour/.pup.roundwright.kept".
QString copy_beside(const QString& document) {
    const QFileInfo file(document);
    return file.dir().filePath(QStringLiteral(".%1.kept").arg(file.fileName()));
}

std::optional<LeftBehind> read_note(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    const auto note = QJsonDocument::fromJson(file.read(most_note_bytes)).object();
    LeftBehind left{path,
                    note.value(copy_key).toString(),
                    note.value(document_key).toString(),
                    {},
                    {note.value(pending_key).toString(), note.value(pending_piece_key).toInt()}};
    const QFileInfo copy(left.copy);
    if (left.copy.isEmpty() || !copy.isFile()) return std::nullopt;
    left.kept = copy.lastModified();
    return left;
}

}  // namespace

Autosave::Autosave(DocumentSession& session, const QString& state_folder, QObject* parent)
    : QObject(parent),
      session_(session),
      folder_(state_folder.isEmpty() ? usual_folder() : state_folder),
      name_(QUuid::createUuid().toString(QUuid::WithoutBraces)) {
    QDir().mkpath(folder_);
    lock_ = std::make_unique<QLockFile>(QDir(folder_).filePath(name_ + lock_suffix));
    lock_->setStaleLockTime(0);  // stale when its process is gone, however old
    lock_->tryLock(0);
    timer_.setInterval(usual_interval_ms);
    connect(&timer_, &QTimer::timeout, this, &Autosave::keep_now);
    connect(&session_, &DocumentSession::toy_changed, this, [this] { changed_ = true; });
    connect(&session_, &DocumentSession::file_changed, this, &Autosave::follow_file);
    connect(&session_, &DocumentSession::modified_changed, this, [this](bool modified) {
        if (modified) return;
        forget();
        changed_ = true;  // what is typed is not saved with the toy
    });
    timer_.start();
}

Autosave::~Autosave() { forget(); }

QString Autosave::wanted_copy() const {
    if (!session_.path().isEmpty()) return copy_beside(session_.path());
    return QDir(folder_).filePath(name_ + QStringLiteral(".roundwright"));
}

bool Autosave::write_copy(const QString& path) const {
    return !save_document_file(path, session_.said_toy()).has_value();
}

void Autosave::set_pending(const PendingEntry& pending) {
    if (pending == pending_) return;
    pending_ = pending;
    pending_changed_ = true;
    if (pending_.text.isEmpty() && !session_.modified()) forget();
}

void Autosave::keep_now() {
    if (!session_.modified() && pending_.text.isEmpty()) return;
    const QString before = copy_;
    if ((changed_ || copy_.isEmpty()) && !keep_copy()) return;
    if (copy_ != before || pending_changed_) write_note();
}

bool Autosave::keep_copy() {
    QString path = wanted_copy();
    if (!write_copy(path)) {
        path = QDir(folder_).filePath(name_ + QStringLiteral(".roundwright"));
        if (!write_copy(path)) return false;
    }
    changed_ = false;
    if (!copy_.isEmpty() && path != copy_) QFile::remove(copy_);
    copy_ = path;
    return true;
}

void Autosave::write_note() {
    QSaveFile file(QDir(folder_).filePath(name_ + note_suffix));
    if (!file.open(QIODevice::WriteOnly)) return;
    QJsonObject note{{document_key, session_.path()}, {copy_key, copy_}};
    if (!pending_.text.isEmpty()) {
        note.insert(pending_key, pending_.text);
        note.insert(pending_piece_key, pending_.piece);
    }
    file.write(QJsonDocument(note).toJson());
    pending_changed_ = !file.commit();
}

void Autosave::forget() {
    if (!copy_.isEmpty()) QFile::remove(copy_);
    copy_.clear();
    QFile::remove(QDir(folder_).filePath(name_ + note_suffix));
}

/// Another file is open, or the same toy under another name: the copy of before belongs to nobody.
void Autosave::follow_file() {
    if (copy_.isEmpty() || copy_ == wanted_copy()) return;
    forget();
    changed_ = true;
    keep_now();
}

QStringList Autosave::note_names() const {
    QStringList names;
    for (const auto& file : QDir(folder_).entryList({QStringLiteral("*") + note_suffix}, QDir::Files)) {
        names << file.chopped(note_suffix.size());
    }
    return names;
}

bool Autosave::another_is_running() const {
    const auto locks = QDir(folder_).entryList({QStringLiteral("*") + lock_suffix}, QDir::Files);
    return std::ranges::any_of(locks, [this](const QString& lock) {
        const QString name = lock.chopped(lock_suffix.size());
        return name != name_ && is_running(name);
    });
}

/// A lock that can be taken belongs to a program that is gone.
bool Autosave::is_running(const QString& name) const {
    if (name == name_) return true;
    QLockFile lock(QDir(folder_).filePath(name + lock_suffix));
    lock.setStaleLockTime(0);
    return !lock.tryLock(0);
}

std::vector<LeftBehind> Autosave::left_behind() const {
    std::vector<LeftBehind> found;
    for (const auto& name : note_names()) {
        if (is_running(name)) continue;
        const QString path = QDir(folder_).filePath(name + note_suffix);
        if (auto left = read_note(path)) {
            found.push_back(*left);
        } else {
            QFile::remove(path);
        }
    }
    std::ranges::sort(found, std::ranges::greater{}, &LeftBehind::kept);
    return found;
}

std::optional<LeftBehind> Autosave::left_beside(const QString& document) const {
    const QFileInfo copy(copy_beside(QFileInfo(document).absoluteFilePath()));
    if (!copy.isFile() || copy.lastModified() <= QFileInfo(document).lastModified()) return std::nullopt;
    LeftBehind left{{}, copy.filePath(), document, copy.lastModified(), {}};
    for (const auto& name : note_names()) {
        const auto note = read_note(QDir(folder_).filePath(name + note_suffix));
        if (!note || note->copy != left.copy) continue;
        if (is_running(name)) return std::nullopt;
        left.note = note->note;
        left.pending = note->pending;
    }
    return left;
}

/// The toy in the copy is the one in its file: nothing but what was typed is lost.
bool Autosave::only_typed(const LeftBehind& left, const Toy& toy) {
    if (left.pending.text.isEmpty() || left.document.isEmpty()) return false;
    const auto saved = load_document_file(left.document);
    return !saved.problem && saved.document.toy == toy;
}

std::optional<FileProblem> Autosave::recover(const LeftBehind& left) {
    auto loaded = load_document_file(left.copy);
    if (loaded.problem) return loaded.problem;
    if (!only_typed(left, loaded.document.toy) || session_.open(left.document))
        session_.recover(std::move(loaded.document.toy), left.document);
    set_pending(left.pending);
    keep_now();
    QFile::remove(left.note);
    if (left.copy != copy_) QFile::remove(left.copy);
    return std::nullopt;
}

void Autosave::discard(const LeftBehind& left) {
    QFile::remove(left.copy);
    QFile::remove(left.note);
}

}  // namespace roundwright::app
