#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QDateTime>
#include <QLockFile>
#include <QObject>
#include <QString>
#include <QTimer>

#include "app/session/document_session.h"

namespace roundwright::app {

/// What stands in the line of next rounds and is not entered yet.
struct PendingEntry {
    QString text;
    int piece = 0;  ///< that it was typed for

    friend bool operator==(const PendingEntry&, const PendingEntry&) = default;
};

/// A toy that a program which ended without saving left behind.
struct LeftBehind {
    QString note;      ///< file that names the two others
    QString copy;      ///< the kept copy
    QString document;  ///< the file it belongs to; empty: the toy was never saved
    QDateTime kept;
    PendingEntry pending;
};

/// Keeps a copy of unsaved changes, and of what is still being typed, every few seconds: beside the toy's
/// file where that can be written, else in the program's own state folder. A note in the state folder says
/// where the copy is; a lock, held as long as the program runs, says whether its program is still there.
class Autosave : public QObject {
    Q_OBJECT
  public:
    /// `state_folder` empty: the usual place for the program's state.
    explicit Autosave(DocumentSession& session, const QString& state_folder = {}, QObject* parent = nullptr);
    ~Autosave() override;

    void set_interval_ms(int interval) { timer_.setInterval(interval); }
    /// What is typed and not entered yet is kept with the toy, even with one that is otherwise saved.
    void set_pending(const PendingEntry& pending);
    /// Keeps the changes at once, if there are any.
    void keep_now();
    /// Takes the copy away: saved, or given up by the maker.
    void forget();

    /// What programs that are gone left behind, newest first.
    [[nodiscard]] std::vector<LeftBehind> left_behind() const;
    /// A copy beside this file that no running program keeps and that is newer than the file.
    [[nodiscard]] std::optional<LeftBehind> left_beside(const QString& document) const;
    /// Whether another program than this one is open now.
    [[nodiscard]] bool another_is_running() const;
    /// Opens what was left behind, as unsaved changes of its file if it has any, and keeps it from now on.
    [[nodiscard]] std::optional<FileProblem> recover(const LeftBehind& left);
    static void discard(const LeftBehind& left);

  private:
    [[nodiscard]] bool is_running(const QString& name) const;
    [[nodiscard]] QStringList note_names() const;
    bool keep_copy();
    void write_note();
    [[nodiscard]] static bool only_typed(const LeftBehind& left, const Toy& toy);
    void follow_file();
    [[nodiscard]] QString wanted_copy() const;
    [[nodiscard]] bool write_copy(const QString& path) const;

    DocumentSession& session_;
    QString folder_;
    QString name_;
    std::unique_ptr<QLockFile> lock_;
    QTimer timer_;
    QString copy_;
    bool changed_ = false;
    PendingEntry pending_;
    bool pending_changed_ = false;
};

}  // namespace roundwright::app
