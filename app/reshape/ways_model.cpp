#include "app/reshape/ways_model.h"

#include <cmath>

#include <QLocale>

#include "app/kit/cell_words.h"
#include "render/wording/counted.h"
#include "render/wording/length_text.h"
#include "render/wording/reshape_words.h"

namespace roundwright::app {
namespace {

QString apart_text(double apart_mm, LengthUnit units) {
    if (apart_mm <= 0) return WaysModel::tr("as asked");
    if (apart_mm < 1) return WaysModel::tr("very close");
    return WaysModel::tr("%1 off").arg(length_text(apart_mm, units));
}

QString what_to_undo(const FrogBack& back) {
    if (back.undo_rounds == 0) return WaysModel::tr("nothing");
    return QStringLiteral("%1 (%2)").arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
}

// "57 mm (+9)": nine more than asked for.
QString length_and_difference(double reached_mm, double asked_mm, LengthUnit units) {
    const QString length = length_text(reached_mm, units);
    const double off = shown_difference_mm(reached_mm, asked_mm, units);
    if (off == 0 || !(asked_mm > 0)) return length;
    QString difference = length_text(std::abs(off), units);
    if (units == LengthUnit::millimetres) difference = QLocale().toString(std::abs(off), 'f', 0);
    return QStringLiteral("%1 (%2%3)").arg(length, QString(QChar(off > 0 ? u'+' : u'\u2212')), difference);
}

}  // namespace

WaysModel::WaysModel(const Preferences& preferences, QObject* parent)
    : QAbstractTableModel(parent), preferences_(preferences) {}

void WaysModel::set_ways(std::vector<WayOn> ways) {
    beginResetModel();
    ways_ = std::move(ways);
    endResetModel();
}

int WaysModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(ways_.size());
}

int WaysModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : way_columns; }

QVariant WaysModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const WayOn& way = ways_[static_cast<std::size_t>(index.row())];
    const LengthUnit units = preferences_.units();
    const bool number = index.column() != static_cast<int>(WayColumn::undo);
    if (role == Qt::TextAlignmentRole)
        return QVariant((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole) return size_words(way.made.form, units);
    if (role == Qt::AccessibleTextRole && !number)
        return tr("%1: %2").arg(undo_words(way.back), size_words(way.made.form, units));
    const QString said = text(way, static_cast<WayColumn>(index.column()));
    if (role == Qt::AccessibleTextRole)
        return cell_words(undo_words(way.back), headerData(index.column(), Qt::Horizontal, role).toString(),
                          said);
    return role == Qt::DisplayRole ? said : QVariant();
}

QString WaysModel::text(const WayOn& way, WayColumn column) const {
    const LengthUnit units = preferences_.units();
    switch (column) {
        case WayColumn::undo:
            return what_to_undo(way.back);
        case WayColumn::width:
            return length_and_difference(way.made.reached().width_mm, way.made.wanted.width_mm, units);
        case WayColumn::height:
            return length_and_difference(way.made.reached().height_mm, way.made.wanted.height_mm, units);
        case WayColumn::apart:
            return apart_text(way.shape_error_mm, units);
    }
    return {};
}

QVariant WaysModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    const auto column = static_cast<WayColumn>(section);
    if (role == Qt::TextAlignmentRole)
        return QVariant((column == WayColumn::undo ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole) return {};
    switch (column) {
        case WayColumn::undo:
            return tr("Undo");
        case WayColumn::width:
            return tr("Width");
        case WayColumn::height:
            return tr("Height");
        case WayColumn::apart:
            return tr("Shape");
    }
    return {};
}

}  // namespace roundwright::app
