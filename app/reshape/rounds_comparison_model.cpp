#include "app/reshape/rounds_comparison_model.h"

#include <QFont>

#include "app/kit/cell_words.h"
#include "app/kit/theme.h"

namespace roundwright::app {
namespace {

QString count_text(const std::optional<int>& count) {
    return count ? QString::number(*count) : QStringLiteral("–");
}

QString signed_text(int change) {
    return change > 0 ? QStringLiteral("+%1").arg(change) : QStringLiteral("\u2212%1").arg(-change);
}

}  // namespace

void RoundsComparisonModel::set_comparison(Comparison comparison) {
    const bool same_rows = comparison.rounds.size() == comparison_.rounds.size();
    if (!same_rows) beginResetModel();
    comparison_ = std::move(comparison);
    if (!same_rows) return endResetModel();
    if (rowCount() > 0) Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, comparison_columns - 1));
}

int RoundsComparisonModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(comparison_.rounds.size());
}

int RoundsComparisonModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : comparison_columns;
}

QString RoundsComparisonModel::text(const RoundPair& pair, int round, ComparisonColumn column) const {
    switch (column) {
        case ComparisonColumn::round:
            return QString::number(round + 1);
        case ComparisonColumn::old_stitches:
            return count_text(pair.old_stitches);
        case ComparisonColumn::new_stitches:
            return count_text(pair.new_stitches);
        case ComparisonColumn::change:
            break;
    }
    if (!pair.old_stitches) return tr("new");
    if (!pair.new_stitches) return tr("gone");
    const int change = *pair.new_stitches - *pair.old_stitches;
    if (change != 0) return signed_text(change);
    return pair.same ? tr("same") : tr("same count");
}

QVariant RoundsComparisonModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const RoundPair& pair = comparison_.rounds[static_cast<std::size_t>(index.row())];
    const auto column = static_cast<ComparisonColumn>(index.column());
    switch (role) {
        case Qt::DisplayRole:
            return text(pair, index.row(), column);
        case Qt::AccessibleTextRole:
            return cell_words(tr("Round %1").arg(index.row() + 1),
                              headerData(index.column(), Qt::Horizontal, role).toString(),
                              text(pair, index.row(), column));
        case Qt::TextAlignmentRole:
            return QVariant(column == ComparisonColumn::change ? Qt::AlignLeft | Qt::AlignVCenter
                                                               : Qt::AlignRight | Qt::AlignVCenter);
        case Qt::ForegroundRole:
            if (pair.same) return Theme::colours().quiet_text;
            return {};
        default:
            return {};
    }
}

QVariant RoundsComparisonModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical && role == Qt::AccessibleTextRole) return tr("Round %1").arg(section + 1);
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole) {
        return QVariant(section == static_cast<int>(ComparisonColumn::change)
                            ? Qt::AlignLeft | Qt::AlignVCenter
                            : Qt::AlignRight | Qt::AlignVCenter);
    }
    const bool spoken = role == Qt::AccessibleTextRole;
    if (role != Qt::DisplayRole && !spoken) return {};
    switch (static_cast<ComparisonColumn>(section)) {
        case ComparisonColumn::round:
            return tr("Round");
        case ComparisonColumn::old_stitches:
            return spoken ? tr("stitches now") : tr("Now");
        case ComparisonColumn::new_stitches:
            return spoken ? tr("new stitches") : tr("New");
        case ComparisonColumn::change:
            return tr("Change");
    }
    return {};
}

}  // namespace roundwright::app
