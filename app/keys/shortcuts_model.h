#pragma once

#include <QAbstractTableModel>

#include "app/kit/action_catalogue.h"

namespace roundwright::app {

enum class ShortcutColumn { action, place, keys };
inline constexpr int shortcut_columns = 3;

/// Every action of the program with its menu and its keys, one a row, in the order of the menus. Keys that
/// the maker has chosen say so to those who hear them and are bold to those who see them.
class ShortcutsModel : public QAbstractTableModel {
    Q_OBJECT
  public:
    explicit ShortcutsModel(QObject* parent = nullptr);

    [[nodiscard]] const ActionEntry& entry(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] static QString text(const ActionEntry& entry, ShortcutColumn column);
    [[nodiscard]] static QString spoken(const ActionEntry& entry, ShortcutColumn column);
};

}  // namespace roundwright::app
