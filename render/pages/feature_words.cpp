#include "render/pages/feature_words.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/face/feature_fit.h"
#include "render/pages/paragraph.h"
#include "render/pages/pattern_words.h"

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

QString with_size(const QString& name, const Feature& feature) {
    const QString size = part_size(feature);
    return size.isEmpty() ? name : words("%1, %2").arg(name, size);
}

QString side_words(double stitches_right) {
    if (stitches_right == 0) return words("on the middle of the face");
    const QString stitches = number_words(std::abs(stitches_right));
    return stitches_right > 0 ? words("%1 stitches to the right of the middle").arg(stitches)
                              : words("%1 stitches to the left of the middle").arg(stitches);
}

QString gap_words(int round) { return words("between rounds %1 and %2").arg(round + 1).arg(round + 2); }

QString apart_words(int stitches) { return words("%1 apart").arg(counted(stitches, "stitch", "stitches")); }

QString line_words(const Feature& feature) {
    const QString from =
        feature.pair ? apart_words(feature.stitches_apart) : side_words(feature.stitches_right);
    const QString end =
        feature.pair ? words("%1 stitches from the middle").arg(number_words(feature.end_stitches_right))
                     : side_words(feature.end_stitches_right);
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

}  // namespace

QString feature_name_words(const Feature& feature) {
    const QString own = printable_line(feature.name);
    if (!own.isEmpty()) return own;
    const KindNames kind = names(feature.kind);
    return words(feature.pair ? kind.many : kind.one);
}

QString feature_kind_words(const Feature& feature) {
    const KindNames kind = names(feature.kind);
    return with_size(words(feature.pair ? kind.many : kind.one), feature);
}

QString feature_place_words(const Feature& feature) {
    if (feature.kind == FeatureKind::stitched_line) return line_words(feature);
    return words("%1, %2").arg(gap_words(feature.round), feature.pair ? apart_words(feature.stitches_apart)
                                                                      : side_words(feature.stitches_right));
}

QString feature_measure_words(const Feature& feature, const FeatureMeasures& measures, Units units) {
    QStringList parts;
    if (feature.pair) {
        parts += words("%1 apart").arg(length_words(measures.straight_mm, units));
        parts += words("%1 over the fabric").arg(length_words(measures.along_surface_mm, units));
    }
    parts += words("%1 above the lowest point").arg(length_words(measures.height_mm, units));
    return parts.join(QStringLiteral(", "));
}

QString fit_now_words(const Feature& feature) {
    return words("Fit now: %1 (%2), %3.")
        .arg(feature_name_words(feature), feature_kind_words(feature), feature_place_words(feature));
}

QStringList bought_feature_words(const Toy& toy) {
    std::vector<Bought> all;
    for (const Piece& piece : toy.pieces) {
        for (const Feature& feature : piece.features) {
            if (is_bought(feature.kind)) add(all, feature, (feature.pair ? 2 : 1) * piece.make);
        }
    }
    QStringList lines;
    for (const Bought& bought : all) {
        const KindNames kind = names(bought.kind);
        QString line = with_size(counted(bought.count, kind.one, kind.many), bought.sample);
        if (has_washer(bought.kind)) line += words(", with washers");
        lines += line;
    }
    return lines;
}

}  // namespace roundwright::render
