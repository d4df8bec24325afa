#include "app/shape/shape_sign.h"

#include "render/wording/every_stitch_words.h"

namespace roundwright::app {
namespace {

/// After the last key: longer than a solve of a usual piece takes, with its checks before it.
constexpr int settled_after_ms = 800;

}  // namespace

ShapeSign::ShapeSign(const DocumentSession& session, QWidget* parent)
    : StillLabel(tr("Shape on show"), parent), session_(session) {
    setForegroundRole(QPalette::PlaceholderText);
    set_lines(1);
    later_.setSingleShot(true);
    later_.setInterval(settled_after_ms);
    connect(&later_, &QTimer::timeout, this, &ShapeSign::tell);
}

void ShapeSign::follow() {
    if (is_passing() && piece_ == session_.current_piece()) {
        later_.start();
        return;
    }
    tell();
}

bool ShapeSign::is_passing() const {
    const int piece = session_.current_piece();
    const auto shown = session_.shown_study(piece);
    const bool of_before = shown && shown->shape->stitched && !session_.is_up_to_date(piece);
    return of_before || session_.shows_trial() || session_.every_stitch(piece).coming;
}

void ShapeSign::tell() {
    later_.stop();
    piece_ = session_.current_piece();
    say(now());
}

QString ShapeSign::now() const {
    const int piece = session_.current_piece();
    const auto shown = session_.shown_study(piece);
    if (!shown || !shown->measures().usable()) return {};
    if (shown->shape->stitched) return tr("Stitch by stitch");
    const EveryStitchState state = session_.every_stitch(piece);
    if (state.coming) return tr("Round shape; working out every stitch…");
    if (state.refusal == EveryStitchRefusal::none) return tr("Round shape");
    return tr("Round shape: %1").arg(not_every_stitch_words(state.refusal, state.cells));
}

}  // namespace roundwright::app
