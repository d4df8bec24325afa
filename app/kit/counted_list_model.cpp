#include "app/kit/counted_list_model.h"

namespace roundwright::app {

void CountedListModel::follow_count(int rows) {
    if (rows > rows_) {
        beginInsertRows({}, rows_, rows - 1);
        rows_ = rows;
        endInsertRows();
    } else if (rows < rows_) {
        beginRemoveRows({}, rows, rows_ - 1);
        rows_ = rows;
        endRemoveRows();
    }
    if (rows_ > 0) Q_EMIT dataChanged(index(0), index(rows_ - 1));
}

}  // namespace roundwright::app
