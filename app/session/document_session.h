#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>
#include <QString>
#include <QUndoStack>

#include "app/kit/preferences.h"
#include "app/session/background_solver.h"
#include "app/session/document_file.h"
#include "app/session/edit_command.h"
#include "core/mesh/stitch_surface.h"
#include "core/study/studied_piece.h"

namespace roundwright::app {

/// The open toy, and the only one who changes it. Views read the toy and its studies here, ask for changes by
/// `edit`, and follow the signals. Pieces and rounds are counted from 0.
class DocumentSession : public QObject, private ToyOwner {
    Q_OBJECT
  public:
    explicit DocumentSession(QObject* parent = nullptr);
    ~DocumentSession() override;

    // What is open.
    [[nodiscard]] const Toy& toy() const { return toy_; }
    /// Without the preview that is open: what an edit is to start from.
    [[nodiscard]] const Toy& said_toy() const { return preview_base_ ? *preview_base_ : toy_; }
    [[nodiscard]] int current_piece() const { return current_piece_; }  ///< -1: the toy has no piece
    [[nodiscard]] const Piece* piece() const;                           ///< the current one; may be null
    [[nodiscard]] const std::vector<int>& selection() const { return selection_; }  ///< rounds, ascending
    void set_current_piece(int piece);
    void select_rounds(std::vector<int> rounds);

    // Changing it.
    /// Makes the toy what `after` is, as one undo step named `text` ("Set round 5 to 30 stitches"). Steps
    /// with the same merge key, one right after the other, become one. False if nothing changed or the toy is
    /// read only. Ends a preview that is open by rolling it back.
    bool edit(const QString& text, Toy after, const QString& merge_key = {});
    bool edit(const QString& text, const std::function<Toy(Toy)>& change, const QString& merge_key = {});
    /// The same for the current piece.
    bool edit_piece(const QString& text, const std::function<void(Piece&)>& change,
                    const QString& merge_key = {});
    /// Says why an edit that was asked for is not made.
    void refuse(const QString& why) { Q_EMIT edit_refused(why); }
    /// The next edit starts a step of its own, whatever its merge key.
    void end_merging() { ++merge_epoch_; }

    /// A change shown while it is made; see LivePreview, which is the way to use these. Commit makes one undo
    /// step of it all. A ticket that is no longer the open preview's does nothing.
    [[nodiscard]] std::uint64_t begin_preview();
    void show_preview(std::uint64_t ticket, Toy toy);
    bool commit_preview(std::uint64_t ticket, const QString& text);
    void roll_back_preview(std::uint64_t ticket);

    /// Shows the current piece as it is in another toy, in the place of the toy's own: what is still being
    /// typed and not said yet. The toy itself, its study and its checks stay. Ends by `end_trial`, when
    /// another piece comes on show, and with the next change of the toy, whose shape then takes its place.
    void try_out(Toy toy);
    void end_trial();
    [[nodiscard]] bool shows_trial() const { return trial_.surface != nullptr; }

    [[nodiscard]] QUndoStack& undo_stack() { return undo_; }

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
    [[nodiscard]] bool solving() const { return solver_.busy(); }
    [[nodiscard]] bool shows_unstuffed() const { return shows_unstuffed_; }
    void set_shows_unstuffed(bool unstuffed);
    /// The relief gets coarser to stay below this many triangles.
    void set_most_triangles(std::size_t triangles);

    // Its file.
    [[nodiscard]] const QString& path() const { return path_; }  ///< empty: not saved yet
    [[nodiscard]] bool modified() const;
    [[nodiscard]] bool read_only() const { return read_only_; }  ///< written by a newer program
    /// What stood in the file that was opened last and means nothing there: saving drops it.
    [[nodiscard]] const std::vector<UnreadKey>& left_out() const { return left_out_; }
    /// Puts another toy in place, with a fresh undo stack. `unsaved`: it counts as modified from the start.
    void start(Toy toy, bool unsaved = false);
    /// On a problem the open toy stays as it is.
    [[nodiscard]] std::optional<FileProblem> open(const QString& path);
    [[nodiscard]] std::optional<FileProblem> save(const QString& path);
    /// Puts back what autosave kept: as modified, under the path it belongs to (may be empty).
    void recover(Toy toy, const QString& path);

    [[nodiscard]] Preferences& preferences() { return preferences_; }
    [[nodiscard]] const Preferences& preferences() const { return preferences_; }

  Q_SIGNALS:
    void toy_changed(const roundwright::app::ChangeSet& changes);
    void current_piece_changed(int piece);
    void selection_changed(const std::vector<int>& rounds);
    void study_ready(int piece, std::shared_ptr<const roundwright::PieceStudy> study);
    /// A new surface, and the study of what it shows.
    void surface_ready(int piece, std::shared_ptr<const roundwright::StitchSurface> surface,
                       std::shared_ptr<const roundwright::PieceStudy> shown);
    void solving_changed(bool solving);
    void file_changed();  ///< path or read-only
    void modified_changed(bool modified);
    void edit_refused(const QString& why);  ///< the toy is read only, or would be over a limit

  private:
    struct PieceResults {
        std::shared_ptr<const PieceStudy> study;
        std::shared_ptr<const PieceStudy> shown;
        std::shared_ptr<const StitchSurface> surface;
        Shared<SurfaceStage> drawn;   ///< the surface with what it was made from
        std::uint64_t wanted = 0;     ///< revision of the request under way; 0: none
        bool surface_wanted = false;  ///< by the request under way
        bool last_good = false;
    };

    /// Of `try_out`.
    struct Trial {
        std::shared_ptr<const PieceStudy> study;
        std::shared_ptr<const PieceStudy> shown;
        std::shared_ptr<const StitchSurface> surface;
        Shared<SurfaceStage> drawn;
        std::uint64_t wanted = 0;  ///< revision of the request under way; 0: none
    };

    [[nodiscard]] const Toy& owned_toy() const override { return toy_; }
    void apply_delta(const ToyDelta& delta) override;
    void revert_delta(const ToyDelta& delta) override;

    [[nodiscard]] bool may_edit();
    void push(const QString& text, ToyDelta delta, const QString& merge_key);
    void replace_toy(Toy toy, const QString& path, bool read_only);
    void toy_became(const ChangeSet& changes);
    void keep_places_valid();
    void reveal(const ChangeSet& changes);
    void close_preview();

    void follow_pieces(const ChangeSet& changes);
    void request(const ChangeSet& changes);
    void request_piece(int piece, const std::shared_ptr<const Toy>& snapshot, bool study_is_right);
    /// What every request says; the caller adds what it is for.
    [[nodiscard]] SolveRequest new_request(int piece, std::shared_ptr<const Toy> toy);
    void request_current_surface();
    void surfaces_are_stale();
    void take(const SolveResult& result);
    void take_trial(const SolveResult& result);
    void drop_trial();
    void keep_trial_shown();
    [[nodiscard]] bool on_trial(int piece) const { return shows_trial() && piece == current_piece_; }
    void take_surface(int piece, const SolveResult& result);

    Toy toy_;
    int current_piece_ = -1;
    std::vector<int> selection_;
    QUndoStack undo_;
    bool pushing_ = false;
    std::uint64_t merge_epoch_ = 0;

    std::optional<Toy> preview_base_;
    std::uint64_t preview_ticket_ = 0;

    Preferences preferences_;
    BackgroundSolver solver_;
    std::vector<PieceResults> results_;
    Trial trial_;
    std::uint64_t last_revision_ = 0;
    bool shows_unstuffed_ = false;
    std::size_t most_triangles_ = most_picture_triangles;

    QString path_;
    bool read_only_ = false;
    std::vector<UnreadKey> left_out_;
    bool unsaved_from_start_ = false;
};

}  // namespace roundwright::app
