#pragma once

#include <QObject>

#include "app/files/autosave.h"
#include "app/files/file_questions.h"
#include "app/files/recent_files.h"
#include "app/on_disk/file_follower.h"
#include "app/session/document_session.h"

class QMenu;

namespace roundwright::app {

/// New, open, save and what surrounds them: the files opened last, the question before changes are lost, the
/// offer to bring back what a crash left.
class DocumentFiles : public QObject {
    Q_OBJECT
  public:
    DocumentFiles(DocumentSession& session, Autosave& autosave, FileFollower& follower, QWidget* window);

    void fill(QMenu* menu);
    /// Asks to save unsaved changes; false: stay with the toy. Changes that the maker gives up stay kept
    /// until something else is in their place.
    [[nodiscard]] bool may_leave();
    /// Opens a file after asking about unsaved changes. A problem is told and leaves the open toy as it is.
    bool open(const QString& path);
    bool save();
    bool save_as();
    /// What stands in the file takes the place of the toy, as one step that can be undone.
    void reload();
    /// Saves where another program has changed the file. True: the maker's toy is saved.
    bool keep(Keep whose);
    /// Offers what a crash left behind; true if something was brought back.
    bool offer_left_behind();
    /// How many other copies there are that programs which are gone left behind.
    [[nodiscard]] int copies_left() const;
    /// The same at the maker's wish: says so if there is nothing.
    void show_kept_copies();

  Q_SIGNALS:
    void new_toy();
    void opened();
    /// The maker gives up the changes in the window, which is about to show something else or to close.
    void gave_up();
    /// After a crash: what stood in the line of next rounds.
    void brought_back(const roundwright::app::PendingEntry& pending);

  private:
    void start_new();
    void start_sample(const QString& resource);
    void fill_samples(QMenu* menu);
    void ask_open();
    bool save_to(const QString& path);
    [[nodiscard]] bool offer(std::vector<LeftBehind> left, const QString& document);
    [[nodiscard]] bool bring_back(LeftBehind left, const QString& document);
    bool open_again();
    [[nodiscard]] bool may_save_to(const QString& path);
    [[nodiscard]] bool settle_conflict();
    bool saved();
    void tell_not_understood() const;
    void tell_not_saved(const QString& name, const FileProblem& problem);
    void tell(const QString& what, const FileProblem& problem) const;
    [[nodiscard]] QString usual_folder() const;
    [[nodiscard]] QString suggested_path() const;

    DocumentSession& session_;
    Autosave& autosave_;
    FileFollower& follower_;
    QWidget* window_;
    RecentFiles recent_;
};

/// How the toy is called in the window: its title, or its file's name.
[[nodiscard]] QString toy_name(const DocumentSession& session);

}  // namespace roundwright::app
