#include "render/wording/feature_name.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("FeatureName", text); }

}  // namespace

QString feature_kind_name(FeatureKind kind, bool pair) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return pair ? tr("Safety eyes") : tr("Safety eye");
        case FeatureKind::safety_nose:
            return tr("Safety nose");
        case FeatureKind::embroidered_eye:
            return pair ? tr("Embroidered eyes") : tr("Embroidered eye");
        case FeatureKind::felt_disc:
            return pair ? tr("Felt patches") : tr("Felt patch");
        case FeatureKind::stitched_line:
            return pair ? tr("Stitched lines") : tr("Stitched line");
    }
    return {};
}

QString feature_name(const Feature& feature) {
    return feature.name.empty() ? feature_kind_name(feature.kind, feature.pair).toLower()
                                : QString::fromStdString(feature.name);
}

}  // namespace roundwright
