#include "app/versions/rounds_then_and_now_model.h"

#include "app/kit/cell_words.h"
#include "app/kit/theme.h"
#include "core/differences/round_differences.h"
#include "render/wording/round_phrases.h"

namespace roundwright::app {
namespace {

QString number(const std::optional<int>& value, int plus) {
    return value ? QString::number(*value + plus) : QStringLiteral("–");
}

QString change_words(const RoundThenAndNow& round) {
    if (!round.then) return RoundsThenAndNowModel::tr("new");
    if (!round.now) return RoundsThenAndNowModel::tr("gone");
    if (round.same) return RoundsThenAndNowModel::tr("same");
    const int change = round.stitches_now - round.stitches_then;
    return change == 0 ? RoundsThenAndNowModel::tr("same count") : change_phrase(change);
}

QString text(const RoundThenAndNow& round, ThenAndNowColumn column) {
    switch (column) {
        case ThenAndNowColumn::round_then:
            return number(round.then, 1);
        case ThenAndNowColumn::stitches_then:
            return round.then ? QString::number(round.stitches_then) : QString();
        case ThenAndNowColumn::round_now:
            return number(round.now, 1);
        case ThenAndNowColumn::stitches_now:
            return round.now ? QString::number(round.stitches_now) : QString();
        case ThenAndNowColumn::change:
            break;
    }
    return change_words(round);
}

QString row_words(const RoundThenAndNow& round) {
    return round.now ? RoundsThenAndNowModel::tr("Round %1").arg(*round.now + 1)
                     : RoundsThenAndNowModel::tr("Round %1 then").arg(round.then.value_or(0) + 1);
}

QVariant alignment(int column) {
    const bool is_words = column == static_cast<int>(ThenAndNowColumn::change);
    return QVariant((is_words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
}

}  // namespace

std::vector<RoundThenAndNow> rounds_then_and_now(const Piece& then, const Piece& now) {
    const auto counts_then = round_counts(then);
    const auto counts_now = round_counts(now);
    std::vector<RoundThenAndNow> rounds;
    for (const AlignedPair& pair : aligned_rounds(then, now)) {
        RoundThenAndNow round;
        if (pair.before) {
            round.then = static_cast<int>(*pair.before);
            round.stitches_then = counts_then[*pair.before];
        }
        if (pair.after) {
            round.now = static_cast<int>(*pair.after);
            round.stitches_now = counts_now[*pair.after];
        }
        if (pair.before && pair.after) {
            Round before = then.rounds[*pair.before];
            before.yarn = now.rounds[*pair.after].yarn;
            round.same = before == now.rounds[*pair.after];
        }
        rounds.push_back(round);
    }
    return rounds;
}

void RoundsThenAndNowModel::set_rounds(std::vector<RoundThenAndNow> rounds) {
    beginResetModel();
    rounds_ = std::move(rounds);
    endResetModel();
}

int RoundsThenAndNowModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rounds_.size());
}

int RoundsThenAndNowModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : then_and_now_columns;
}

QVariant RoundsThenAndNowModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const RoundThenAndNow& round = rounds_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return text(round, static_cast<ThenAndNowColumn>(index.column()));
    if (role == Qt::AccessibleTextRole)
        return cell_words(row_words(round), headerData(index.column(), Qt::Horizontal, role).toString(),
                          text(round, static_cast<ThenAndNowColumn>(index.column())));
    if (role == Qt::TextAlignmentRole) return alignment(index.column());
    if (role == Qt::ForegroundRole && round.same) return Theme::colours().quiet_text;
    return {};
}

QVariant RoundsThenAndNowModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole) return alignment(section);
    const bool spoken = role == Qt::AccessibleTextRole;
    if (role != Qt::DisplayRole && !spoken) return {};
    switch (static_cast<ThenAndNowColumn>(section)) {
        case ThenAndNowColumn::round_then:
            return spoken ? tr("round then") : tr("Then");
        case ThenAndNowColumn::round_now:
            return spoken ? tr("round now") : tr("Now");
        case ThenAndNowColumn::stitches_then:
            return spoken ? tr("stitches then") : tr("Sts");
        case ThenAndNowColumn::stitches_now:
            return spoken ? tr("stitches now") : tr("Sts");
        case ThenAndNowColumn::change:
            return tr("Change");
    }
    return {};
}

}  // namespace roundwright::app
