#pragma once

#include <QAbstractTableModel>

#include "app/kit/preferences.h"
#include "core/reshape/continue_from_here.h"

namespace roundwright::app {

enum class WayColumn { undo, width, height, apart };
inline constexpr int way_columns = 4;

/// The ways on from what is on the hook, one a row: what to undo, how large it comes out, how far off what
/// was wanted.
class WaysModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    explicit WaysModel(const Preferences& preferences, QObject* parent = nullptr);

    void set_ways(std::vector<WayOn> ways);
    [[nodiscard]] const std::vector<WayOn>& ways() const { return ways_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] QString text(const WayOn& way, WayColumn column) const;

    const Preferences& preferences_;
    std::vector<WayOn> ways_;
};

}  // namespace roundwright::app
