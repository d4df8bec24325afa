#include "app/face/features_model.h"

#include "render/wording/feature_words.h"

namespace roundwright::app {

FeaturesModel::FeaturesModel(DocumentSession& session, QObject* parent)
    : CountedListModel(0, parent), session_(session) {
    follow();
    connect(&session_, &DocumentSession::toy_changed, this, &FeaturesModel::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FeaturesModel::follow);
}

int FeaturesModel::features() const {
    return session_.piece() == nullptr ? 0 : static_cast<int>(session_.piece()->features.size());
}

QVariant FeaturesModel::data(const QModelIndex& index, int role) const {
    // While rows are being removed the piece is already without them.
    if (!index.isValid() || index.row() >= features()) return {};
    const Feature& feature = session_.piece()->features[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole) return feature_title(feature);
    if (role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole) return feature_place(feature);
    return {};
}

void FeaturesModel::follow() { follow_count(features()); }

}  // namespace roundwright::app
