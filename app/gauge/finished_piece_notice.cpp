#include "app/gauge/finished_piece_notice.h"

#include <algorithm>
#include <utility>

#include "core/gauge/combined_gauge.h"
#include "core/study/next_measurement.h"
#include "render/wording/as_sentence.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {

namespace {

const auto cause = QStringLiteral("finished-piece");

bool is_of_finished_piece(const GaugeMeasurement& measurement) {
    const auto* given = std::get_if<GivenGauge>(&measurement.what);
    return std::holds_alternative<FinishedPieceGauge>(measurement.what) ||
           (given != nullptr && !given->found_on.empty());
}

bool has_measured_piece(const Toy& toy) {
    return std::ranges::any_of(measurements_of(toy.gauge), is_of_finished_piece);
}

std::optional<std::size_t> place_of(const Toy& toy, PieceId id) {
    for (std::size_t i = 0; i < toy.pieces.size(); ++i)
        if (toy.pieces.id(i) == id) return i;
    return std::nullopt;
}

}  // namespace

FinishedPieceNotice::FinishedPieceNotice(DocumentSession& session, NoticeBar& notices, QObject* parent)
    : QObject(parent), session_(session), notices_(notices) {
    connect(&session_, &DocumentSession::toy_changed, this,
            [this](const ChangeSet& changes) { changes.everything ? begin() : follow_toy(); });
    begin();
}

std::set<PieceId> FinishedPieceNotice::finished_pieces() const {
    std::set<PieceId> finished;
    const PieceList& pieces = session_.said_toy().pieces;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (is_finished(pieces[i])) finished.insert(pieces.id(i));
    return finished;
}

/// What was finished before the toy was opened is not asked about.
void FinishedPieceNotice::begin() {
    take_down();
    put_off_.clear();
    finished_ = finished_pieces();
}

void FinishedPieceNotice::follow_toy() {
    const std::set<PieceId> before = std::exchange(finished_, finished_pieces());
    if (asked_ != PieceId::none && (!finished_.contains(asked_) || has_measured_piece(session_.said_toy())))
        take_down();
    if (asked_ != PieceId::none || session_.read_only() || has_measured_piece(session_.said_toy())) return;
    for (const PieceId piece : finished_)
        if (!before.contains(piece) && !put_off_.contains(piece)) return ask(piece);
}

void FinishedPieceNotice::ask(PieceId piece) {
    const auto place = place_of(session_.said_toy(), piece);
    if (!place) return;
    asked_ = piece;
    const auto measure = [this, piece] {
        const auto now = place_of(session_.said_toy(), piece);
        take_down();
        if (!now) return;
        session_.set_current_piece(static_cast<int>(*now));
        Q_EMIT wanted();
    };
    const auto put_off = [this, piece] {
        put_off_.insert(piece);
        take_down();
    };
    notices_.put_up(cause,
                    {NoticeRank::remark,
                     tr("%1 is worked to its last round. Once it is stuffed, measure it: the sizes of the "
                        "other pieces get much more certain.")
                         .arg(as_sentence(piece_name(session_.said_toy(), *place))),
                     {{tr("&Measure it…"), measure}, {tr("&Not now"), put_off}}});
}

void FinishedPieceNotice::take_down() {
    asked_ = PieceId::none;
    notices_.take_down(cause);
}

}  // namespace roundwright::app
