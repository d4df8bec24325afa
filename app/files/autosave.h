#pragma once

#include <optional>
#include <vector>

#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <QTimer>

#include "app/kept/kept_writer.h"
#include "app/kept/left_behind.h"
#include "app/session/document_session.h"
#include "app/session/typed.h"
#include "render/background/background.h"

namespace roundwright::app {

/// Keeps a copy of what a window has not saved, toy and typing, in one file of its own in the user's state
/// folder (`KeptFolder`): within a second of the first change that is not kept yet, however steadily typing
/// goes on. The copy follows the toy: it is there while there is something unsaved and goes once that is
/// saved, undone or given up; a save that the disk could not confirm does not count. Nothing else takes it
/// away, so whatever ends the program leaves it behind.
class Autosave : public QObject {
    Q_OBJECT
  public:
    /// `state_folder` empty: the usual place for the program's state.
    explicit Autosave(DocumentSession& session, const QString& state_folder = {}, QObject* parent = nullptr,
                      Disk& disk = Disk::in_use());
    /// Keeps what is not kept yet, unless it was given up.
    ~Autosave() override;

    /// The longest that a change waits before it is written.
    void set_interval_ms(int interval) { interval_ms_ = interval; }
    /// What is typed and not entered yet is kept with the toy, even with one that is otherwise saved.
    void set_pending(const PendingEntry& pending);
    /// Begins to keep what is not kept yet, in the background.
    void keep_soon();
    /// Gives back when what there is to keep is safely on disk, from a loss of power too, or cannot be kept.
    void keep_now();
    /// The maker gives up what is not saved: the copy goes, until something else is changed.
    void give_up();
    /// Nothing is there that would be lost with the window, or with the power.
    [[nodiscard]] bool all_kept() const;
    /// Why the latest copy could not be written; nothing: it could.
    [[nodiscard]] const std::optional<DiskFault>& fault() const { return fault_; }

    /// What programs that are gone left behind, the latest first. Copies that say nothing else than the files
    /// they belong to go silently.
    [[nodiscard]] std::vector<LeftBehind> left_behind() const;
    /// Those that are of this file, whichever name leads to it.
    [[nodiscard]] std::vector<LeftBehind> left_of(const QString& document) const;
    /// Whether another window than this one is open now.
    [[nodiscard]] bool another_is_running() const;
    /// Opens what was left behind as unsaved changes of `document` (empty: of no file), and keeps it from now
    /// on. What was left goes when this window's own copy of it, or a save, is safely on disk.
    [[nodiscard]] std::optional<FileProblem> recover(LeftBehind left, const QString& document);
    /// Deletes it for good.
    [[nodiscard]] std::optional<DiskFault> discard(const LeftBehind& left) const;
    /// The toy in it.
    [[nodiscard]] LoadedFile look_into(const LeftBehind& left) const;

  Q_SIGNALS:
    /// Keeping is impossible; it is tried again every few seconds.
    void keeping_failed(const roundwright::app::DiskFault& fault);
    /// After a failure: it works again, or there is nothing left to keep.
    void keeping_works();

  private:
    [[nodiscard]] std::optional<UnsavedWork> unsaved_work() const;
    void follow_toy(const ChangeSet& changes);
    void follow_modified(bool modified);
    void something_changed();
    void start_keeping(const UnsavedWork& work);
    bool write_at_once(const UnsavedWork& work);
    void take_written(KeptWriter::Turn turn, const UnsavedWork& work, const std::optional<DiskFault>& fault);
    void start_making_safe();
    void take_safe(const KeptWriter::Safe& safe);
    [[nodiscard]] bool is_safe() const { return kept_ && safe_turn_ >= kept_turn_; }
    void bring_up_to_date();
    void take_away();
    void tell(const std::optional<DiskFault>& fault);
    void let_older_copies_go();
    [[nodiscard]] bool says_nothing_new(const LeftBehind& left, const QString& document) const;
    [[nodiscard]] static bool only_typing_is_new(const LeftBehind& left, const Toy& toy,
                                                 const QString& document);

    DocumentSession& session_;
    KeptFolder folder_;
    QString name_;
    std::shared_ptr<KeptWriter> writer_;
    QTimer timer_;
    QTimer write_anew_;  ///< what could not be synced
    int interval_ms_;
    QElapsedTimer since_last_;  ///< since keeping was last begun
    PendingEntry pending_;
    std::optional<UnsavedWork> kept_;  ///< what this window's copy holds, whether or not it is synced
    std::optional<DiskFault> fault_;
    KeptWriter::Turn turn_ = 0;
    KeptWriter::Turn answered_ = 0;
    KeptWriter::Turn kept_turn_ = 0;  ///< in which `kept_` was written
    KeptWriter::Turn safe_turn_ = 0;  ///< the last one that is safe from a loss of power
    bool writing_ = false;
    bool syncing_ = false;
    bool given_up_ = false;
    bool recovering_ = false;
    std::vector<LeftBehind> taken_over_;  ///< brought back, and not safe yet in this window's own copy
    /// Of its own: what takes longer in the program's lanes must not keep a copy waiting.
    render::Workers workers_{1};
    render::Background background_{nullptr, workers_};
    /// And the disk's own time must not keep the next copy waiting.
    render::Workers syncers_{1};
    render::Background syncs_{nullptr, syncers_};
};

}  // namespace roundwright::app
