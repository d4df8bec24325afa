#include "render/wording/feature_name.h"

#include <QCoreApplication>

#include "render/wording/plain_text.h"

namespace roundwright {
namespace {

struct FeatureNameText {
    Q_DECLARE_TR_FUNCTIONS(FeatureName)
};

}  // namespace

QString feature_kind_name(FeatureKind kind, bool pair) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return pair ? FeatureNameText::tr("Safety eyes") : FeatureNameText::tr("Safety eye");
        case FeatureKind::safety_nose:
            return FeatureNameText::tr("Safety nose");
        case FeatureKind::embroidered_eye:
            return pair ? FeatureNameText::tr("Embroidered eyes") : FeatureNameText::tr("Embroidered eye");
        case FeatureKind::felt_disc:
            return pair ? FeatureNameText::tr("Felt patches") : FeatureNameText::tr("Felt patch");
        case FeatureKind::stitched_line:
            return pair ? FeatureNameText::tr("Stitched lines") : FeatureNameText::tr("Stitched line");
    }
    return {};
}

QString feature_kind_within(FeatureKind kind, bool pair) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return pair ? FeatureNameText::tr("safety eyes") : FeatureNameText::tr("safety eye");
        case FeatureKind::safety_nose:
            return FeatureNameText::tr("safety nose");
        case FeatureKind::embroidered_eye:
            return pair ? FeatureNameText::tr("embroidered eyes") : FeatureNameText::tr("embroidered eye");
        case FeatureKind::felt_disc:
            return pair ? FeatureNameText::tr("felt patches") : FeatureNameText::tr("felt patch");
        case FeatureKind::stitched_line:
            return pair ? FeatureNameText::tr("stitched lines") : FeatureNameText::tr("stitched line");
    }
    return {};
}

QString feature_name(const Feature& feature) {
    return feature.name.empty() ? feature_kind_within(feature.kind, feature.pair)
                                : name_in_words(feature.name);
}

}  // namespace roundwright
