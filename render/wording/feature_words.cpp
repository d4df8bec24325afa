#include "render/wording/feature_words.h"

#include <cmath>

#include <QCoreApplication>

#include "core/face/feature_fit.h"
#include "core/face/small_parts.h"
#include "render/wording/counted.h"
#include "render/wording/feature_name.h"
#include "render/wording/length_text.h"
#include "render/wording/plain_text.h"

namespace roundwright {

namespace {

struct FaceText {
    Q_DECLARE_TR_FUNCTIONS(Face)
};

/// Sizes of eyes and felt are named in mm all over the trade.
QString size_in_mm(const Feature& feature) {
    const QString width = QString::number(feature.width_mm, 'g', 4);
    if (feature.width_mm == feature.height_mm) return FaceText::tr("%1 mm").arg(width);
    return FaceText::tr("%1 × %2 mm").arg(width, QString::number(feature.height_mm, 'g', 4));
}

QString stitches(double count) {
    if (count == std::floor(count)) return stitches_words(static_cast<int>(count));
    const QString whole = count < 1 ? QString() : QString::number(std::floor(count));
    return FaceText::tr("%1½ stitches").arg(whole);
}

}  // namespace

QString feature_with_size(const Feature& feature) {
    const QString name = feature_name(feature);
    return feature.kind == FeatureKind::stitched_line ? name
                                                      : FaceText::tr("%1 %2").arg(size_in_mm(feature), name);
}

QString feature_title(const Feature& feature) {
    const QString kind =
        feature.name.empty() ? feature_kind_name(feature.kind, feature.pair) : name_in_words(feature.name);
    return feature.kind == FeatureKind::stitched_line ? kind
                                                      : FaceText::tr("%1, %2").arg(kind, size_in_mm(feature));
}

QString feature_place(const Feature& feature) {
    const QString gap =
        FaceText::tr("between rounds %1 and %2").arg(feature.round + 1).arg(feature.round + 2);
    if (feature.pair)
        return FaceText::tr("%1, with %2 between them").arg(gap, stitches(feature.stitches_apart));
    if (feature.stitches_right == 0) return FaceText::tr("%1, in the middle of the face").arg(gap);
    return feature.stitches_right > 0
               ? FaceText::tr("%1, %2 right of the middle").arg(gap, stitches(feature.stitches_right))
               : FaceText::tr("%1, %2 left of the middle").arg(gap, stitches(-feature.stitches_right));
}

QString feature_measures(const Feature& feature, const FeatureMeasures& measures, LengthUnit unit) {
    const auto length = [unit](double mm) { return length_text(mm, unit); };
    const QString height = FaceText::tr("%1 above the base").arg(length(measures.height_mm));
    if (!feature.pair) return height;
    return FaceText::tr("%1 apart, %2 over the fabric; %3; %4° between them")
        .arg(length(measures.straight_mm), length(measures.along_surface_mm), height)
        .arg(std::lround(measures.angle_degrees));
}

QString fitting_words(const FittingTime& time, double washer_mm, const std::vector<double>& openings,
                      LengthUnit unit) {
    const auto opening = [&](int round) {
        return length_text(openings[static_cast<std::size_t>(round)], unit);
    };
    const QString washer = FaceText::tr("%1 mm washer").arg(washer_mm, 0, 'g', 4);
    if (time.other_end_open)
        return FaceText::tr("The %1 goes in through the open end at any time.").arg(washer);
    if (!time.last_by_washer) {
        return FaceText::tr(
                   "The %1 no longer fits through the opening once round %2 is worked. Move it to an earlier "
                   "round, or embroider it.")
            .arg(washer)
            .arg(time.earliest + 1);
    }
    const QString when = FaceText::tr("Insert after round %1: the opening is %2 then.")
                             .arg(*time.recommended + 1)
                             .arg(opening(*time.recommended));
    const QString last = FaceText::tr("The %1 still fits through up to round %2 (%3).")
                             .arg(washer)
                             .arg(*time.last_by_washer + 1)
                             .arg(opening(*time.last_by_washer));
    const QString fingers =
        time.last_by_fingers ? FaceText::tr("Fingers reach in up to round %1.").arg(*time.last_by_fingers + 1)
                             : FaceText::tr("Fingers barely reach in: press the washer on with a tool.");
    return FaceText::tr("%1 %2 %3").arg(when, last, fingers);
}

QString step_words(const WorkStep& step, const Piece& piece) {
    switch (step.kind) {
        case StepKind::fit_feature: {
            const Feature& feature = piece.features[static_cast<std::size_t>(step.feature)];
            return FaceText::tr("Insert the %1, %2.").arg(feature_with_size(feature), feature_place(feature));
        }
        case StepKind::begin_stuffing:
            return FaceText::tr("Start stuffing.");
        case StepKind::finish_stuffing:
            return FaceText::tr("Finish stuffing: after this the opening is too small.");
        case StepKind::stuff:
            return FaceText::tr("Stuff it.");
    }
    return {};
}

QString safety_words(const Feature& feature) {
    if (!has_rigid_part(feature.kind))
        return FaceText::tr("Stitched details have no loose parts. Fasten the ends well inside.");
    const QString fit =
        fits_small_parts_cylinder(rigid_part(feature))
            ? FaceText::tr("It fits the small-parts cylinder of 16 CFR 1501.4 and EN 71-1.")
            : FaceText::tr(
                  "By its size it does not fit the small-parts cylinder of 16 CFR 1501.4 and EN 71-1.");
    return FaceText::
        tr("Small parts are a choking hazard. %1 In the EU, cuddly toys count as toys for children under "
           "three, whatever the label says: embroider or sew instead. Follow the rules where you sell; an "
           "accredited laboratory can test. Nothing is certified here.")
            .arg(fit);
}

}  // namespace roundwright
