#pragma once

#include <optional>
#include <vector>

#include <QAbstractTableModel>

#include "core/toy/toy.h"

namespace roundwright::app {

enum class ThenAndNowColumn { round_then, stitches_then, round_now, stitches_now, change };
inline constexpr int then_and_now_columns = 5;

/// A round then, now, or both, side by side.
struct RoundThenAndNow {
    std::optional<int> then;  ///< from 0; nothing: it is new
    std::optional<int> now;   ///< nothing: it is gone
    int stitches_then = 0;
    int stitches_now = 0;
    bool same = false;  ///< in all that is said of it
};

/// `yarns` apart: rounds are the same whose working, marks and notes are.
[[nodiscard]] std::vector<RoundThenAndNow> rounds_then_and_now(const Piece& then, const Piece& now);

/// The rounds of a piece then and now, with what became of each in a word.
class RoundsThenAndNowModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    using QAbstractTableModel::QAbstractTableModel;

    void set_rounds(std::vector<RoundThenAndNow> rounds);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    std::vector<RoundThenAndNow> rounds_;
};

}  // namespace roundwright::app
