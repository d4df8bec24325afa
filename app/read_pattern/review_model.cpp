#include "app/read_pattern/review_model.h"

#include <algorithm>
#include <numeric>

#include <QStringList>

#include "app/kit/cell_words.h"
#include "app/kit/icons.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/line_words.h"

namespace roundwright::app {

void ReviewModel::set_pattern(const ReadPattern& pattern) {
    beginResetModel();
    lines_ = pattern.lines;
    diagnostics_ = pattern.diagnostics;
    make_rows(pattern.account);
    place_findings();
    endResetModel();
}

void ReviewModel::make_rows(const std::vector<LineAccount>& account) {
    std::vector<int> entries(lines_.size());
    std::iota(entries.begin(), entries.end(), 0);
    std::ranges::stable_sort(
        entries, {}, [this](int index) { return lines_[static_cast<std::size_t>(index)].first_line; });
    rows_.clear();
    auto next = entries.begin();
    for (int number = 1; number <= static_cast<int>(account.size()); ++number) {
        const int own = account[static_cast<std::size_t>(number) - 1].entry;
        if (own >= 0 && lines_[static_cast<std::size_t>(own)].first_line < number)
            rows_.push_back({number, own, true});
        for (; next != entries.end() && lines_[static_cast<std::size_t>(*next)].first_line <= number; ++next)
            rows_.push_back({number, *next, false});
    }
}

/// A finding about a round stands by that round's row, where its line has several.
void ReviewModel::place_findings() {
    for (int index = 0; index < static_cast<int>(diagnostics_.size()); ++index) {
        const ReadDiagnostic& finding = diagnostics_[static_cast<std::size_t>(index)];
        const auto [first, last] = std::ranges::equal_range(rows_, finding.where.line, {}, &Row::line);
        if (first == last) continue;
        const auto own = std::find_if(first, last, [&](const Row& row) {
            const ReadLine& of = entry(row);
            return finding.round >= 0 && of.piece == finding.piece && of.first_round <= finding.round &&
                   of.last_round >= finding.round;
        });
        (own == last ? first : own)->findings.push_back(index);
    }
}

int ReviewModel::row_of_line(int text_line) const {
    const auto at = std::ranges::lower_bound(rows_, text_line, {}, &Row::line);
    return at == rows_.end() ? -1 : static_cast<int>(at - rows_.begin());
}

int ReviewModel::finding(int row) const {
    const std::vector<int>& findings = rows_[static_cast<std::size_t>(row)].findings;
    return findings.empty() ? -1 : findings.front();
}

int ReviewModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int ReviewModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QString ReviewModel::text(const Row& row, int column) const {
    const ReadLine& of = entry(row);
    switch (column) {
        case place:
            return QString::number(row.line);
        case lot:
            return row.part ? line_part_words(of) : line_lot_words(of);
        case understood:
            return row.part ? QString() : line_understood_words(of);
        case stitches:
            return !row.part && of.first_round >= 0 ? QString::number(of.stitches) : QString();
        default:
            return {};
    }
}

QString ReviewModel::findings_words(const Row& row) const {
    QStringList sentences;
    for (const int index : row.findings)
        sentences << diagnostic_sentence(diagnostics_[static_cast<std::size_t>(index)]);
    return sentences.join(u' ');
}

/// "Line 12, round 4, 18 stitches", "Line 13, not understood: ..."
QString ReviewModel::whole_row_words(const Row& row) const {
    const QString place_and_lot = tr("Line %1, %2").arg(text(row, place), text(row, lot));
    const bool rounds = !row.part && entry(row).first_round >= 0;
    const QString words =
        rounds ? tr("%1, %2").arg(place_and_lot, stitches_words(entry(row).stitches)) : place_and_lot;
    if (!row.findings.empty()) return tr("%1: %2").arg(words, findings_words(row));
    if (!entry(row).proved && rounds) return tr("%1, does not come out").arg(words);
    const QString said = text(row, understood);
    return rounds || said.isEmpty() ? words : tr("%1: %2").arg(words, said);
}

QString ReviewModel::spoken(const Row& row, int column) const {
    if (column == place || column == lot) return whole_row_words(row);
    return cell_words(tr("Line %1").arg(text(row, place)),
                      headerData(column, Qt::Horizontal, Qt::AccessibleTextRole).toString(),
                      text(row, column));
}

/// One shape for each severity, so that it is no matter of colour.
QVariant ReviewModel::sign(const Row& row) const {
    if (row.findings.empty()) return entry(row).proved ? QVariant() : icon(QStringLiteral("error"));
    Severity worst = Severity::note;
    for (const int index : row.findings)
        worst = std::max(worst, diagnostics_[static_cast<std::size_t>(index)].severity);
    switch (worst) {
        case Severity::note:
            return icon(QStringLiteral("notice"));
        case Severity::warning:
            return icon(QStringLiteral("warning"));
        case Severity::error:
            return icon(QStringLiteral("error"));
    }
    return {};
}

QVariant ReviewModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return text(row, index.column());
        case Qt::ToolTipRole:
            return row.findings.empty() ? text(row, index.column()) : findings_words(row);
        case Qt::DecorationRole:
            return index.column() == lot ? sign(row) : QVariant();
        case Qt::AccessibleTextRole:
            return spoken(row, index.column());
        case Qt::TextAlignmentRole:
            if (index.column() == stitches || index.column() == place)
                return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
            return {};
        default:
            return {};
    }
}

QVariant ReviewModel::headerData(int section, Qt::Orientation orientation, int role) const {
    const bool is_heard = role == Qt::AccessibleTextRole;
    if (orientation != Qt::Horizontal || (role != Qt::DisplayRole && !is_heard)) return {};
    switch (section) {
        case place:
            return tr("line");
        case lot:
            return tr("what it is");
        case understood:
            return tr("understood");
        case stitches:
            return is_heard ? tr("stitches") : tr("sts");
        default:
            return {};
    }
}

}  // namespace roundwright::app
