#pragma once

#include <functional>
#include <optional>

#include "app/assembly/toy_units.h"
#include "app/session/document_session.h"

namespace roundwright::app {

/// The edits of how a toy is sewn together, each one undo step with a name.
class JoinEdits {
  public:
    explicit JoinEdits(DocumentSession& session) : session_(session) {}

    /// Sews what stands by itself, or is sewn on elsewhere, to `onto`, at a first place there; none: takes it
    /// off.
    bool sew(const ToyUnit& unit, std::optional<PieceCopy> onto);
    bool change(std::size_t join, const QString& text, const std::function<void(Join&)>& change,
                const QString& merge_key = {});
    /// Of a pair the second copy is made where there is none.
    bool set_pair(std::size_t join, bool pair);
    bool nudge(std::size_t join, int rounds, double stitches_right);
    bool turn(std::size_t join, double degrees);
    bool lean(std::size_t join, double degrees, double right_degrees);
    bool set_stance(Stance stance);
    /// Sews every piece that nothing is said of yet to another.
    bool put_together();

  private:
    [[nodiscard]] QString name(const PieceCopy& copy) const;

    DocumentSession& session_;
};

/// Whether `copy` is sewn, by however many joins, to `ancestor`, or is it: sewing that one to it would make a
/// circle.
[[nodiscard]] bool is_sewn_to(const Toy& toy, PieceCopy copy, const PieceCopy& ancestor);

/// Degrees from a half turn to the left to one to the right.
[[nodiscard]] double within_a_turn(double degrees);

}  // namespace roundwright::app
