#pragma once

#include <QAbstractTableModel>

#include "core/reshape/compare.h"

namespace roundwright::app {

enum class ComparisonColumn { round, old_stitches, new_stitches, change };
inline constexpr int comparison_columns = 4;

/// Two pieces side by side, round by round: what each has, and what becomes of it in a word.
class RoundsComparisonModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    using QAbstractTableModel::QAbstractTableModel;

    void set_comparison(Comparison comparison);
    [[nodiscard]] const Comparison& comparison() const { return comparison_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] QString text(const RoundPair& pair, int round, ComparisonColumn column) const;

    Comparison comparison_;
};

}  // namespace roundwright::app
