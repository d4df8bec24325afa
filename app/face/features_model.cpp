#include "app/face/features_model.h"

#include "app/face/feature_words.h"

namespace roundwright::app {

FeaturesModel::FeaturesModel(DocumentSession& session, QObject* parent)
    : QAbstractListModel(parent), session_(session), rows_(features()) {
    connect(&session_, &DocumentSession::toy_changed, this, &FeaturesModel::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FeaturesModel::follow);
}

int FeaturesModel::features() const {
    return session_.piece() == nullptr ? 0 : static_cast<int>(session_.piece()->features.size());
}

int FeaturesModel::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : rows_; }

QVariant FeaturesModel::data(const QModelIndex& index, int role) const {
    // While rows are being removed the piece is already without them.
    if (!index.isValid() || index.row() >= features()) return {};
    const Feature& feature = session_.piece()->features[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return feature_title(feature);
    if (role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole) return feature_place(feature);
    return {};
}

void FeaturesModel::follow() {
    const int now = features();
    if (now > rows_) {
        beginInsertRows({}, rows_, now - 1);
        rows_ = now;
        endInsertRows();
    } else if (now < rows_) {
        beginRemoveRows({}, now, rows_ - 1);
        rows_ = now;
        endRemoveRows();
    }
    if (rows_ > 0) Q_EMIT dataChanged(index(0), index(rows_ - 1));
}

}  // namespace roundwright::app
