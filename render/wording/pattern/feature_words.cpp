#include "render/wording/pattern/feature_words.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/face/feature_fit.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/printable.h"

namespace roundwright::render {
namespace {

struct KindNames {
    const char* one;
    const char* many;
};

KindNames names(FeatureKind kind) {
    switch (kind) {
        case FeatureKind::safety_eye:
            return {"safety eye", "safety eyes"};
        case FeatureKind::safety_nose:
            return {"safety nose", "safety noses"};
        case FeatureKind::embroidered_eye:
            return {"embroidered eye", "embroidered eyes"};
        case FeatureKind::felt_disc:
            return {"felt disc", "felt discs"};
        case FeatureKind::stitched_line:
            return {"stitched line", "stitched lines"};
    }
    return {"", ""};
}

/// Eyes and washers are sold by the millimetre everywhere.
QString part_size(const Feature& feature) {
    if (feature.kind == FeatureKind::stitched_line) return {};
    const QString width = number_words(feature.width_mm);
    if (feature.height_mm == feature.width_mm) return words("%1 mm").arg(width);
    return words("%1 × %2 mm").arg(width, number_words(feature.height_mm));
}

/// "9 mm safety eyes".
QString sized(const QString& name, const Feature& feature) {
    const QString size = part_size(feature);
    return size.isEmpty() ? name : words("%1 %2").arg(size, name);
}

/// As the viewer sees it.
QString side_words(double stitches_right, Terms terms) {
    if (stitches_right == 0) return words(terms, "centered on the face", "in the middle of the face");
    const QString stitches = std::abs(stitches_right) == 1
                                 ? words("1 stitch")
                                 : words("%1 stitches").arg(number_words(std::abs(stitches_right)));
    return (stitches_right > 0 ? words(terms, "%1 right of center as you look at it",
                                       "%1 right of the middle as you look at it")
                               : words(terms, "%1 left of center as you look at it",
                                       "%1 left of the middle as you look at it"))
        .arg(stitches);
}

QString gap_words(int round) { return words("between rounds %1 and %2").arg(round + 1).arg(round + 2); }

QString between_words(int stitches) {
    return words("with %1 between them").arg(counted(stitches, "stitch", "stitches"));
}

QString line_words(const Feature& feature, Terms terms) {
    const QString from =
        feature.pair ? between_words(feature.stitches_apart) : side_words(feature.stitches_right, terms);
    const QString end = feature.pair ? words(terms, "%1 stitches from center", "%1 stitches from the middle")
                                           .arg(number_words(feature.end_stitches_right))
                                     : side_words(feature.end_stitches_right, terms);
    return words("from %1, %2, to %3, %4")
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

QString kind_name(const Feature& feature) {
    const KindNames kind = names(feature.kind);
    return words(feature.pair ? kind.many : kind.one);
}

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
    return words("%1, %2").arg(gap_words(feature.round), feature.pair
                                                             ? between_words(feature.stitches_apart)
                                                             : side_words(feature.stitches_right, terms));
}

QString feature_measure_words(const Feature& feature, const FeatureMeasures& measures, LengthUnit units) {
    QStringList parts;
    if (feature.pair) {
        parts += words("%1 apart in a straight line").arg(length_words(measures.straight_mm, units));
        parts += words("%1 over the fabric").arg(length_words(measures.along_surface_mm, units));
    }
    parts += words("%1 above the lowest point").arg(length_words(measures.height_mm, units));
    return parts.join(QStringLiteral(", "));
}

QString fit_now_words(const Feature& feature, Terms terms) {
    const QString own = own_feature_name(feature);
    const QString fit =
        words("Insert the %1 now, %2.").arg(feature_kind_words(feature), feature_place_words(feature, terms));
    return own.isEmpty() ? fit : words("%1: %2").arg(own, fit);
}

QString bought_heading_words(const Toy& toy) {
    const std::vector<Bought> all = bought_features(toy);
    const auto has = [&](FeatureKind kind) {
        return std::any_of(all.begin(), all.end(), [kind](const Bought& each) { return each.kind == kind; });
    };
    const bool eyes = has(FeatureKind::safety_eye);
    const bool nose = has(FeatureKind::safety_nose);
    if (has(FeatureKind::felt_disc)) return eyes || nose ? words("For the face") : words("Felt");
    if (eyes && nose) return words("Eyes and nose");
    return eyes ? words("Eyes") : words("Nose");
}

QStringList bought_feature_words(const Toy& toy) {
    QStringList lines;
    for (const Bought& bought : bought_features(toy)) {
        const KindNames kind = names(bought.kind);
        const QString size = part_size(bought.sample);
        QString line = words("%1, %2").arg(counted(bought.count, kind.one, kind.many), size);
        if (has_washer(bought.kind)) line += words(bought.count == 1 ? ", with washer" : ", with washers");
        lines += line;
    }
    return lines;
}

}  // namespace roundwright::render
