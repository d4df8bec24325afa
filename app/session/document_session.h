#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QSet>
#include <QString>
#include <QUndoStack>

#include "app/kit/preferences.h"
#include "app/session/change_set.h"
#include "app/session/document_file.h"
#include "app/session/file_standing.h"
#include "app/session/open_file.h"
#include "app/session/open_preview.h"
#include "app/session/studies.h"
#include "app/session/toy_history.h"
#include "app/session/typed_drafts.h"
#include "core/checks/check_said_numbers.h"

namespace roundwright::app {

class Assembly;
struct AssembledToy;

/// What a save may take the place of.
enum class SaveOver {
    what_is_known,  ///< the file as it was read or saved last
    anything,       ///< whatever stands there: the maker was asked
    nothing         ///< no file of any kind
};

/// The open toy, and the only one who changes it. Views read the toy and its studies here, ask for changes by
/// `edit`, and follow the signals. Pieces and rounds are counted from 0. What it does is done by its parts:
/// `ToyHistory` (the toy and undo), `OpenPreview` and the trial in `Studies` (what is being tried), `Studies`
/// (what is computed), `OpenFile`.
class DocumentSession : public QObject {
    Q_OBJECT
  public:
    explicit DocumentSession(QObject* parent = nullptr);
    ~DocumentSession() override;

    // What is open.
    /// With the preview that is open.
    [[nodiscard]] const Toy& toy() const { return preview_.toy() ? *preview_.toy() : history_.toy(); }
    /// Without it: what an edit is to start from.
    [[nodiscard]] const Toy& said_toy() const { return history_.toy(); }
    [[nodiscard]] int current_piece() const { return current_piece_; }  ///< -1: the toy has no piece
    [[nodiscard]] PieceId current_id() const { return current_id_; }
    [[nodiscard]] const Piece* piece() const;  ///< the current one; may be null
    [[nodiscard]] const std::vector<int>& selection() const { return selection_; }  ///< rounds, ascending
    void set_current_piece(int piece);
    void select_rounds(std::vector<int> rounds);

    // Changing it.
    /// Makes the toy what `after` is, as one undo step named `text` ("Set round 5 to 30 stitches"). Steps
    /// with the same merge key, one right after the other, become one. False if nothing changed or the toy is
    /// read only. Takes the place of a preview that is open.
    bool edit(const QString& text, Toy after, const QString& merge_key = {});
    bool edit(const QString& text, const std::function<Toy(Toy)>& change, const QString& merge_key = {});
    /// The same for the current piece.
    bool edit_piece(const QString& text, const std::function<void(Piece&)>& change,
                    const QString& merge_key = {});
    /// Says why an edit that was asked for is not made.
    void refuse(const QString& why) { Q_EMIT edit_refused(why); }
    /// Says what is good to know of a file that was written; of each file once, not at every save.
    void remark(const QString& path, const QString& words);
    /// The next edit starts a step of its own, whatever its merge key.
    void end_merging() { history_.end_merging(); }

    /// A change shown while it is made; see LivePreview, which is the way to use these. A new preview takes
    /// over from one that is open. Commit makes one undo step of it all, and computes nothing again. A ticket
    /// that is no longer the open preview's does nothing.
    [[nodiscard]] std::uint64_t begin_preview();
    void show_preview(std::uint64_t ticket, Toy toy);
    bool commit_preview(std::uint64_t ticket, const QString& text);
    void roll_back_preview(std::uint64_t ticket);

    /// Shows the current piece as it is in another toy, in the place of the toy's own: what is still being
    /// typed and not said yet. The toy itself, its study and its checks stay. Ends by `end_trial`, when
    /// another piece comes on show, and with the next change of the piece, whose shape then takes its place;
    /// an edit that makes the piece what was tried takes over what was found.
    void try_out(Toy toy);
    void end_trial() { studies_.end_trial(); }
    [[nodiscard]] bool shows_trial() const { return studies_.shows_trial(); }

    [[nodiscard]] QUndoStack& undo_stack() { return history_.steps(); }

    /// The graph of a piece of `toy()`, of `said_toy()` or of a toy that is about to be shown: derived once
    /// for each state of the piece's rounds, whoever asks, the solver included.
    [[nodiscard]] std::shared_ptr<const SharedGraph> graph_of(const Toy& toy, int piece) const;

    // What is computed from it, in the background.
    /// The latest study of a piece, possibly of the toy before the last edit; null before the first.
    [[nodiscard]] std::shared_ptr<const PieceStudy> study(int piece) const;
    /// What the surface shows: the study, or the piece before it is stuffed, or what is being tried out; the
    /// last one that converged.
    [[nodiscard]] std::shared_ptr<const PieceStudy> shown_study(int piece) const;
    [[nodiscard]] std::shared_ptr<const StitchSurface> surface(int piece) const;
    /// False while an edit of the piece is still being worked out.
    [[nodiscard]] bool is_up_to_date(int piece) const;
    /// The shape on show is of an earlier state, since that of the toy as it is now did not converge.
    [[nodiscard]] bool shows_last_good_shape(int piece) const;
    [[nodiscard]] bool solving() const { return studies_.busy(); }
    /// How far a piece has come on its way from the round shape, which is there at once, to the shape of
    /// every stitch, which takes its place (`Preferences::every_stitch`).
    [[nodiscard]] EveryStitchState every_stitch(int piece) const;
    // The whole toy.
    /// Whether the toy is on show as a whole, in the place of the current piece.
    [[nodiscard]] bool shows_whole_toy() const { return shows_whole_toy_; }
    void show_whole_toy(bool whole);
    /// The toy put together, while it is on show; the last one that was, or null.
    [[nodiscard]] std::shared_ptr<const AssembledToy> assembled() const;
    [[nodiscard]] bool assembled_is_up_to_date() const;
    /// All its pieces get coarser to stay below this many triangles.
    void set_most_triangles_together(std::size_t triangles);

    [[nodiscard]] bool shows_unstuffed() const { return studies_.shows_unstuffed(); }
    void set_shows_unstuffed(bool unstuffed) { studies_.set_shows_unstuffed(unstuffed); }
    /// The relief gets coarser to stay below this many triangles.
    void set_most_triangles(std::size_t triangles) { studies_.set_most_triangles(triangles); }
    /// How often a piece was given to the solver so far; for tests.
    [[nodiscard]] std::uint64_t requests_made() const { return studies_.requests_made(); }

    // Its file.
    [[nodiscard]] const QString& path() const { return file_.path; }  ///< empty: not saved yet
    [[nodiscard]] bool modified() const;
    /// False: the disk could not confirm that the last save would survive a loss of power.
    [[nodiscard]] bool saved_safely() const { return !file_.not_yet_safe; }
    /// May not be changed here; `read_only(standing())` says why.
    [[nodiscard]] bool read_only() const { return !may_be_edited(file_.standing); }
    [[nodiscard]] const FileStanding& standing() const { return file_.standing; }
    /// Of the content that the toy came from, or was last saved as; empty: not known.
    [[nodiscard]] const FileStamp& stamp() const { return file_.stamp; }
    /// Tells what happened to the file, or to the kept copy of what is not saved.
    void happened(FileEvent event);
    /// What stood in the file that was opened last and means nothing there: saving drops it.
    [[nodiscard]] const std::vector<UnreadKey>& not_understood() const { return file_.not_understood; }
    /// Pieces of that file whose ids were put right.
    [[nodiscard]] const std::vector<MendedId>& mended() const { return file_.mended; }
    /// Puts another toy in place, with a fresh undo stack. `unsaved`: it counts as modified from the start.
    void start(Toy toy, bool unsaved = false);
    /// On a problem the open toy stays as it is.
    [[nodiscard]] std::optional<FileProblem> open(const QString& path);
    /// Under its own name, the file must still be the one that was read or saved last, whatever its times
    /// say: else nothing is written, and the problem says `was_changed`. One that is gone is written again.
    [[nodiscard]] std::optional<FileProblem> save(const QString& path,
                                                  SaveOver over = SaveOver::what_is_known);
    /// Puts back what autosave kept: as modified, under the path it belongs to (may be empty). `based_on`: of
    /// the content that the changes start from, so that it is noticed if another stands there now.
    void recover(Toy toy, const QString& path, const FileStamp& based_on = {});
    /// What now stands in the file becomes the toy, as one step that can be undone; saved as it is.
    void take_theirs(LoadedFile theirs);
    /// The content that is known has other times, or stands there again.
    void know_file_again(const FileStamp& stamp);
    /// The file was given another name.
    void follow_to(const QString& path);

    /// What is typed in dialogs and not entered yet.
    [[nodiscard]] TypedDrafts& drafts() { return drafts_; }
    [[nodiscard]] const TypedDrafts& drafts() const { return drafts_; }

    [[nodiscard]] Preferences& preferences() { return preferences_; }
    [[nodiscard]] const Preferences& preferences() const { return preferences_; }

  Q_SIGNALS:
    /// The toy that is shown changed, or, with nothing in `changes`, what was shown has been said.
    void toy_changed(const roundwright::app::ChangeSet& changes);
    void current_piece_changed(int piece);
    void selection_changed(const std::vector<int>& rounds);
    void study_ready(int piece, std::shared_ptr<const roundwright::PieceStudy> study);
    /// A new surface, and the study of what it shows.
    void surface_ready(int piece, std::shared_ptr<const roundwright::StitchSurface> surface,
                       std::shared_ptr<const roundwright::PieceStudy> shown);
    void solving_changed(bool solving);
    void every_stitch_changed(int piece);  ///< `every_stitch`
    void whole_toy_shown(bool whole);
    void assembled_changed();
    void file_changed();  ///< path or read-only
    /// The file is written next, if it can be: what stands in it now may be lost.
    void about_to_save(const QString& path);
    /// What `said_toy()` is stands in the file at `path()` now.
    void saved();
    void modified_changed(bool modified);
    /// `standing()`, or the stamp of the file.
    void standing_changed();
    void remarked(const QString& words);
    void edit_refused(const QString& why);  ///< the toy is read only, or would be over a limit

  private:
    [[nodiscard]] bool may_edit();
    void follow_step(const ToyDelta& step, ToyHistory::Way way);
    void end_preview();
    void follow_steps();
    void stand(const FileStanding& standing);
    void tell_modified();
    [[nodiscard]] SavedFile write_file(const QString& path, SaveOver over);
    void replace_toy(Toy toy, OpenFile file);
    void toy_became(const ChangeSet& changes);
    void keep_places_valid();
    void reveal(const ChangeSet& changes, const Toy& before);
    [[nodiscard]] int piece_to_reveal(const ChangeSet& changes, const Toy& before) const;
    [[nodiscard]] int index_of(PieceId piece) const;
    [[nodiscard]] PieceId id_of(int piece) const;
    [[nodiscard]] CountsOfPieces counts_of(const Toy& toy) const;

    ToyHistory history_;
    OpenPreview preview_;
    int current_piece_ = -1;
    PieceId current_id_ = PieceId::none;
    std::vector<int> selection_;

    Preferences preferences_;
    TypedDrafts drafts_;
    Studies studies_;
    std::unique_ptr<Assembly> assembly_;
    bool shows_whole_toy_ = false;
    OpenFile file_;
    QSet<QString> remarks_made_;
    bool told_modified_ = false;
    bool replacing_ = false;  ///< the steps change with the file: they are no edits
};

}  // namespace roundwright::app
