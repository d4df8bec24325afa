#include "app/keys/shortcuts_model.h"

#include <QFont>

#include "app/keys/key_words.h"
#include "app/kit/action_keys.h"

namespace roundwright::app {

ShortcutsModel::ShortcutsModel(QObject* parent) : QAbstractTableModel(parent) {
    connect(&ActionKeys::instance(), &ActionKeys::changed, this, [this] {
        const int keys = static_cast<int>(ShortcutColumn::keys);
        Q_EMIT dataChanged(index(0, keys), index(rowCount() - 1, keys));
    });
}

const ActionEntry& ShortcutsModel::entry(int row) const {
    return action_catalogue()[static_cast<std::size_t>(row)];
}

int ShortcutsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(action_catalogue().size());
}

int ShortcutsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : shortcut_columns;
}

QString ShortcutsModel::text(const ActionEntry& entry, ShortcutColumn column) {
    switch (column) {
        case ShortcutColumn::action:
            return action_name(entry);
        case ShortcutColumn::place:
            return place_name(entry.place);
        case ShortcutColumn::keys:
            return keys_in_words(ActionKeys::instance().keys(entry.id));
    }
    return {};
}

QString ShortcutsModel::spoken(const ActionEntry& entry, ShortcutColumn column) {
    const QString plain = text(entry, column);
    if (column != ShortcutColumn::keys) return plain;
    if (plain.isEmpty()) return tr("no keys");
    return ActionKeys::instance().is_usual(entry.id) ? plain : tr("%1, chosen by you").arg(plain);
}

QVariant ShortcutsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const ActionEntry& of_row = entry(index.row());
    const auto column = static_cast<ShortcutColumn>(index.column());
    if (role == Qt::DisplayRole) return text(of_row, column);
    if (role == Qt::AccessibleTextRole) return spoken(of_row, column);
    if (role == Qt::FontRole && column == ShortcutColumn::keys &&
        !ActionKeys::instance().is_usual(of_row.id)) {
        QFont bold;
        bold.setBold(true);
        return bold;
    }
    return {};
}

QVariant ShortcutsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (static_cast<ShortcutColumn>(section)) {
        case ShortcutColumn::action:
            return tr("What it does");
        case ShortcutColumn::place:
            return tr("Where");
        case ShortcutColumn::keys:
            return tr("Keys");
    }
    return {};
}

}  // namespace roundwright::app
