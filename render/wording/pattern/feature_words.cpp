#include "render/wording/pattern/feature_words.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/face/feature_fit.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/printable.h"

namespace roundwright::render {
namespace {

QString kind_name(FeatureKind kind, bool pair) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return pair ? Pattern::tr("safety eyes") : Pattern::tr("safety eye");
        case FeatureKind::safety_nose:
            return pair ? Pattern::tr("safety noses") : Pattern::tr("safety nose");
        case FeatureKind::embroidered_eye:
            return pair ? Pattern::tr("embroidered eyes") : Pattern::tr("embroidered eye");
        case FeatureKind::felt_disc:
            return pair ? Pattern::tr("felt discs") : Pattern::tr("felt disc");
        case FeatureKind::stitched_line:
            return pair ? Pattern::tr("stitched lines") : Pattern::tr("stitched line");
    }
    return {};
}

/// What is bought, by its number: "4 safety eyes".
QString counted_name(FeatureKind kind, int count) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return Pattern::tr("%n safety eye(s)", nullptr, count);
        case FeatureKind::safety_nose:
            return Pattern::tr("%n safety nose(s)", nullptr, count);
        case FeatureKind::felt_disc:
            return Pattern::tr("%n felt disc(s)", nullptr, count);
        case FeatureKind::embroidered_eye:
        case FeatureKind::stitched_line:
            break;
    }
    return {};
}

/// Eyes and washers are sold by the millimetre everywhere.
QString part_size(const Feature& feature) {
    if (feature.kind == FeatureKind::stitched_line) return {};
    const QString width = number_words(feature.width_mm);
    if (feature.height_mm == feature.width_mm) return Pattern::tr("%1 mm").arg(width);
    return Pattern::tr("%1 × %2 mm").arg(width, number_words(feature.height_mm));
}

/// "9 mm safety eyes".
QString sized(const QString& name, const Feature& feature) {
    const QString size = part_size(feature);
    return size.isEmpty() ? name : Pattern::tr("%1 %2").arg(size, name);
}

/// A count that may end in a half.
QString stitches_from_middle(double count) {
    return count == std::floor(count) ? Pattern::tr("%n stitch(es)", nullptr, static_cast<int>(count))
                                      : Pattern::tr("%1 stitches").arg(number_words(count));
}

/// As the viewer sees it.
QString side_words(double stitches_right, Terms terms) {
    if (stitches_right == 0)
        return by_terms(terms, Pattern::tr("centered on the face"), Pattern::tr("in the middle of the face"));
    const QString stitches = stitches_from_middle(std::abs(stitches_right));
    return (stitches_right > 0 ? by_terms(terms, Pattern::tr("%1 right of center as you look at it"),
                                          Pattern::tr("%1 right of the middle as you look at it"))
                               : by_terms(terms, Pattern::tr("%1 left of center as you look at it"),
                                          Pattern::tr("%1 left of the middle as you look at it")))
        .arg(stitches);
}

QString gap_words(int round) { return Pattern::tr("between rounds %1 and %2").arg(round + 1).arg(round + 2); }

QString between_words(int stitches) {
    return Pattern::tr("with %n stitch(es) between them", nullptr, stitches);
}

QString line_words(const Feature& feature, Terms terms) {
    const QString from =
        feature.pair ? between_words(feature.stitches_apart) : side_words(feature.stitches_right, terms);
    const QString end =
        feature.pair ? by_terms(terms, Pattern::tr("%1 from center"), Pattern::tr("%1 from the middle"))
                           .arg(stitches_from_middle(std::abs(feature.end_stitches_right)))
                     : side_words(feature.end_stitches_right, terms);
    return Pattern::tr("from %1, %2, to %3, %4")
        .arg(gap_words(feature.round), from, gap_words(feature.end_round), end);
}

struct Bought {
    FeatureKind kind;
    double width_mm;
    double height_mm;
    int count;
    Feature sample;
};

void add(std::vector<Bought>& all, const Feature& feature, int count) {
    const auto same = std::find_if(all.begin(), all.end(), [&](const Bought& bought) {
        return bought.kind == feature.kind && bought.width_mm == feature.width_mm &&
               bought.height_mm == feature.height_mm;
    });
    if (same != all.end()) {
        same->count += count;
    } else {
        all.push_back({feature.kind, feature.width_mm, feature.height_mm, count, feature});
    }
}

bool is_bought(FeatureKind kind) { return has_washer(kind) || kind == FeatureKind::felt_disc; }

QString kind_name(const Feature& feature) { return kind_name(feature.kind, feature.pair); }

std::vector<Bought> bought_features(const Toy& toy) {
    std::vector<Bought> all;
    for (const Piece& piece : toy.pieces) {
        for (const Feature& feature : piece.features) {
            if (is_bought(feature.kind)) add(all, feature, (feature.pair ? 2 : 1) * piece.make);
        }
    }
    return all;
}

}  // namespace

QString own_feature_name(const Feature& feature) {
    const QString own = printable_line(feature.name);
    const QString kind = QLatin1Char(' ') + kind_name(feature);
    const bool says_no_more = kind.endsWith(QLatin1Char(' ') + own, Qt::CaseInsensitive);
    return says_no_more ? QString() : own;
}

QString feature_kind_words(const Feature& feature) { return sized(kind_name(feature), feature); }

QString feature_place_words(const Feature& feature, Terms terms) {
    if (feature.kind == FeatureKind::stitched_line) return line_words(feature, terms);
    return Pattern::tr("%1, %2").arg(
        gap_words(feature.round),
        feature.pair ? between_words(feature.stitches_apart) : side_words(feature.stitches_right, terms));
}

QString feature_measure_words(const Feature& feature, const FeatureMeasures& measures, LengthUnit units) {
    QStringList parts;
    if (feature.pair) {
        parts += Pattern::tr("%1 apart in a straight line").arg(length_words(measures.straight_mm, units));
        parts += Pattern::tr("%1 over the fabric").arg(length_words(measures.along_surface_mm, units));
    }
    // On what lies flat nothing is above anything.
    constexpr double least_height_mm = 0.5;
    if (measures.height_mm >= least_height_mm)
        parts += Pattern::tr("%1 above the lowest point").arg(length_words(measures.height_mm, units));
    return parts.join(QStringLiteral(", "));
}

QString fit_now_words(const Feature& feature, Terms terms) {
    const QString own = own_feature_name(feature);
    const QString fit = Pattern::tr("Insert the %1 now, %2.")
                            .arg(feature_kind_words(feature), feature_place_words(feature, terms));
    return own.isEmpty() ? fit : Pattern::tr("%1: %2").arg(own, fit);
}

QString bought_heading_words(const Toy& toy) {
    const std::vector<Bought> all = bought_features(toy);
    const auto has = [&](FeatureKind kind) {
        return std::any_of(all.begin(), all.end(), [kind](const Bought& each) { return each.kind == kind; });
    };
    const bool eyes = has(FeatureKind::safety_eye);
    const bool nose = has(FeatureKind::safety_nose);
    if (has(FeatureKind::felt_disc)) return eyes || nose ? Pattern::tr("For the face") : Pattern::tr("Felt");
    if (eyes && nose) return Pattern::tr("Eyes and nose");
    return eyes ? Pattern::tr("Eyes") : Pattern::tr("Nose");
}

QStringList bought_feature_words(const Toy& toy) {
    QStringList lines;
    for (const Bought& bought : bought_features(toy)) {
        const QString count = counted_name(bought.kind, bought.count);
        const QString size = part_size(bought.sample);
        lines += has_washer(bought.kind)
                     ? Pattern::tr("%1, %2, with washer(s)", nullptr, bought.count).arg(count, size)
                     : Pattern::tr("%1, %2").arg(count, size);
    }
    return lines;
}

}  // namespace roundwright::render
