#include "app/checks/checks_model.h"

#include <algorithm>

#include "app/kit/icons.h"
#include "app/rounds/round_edits.h"
#include "app/session/assembled_toy.h"
#include "core/study/corners.h"
#include "render/wording/check_sentence.h"
#include "render/wording/cure_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

QString sign(Severity severity) {
    switch (severity) {
        case Severity::error:
            return QStringLiteral("error");
        case Severity::warning:
            return QStringLiteral("warning");
        case Severity::note:
            return QStringLiteral("notice");
    }
    return {};
}

}  // namespace

ChecksModel::ChecksModel(DocumentSession& session, QObject* parent)
    : QAbstractListModel(parent), session_(session) {
    connect(&session_, &DocumentSession::study_ready, this, &ChecksModel::refill);
    connect(&session_, &DocumentSession::toy_changed, this, [this](const ChangeSet& changes) {
        if (changes.piece_list() || changes.words || changes.joins) refill();
    });
    connect(&session_, &DocumentSession::assembled_changed, this, &ChecksModel::refill);
    connect(&session_.preferences(), &Preferences::units_changed, this, &ChecksModel::refill);
    connect(&session_.preferences(), &Preferences::terms_changed, this, &ChecksModel::refill);
    refill();
}

void ChecksModel::refill() {
    beginResetModel();
    checks_.clear();
    for (int piece = 0; piece < static_cast<int>(session_.toy().pieces.size()); ++piece) {
        const auto study = session_.study(piece);
        if (!study) continue;
        for (const Check& found : study->checks()) {
            Check check = as_seen(found, *study);
            if (check.piece >= 0) check.piece = piece;
            const bool known =
                check.piece < 0 && std::ranges::find(checks_, check.code, &Check::code) != checks_.end();
            if (!known) checks_.push_back(std::move(check));
        }
    }
    add_said_numbers();
    add_seams();
    std::ranges::stable_sort(checks_, std::ranges::greater{}, &Check::severity);
    endResetModel();
}

/// As far as the toy is put together for the eye.
void ChecksModel::add_seams() {
    const auto toy = session_.assembled();
    if (!toy || !toy->whole || !session_.assembled_is_up_to_date()) return;
    for (Check& check : check_seams(*toy->whole)) checks_.push_back(std::move(check));
    if (!toy->measures) return;
    for (Check& check : check_overlaps(*toy->whole, toy->measures->overlaps))
        checks_.push_back(std::move(check));
}

/// Only once every piece is worked out: words may name any of them.
void ChecksModel::add_said_numbers() {
    if (const auto counts = counts_worked_out()) {
        for (Check& check : check_said_numbers(session_.toy(), *counts)) checks_.push_back(std::move(check));
        for (Check& check : check_joins(session_.toy(), *counts)) checks_.push_back(std::move(check));
    }
}

std::optional<CountsOfPieces> ChecksModel::counts_worked_out() const {
    CountsOfPieces counts;
    for (int piece = 0; piece < static_cast<int>(session_.toy().pieces.size()); ++piece) {
        const auto study = session_.study(piece);
        if (!study || !session_.is_up_to_date(piece)) return std::nullopt;
        counts.push_back(stitch_counts(study->graph().graph));
    }
    return counts;
}

int ChecksModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(checks_.size());
}

QString ChecksModel::sentence(const Check& check) const {
    const QString said = check_sentence(check, session_.preferences().units());
    const auto& pieces = session_.toy().pieces;
    if (pieces.size() < 2 || check.piece < 0 || check.piece >= static_cast<int>(pieces.size())) return said;
    return QStringLiteral("%1: %2").arg(name_in_words(pieces[static_cast<std::size_t>(check.piece)].name),
                                        said);
}

QVariant ChecksModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const auto& found = check(index.row());
    switch (role) {
        case Qt::DisplayRole:
        case Qt::ToolTipRole:
            return sentence(found);
        case Qt::AccessibleTextRole:
            return QStringLiteral("%1: %2").arg(severity_words(found.severity), sentence(found));
        case Qt::DecorationRole:
            return icon(sign(found.severity));
        case cure_label_role:
            return found.cures.empty() ? QString() : cure_label(found.cures.front());
        default:
            return {};
    }
}

void ChecksModel::show_place(int row) {
    const Check found = check(row);
    if (found.piece < 0) return;
    if (found.code == CheckCode::pieces_overlap) {
        // They are listed in their order, which sorting by severity keeps.
        const auto before = checks_.begin() + row;
        const auto overlap = std::count_if(checks_.begin(), before, [](const Check& check) {
            return check.code == CheckCode::pieces_overlap;
        });
        session_.show_whole_toy(true);
        Q_EMIT overlap_shown(static_cast<std::size_t>(overlap));
        return;
    }
    session_.set_current_piece(found.piece);
    if (found.round >= 0) session_.select_rounds({found.round});
}

bool ChecksModel::cure(int row) {
    const Check found = check(row);
    return !found.cures.empty() && apply(found, found.cures.front());
}

bool ChecksModel::apply(const Check& found, const Cure& cure) {
    if (cure.kind == CureKind::renumber_words) {
        const auto counts = counts_worked_out();
        return counts && session_.edit(cure_step(cure), with_words_renumbered(session_.toy(), *counts));
    }
    if (is_cure_of_joins(cure))
        return session_.edit(cure_step(cure), cured_joins(session_.said_toy(), found, cure));
    if (found.piece < 0) return false;
    session_.set_current_piece(found.piece);
    if (!cure.feature && !cure.area_stretch) {
        return RoundEdits(session_).replace(cure.first, cure.replaced, cure.rounds, cure_step(cure));
    }
    return session_.edit_piece(cure_step(cure), [&cure](Piece& piece) { piece = cured_piece(piece, cure); });
}

}  // namespace roundwright::app
