#include "app/versions/versions_model.h"

#include <QLocale>

#include "app/kit/cell_words.h"
#include "app/kit/theme.h"
#include "render/wording/when_words.h"

namespace roundwright::app {
namespace {

QString kind_words(VersionKind kind) {
    switch (kind) {
        case VersionKind::found:
            return VersionsModel::tr("as found");
        case VersionKind::saved:
            return VersionsModel::tr("saved");
        case VersionKind::not_saved:
            return VersionsModel::tr("not saved");
    }
    return {};
}

QVariant alignment(int column) {
    const bool is_number = column >= static_cast<int>(VersionColumn::pieces);
    return QVariant((is_number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
}

}  // namespace

void VersionsModel::set_versions(std::vector<Version> versions) {
    beginResetModel();
    rows_.clear();
    for (Version& version : versions) rows_.push_back({std::move(version), nullptr});
    endResetModel();
}

void VersionsModel::set_read(std::size_t row, std::shared_ptr<const ReadVersion> read) {
    if (row >= rows_.size()) return;
    rows_[row].read = std::move(read);
    const int at = static_cast<int>(row);
    Q_EMIT dataChanged(index(at, 0), index(at, version_columns - 1));
}

int VersionsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int VersionsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : version_columns;
}

QString VersionsModel::text(const Row& row, VersionColumn column) {
    const bool is_unreadable = row.read && !row.read->toy;
    if (column == VersionColumn::when) return when_words(row.version.when);
    if (column == VersionColumn::kind) return is_unreadable ? tr("unreadable") : kind_words(row.version.kind);
    if (!row.read || is_unreadable) return QStringLiteral("–");
    const ToyTotals& totals = row.read->totals;
    const int count = column == VersionColumn::pieces   ? totals.pieces
                      : column == VersionColumn::rounds ? totals.rounds
                                                        : totals.stitches;
    return QLocale().toString(count);
}

QVariant VersionsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    const bool is_readable = row.read == nullptr || row.read->toy != nullptr;
    if (role == Qt::DisplayRole) return text(row, static_cast<VersionColumn>(index.column()));
    if (role == Qt::AccessibleTextRole && index.column() > 0)
        return cell_words(text(row, VersionColumn::when),
                          headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                          text(row, static_cast<VersionColumn>(index.column())));
    if (role == Qt::TextAlignmentRole) return alignment(index.column());
    if (role == Qt::ForegroundRole && !is_readable) return Theme::colours().quiet_text;
    return {};
}

QVariant VersionsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole) return alignment(section);
    if (role != Qt::DisplayRole) return {};
    switch (static_cast<VersionColumn>(section)) {
        case VersionColumn::when:
            return tr("When");
        case VersionColumn::kind:
            return tr("How");
        case VersionColumn::pieces:
            return tr("Pieces");
        case VersionColumn::rounds:
            return tr("Rounds");
        case VersionColumn::stitches:
            return tr("Stitches");
    }
    return {};
}

}  // namespace roundwright::app
