#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>

#include "app/session/background_solver.h"
#include "app/session/piece_graphs.h"
#include "app/session/stitch_solver.h"
#include "core/mesh/stitch_surface.h"
#include "core/study/studied_piece.h"

namespace roundwright::app {

/// One piece of a toy that nobody changes any more.
struct PieceOfToy {
    std::shared_ptr<const Toy> toy;
    PieceId piece = PieceId::none;

    /// Whether what is worked out for one is right for the other.
    [[nodiscard]] bool gives_the_same_as(const PieceOfToy& other) const;
};

/// How far a piece has come on its way to the shape of every stitch.
struct EveryStitchState {
    bool found = false;   ///< the study has it
    bool coming = false;  ///< it is being worked out, or waits its turn
    EveryStitchRefusal refusal = EveryStitchRefusal::none;
    CellsRefusal cells = CellsRefusal::none;

    friend bool operator==(const EveryStitchState&, const EveryStitchState&) = default;
};

/// What was worked out for a piece, and what is on its way.
struct Findings {
    PieceOfToy of;  ///< what they are of once nothing is on its way
    std::shared_ptr<const PieceStudy> study;
    std::shared_ptr<const PieceStudy> shown;  ///< of what the surface shows
    std::shared_ptr<const StitchSurface> surface;
    Shared<SurfaceStage> drawn;                ///< the surface with what it was made from
    std::uint64_t wanted = 0;                  ///< revision of the request under way; 0: none
    bool surface_wanted = false;               ///< by the request under way
    std::shared_ptr<const PieceStudy> shaped;  ///< stuffed, of the toy as it is; may have no checks yet
    bool shape_known = false;                  ///< `shaped` is right, or there is none to be had
    std::uint64_t stitches_wanted = 0;  ///< of `StitchSolver`: revision of the request under way; 0: none
    bool stitches_seen = false;         ///< that request is first in line and brings a surface
    Shared<ShapeStage> stitched;        ///< the last shape of every stitch, which the next starts from
    Shared<ShapeStage> refused_shape;   ///< of these no shape of every stitch was found
    Shared<StitchStage> refused_stitches;
    EveryStitchState refused;
    bool last_good = false;  ///< the surface is of an earlier state, since this one's did not converge
};

/// What is computed of the toy that is shown, in the background: asks for what a change makes stale, and for
/// nothing else. Findings stay with their piece when pieces move.
class Studies : public QObject {
    Q_OBJECT
  public:
    explicit Studies(QObject* parent = nullptr);

    /// Forgets everything: another toy is opened.
    void clear();
    /// The toy that is shown is this one now, and `current` (may be none) the piece on show. Asks for what is
    /// missing; `tell` has the signals.
    void follow(Toy toy, PieceId current);
    /// Signals what `follow` and `show_piece` found to be known already.
    void tell();
    /// Another piece comes on show.
    void show_piece(PieceId piece);

    /// While a preview is open, what was known before it is kept, so that giving it up asks for nothing.
    void keep_for_after_preview();
    void preview_is_over() { before_preview_.clear(); }

    /// Shows the current piece as it is in another toy; what is found becomes the piece's own as soon as the
    /// toy is that one.
    void try_out(Toy toy);
    void end_trial();
    [[nodiscard]] bool shows_trial() const { return trial_ && trial_->surface; }

    [[nodiscard]] std::shared_ptr<const PieceStudy> study(PieceId piece) const;
    [[nodiscard]] std::shared_ptr<const PieceStudy> shown_study(PieceId piece) const;
    [[nodiscard]] std::shared_ptr<const StitchSurface> surface(PieceId piece) const;
    [[nodiscard]] bool is_up_to_date(PieceId piece) const;
    /// The study of the piece as it is now, which has its shape and may have no checks yet; null where it has
    /// none, or none was found so far (`shape_is_known`).
    [[nodiscard]] std::shared_ptr<const PieceStudy> shape_study(PieceId piece) const;
    [[nodiscard]] bool shape_is_known(PieceId piece) const;
    [[nodiscard]] bool shows_last_good_shape(PieceId piece) const;
    [[nodiscard]] EveryStitchState every_stitch(PieceId piece) const;
    [[nodiscard]] bool wants_every_stitch() const { return every_stitch_; }
    /// Off: only the round solver's shapes, at once.
    void set_every_stitch(bool wanted);
    [[nodiscard]] bool busy() const { return solver_.busy(); }
    [[nodiscard]] bool shows_unstuffed() const { return shows_unstuffed_; }
    void set_shows_unstuffed(bool unstuffed);
    void set_most_triangles(std::size_t triangles);
    /// How often a piece was given to the solver so far.
    [[nodiscard]] std::uint64_t requests_made() const { return last_revision_; }

    [[nodiscard]] std::shared_ptr<const SharedGraph> graph(const PieceList& pieces, std::size_t piece) const {
        return graphs_.of(pieces, piece);
    }

  Q_SIGNALS:
    void study_ready(roundwright::PieceId piece);
    void surface_ready(roundwright::PieceId piece);
    void shape_ready(roundwright::PieceId piece);  ///< before the signals of the study and the surface
    void every_stitch_changed(roundwright::PieceId piece);  ///< `every_stitch`
    void busy_changed(bool busy);
    void failed(const QString& why);  ///< the work on a piece ended by an error

  private:
    [[nodiscard]] const Findings* found(PieceId piece) const;
    [[nodiscard]] bool on_trial(PieceId piece) const { return shows_trial() && piece == current_; }
    void forget_pieces_gone();
    void bring_up_to_date(PieceId piece);
    bool take_over_trial(Findings& findings, const PieceOfToy& wanted);
    bool take_up_again(Findings& findings, const PieceOfToy& wanted);
    void leave_trial_on_show(Findings& findings);
    void drop_trial();
    [[nodiscard]] SolveRequest new_request(const PieceOfToy& of);
    void request(Findings& findings, const PieceOfToy& of, bool study_is_right);
    bool request_missing_surface();
    void surfaces_are_stale();
    void take(const SolveResult& result);
    void take_trial(const SolveResult& result);
    [[nodiscard]] bool lacks_stitches(const Findings& findings) const;
    [[nodiscard]] StitchRequest stitch_request(Findings& findings, bool seen);
    void ask_for_stitches(PieceId piece, Findings& findings);
    void cancel_stitches(Findings& findings);
    void take_stitches(const StitchResult& result);
    static bool show_stitches(Findings& findings, bool shows_study, const Shared<SurfaceStage>& drawn);
    void leave_stitches();

    BackgroundSolver solver_;
    StitchSolver stitches_;
    bool every_stitch_ = true;
    mutable PieceGraphs graphs_;  // what is derived is no part of the state
    std::shared_ptr<const Toy> toy_ = std::make_shared<const Toy>();
    PieceId current_ = PieceId::none;
    std::map<PieceId, Findings> findings_;
    std::map<PieceId, Findings> before_preview_;
    std::optional<Findings> trial_;
    std::vector<PieceId> studies_to_tell_;
    bool surface_to_tell_ = false;
    std::uint64_t last_revision_ = 0;
    std::uint64_t last_stitch_revision_ = 0;
    bool shows_unstuffed_ = false;
    std::size_t most_triangles_ = most_picture_triangles;
};

}  // namespace roundwright::app
