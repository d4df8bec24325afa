#include "render/wording/yarn_weight_words.h"

#include <QCoreApplication>

#include "render/wording/by_terms.h"

namespace roundwright {

namespace {

struct YarnWeightWords {
    Q_DECLARE_TR_FUNCTIONS(YarnWeightWords)
};

/// What the balls of a weight are called over the counter in the US and the UK. Source of the US names: Craft
/// Yarn Council, Standard Yarn Weight System; of the UK names: common practice.
QString shop_names(YarnWeight weight) {
    switch (weight) {
        case YarnWeight::lace:
            return YarnWeightWords::tr("lace, 2-ply");
        case YarnWeight::super_fine:
            return YarnWeightWords::tr("fingering, 4-ply");
        case YarnWeight::fine:
            return YarnWeightWords::tr("sport, 5-ply");
        case YarnWeight::light:
            return YarnWeightWords::tr("DK");
        case YarnWeight::medium:
            return YarnWeightWords::tr("worsted, aran");
        case YarnWeight::bulky:
            return YarnWeightWords::tr("bulky, chunky");
        case YarnWeight::super_bulky:
            return YarnWeightWords::tr("super chunky");
        case YarnWeight::jumbo:
            return {};
    }
    return {};
}

/// What a ball of this weight is called over the counter. Source of the US names: Craft Yarn Council,
/// Standard Yarn Weight System, "type of yarns in category"; of the UK names: common practice.
QString yarn_weight_name(YarnWeight weight, Terms terms) {
    switch (weight) {
        case YarnWeight::lace:
            return by_terms(terms, YarnWeightWords::tr("Lace"), YarnWeightWords::tr("Lace, 2-ply"));
        case YarnWeight::super_fine:
            return by_terms(terms, YarnWeightWords::tr("Fingering"), YarnWeightWords::tr("4-ply"));
        case YarnWeight::fine:
            return by_terms(terms, YarnWeightWords::tr("Sport"), YarnWeightWords::tr("Sport, 5-ply"));
        case YarnWeight::light:
            return YarnWeightWords::tr("DK");
        case YarnWeight::medium:
            return by_terms(terms, YarnWeightWords::tr("Worsted"), YarnWeightWords::tr("Aran"));
        case YarnWeight::bulky:
            return by_terms(terms, YarnWeightWords::tr("Bulky"), YarnWeightWords::tr("Chunky"));
        case YarnWeight::super_bulky:
            return by_terms(terms, YarnWeightWords::tr("Super bulky"), YarnWeightWords::tr("Super chunky"));
        case YarnWeight::jumbo:
            return YarnWeightWords::tr("Jumbo");
    }
    return {};
}

}  // namespace

QString yarn_weight_words(const YarnStandard& standard) {
    const auto name = QString::fromUtf8(standard.name.data(), static_cast<qsizetype>(standard.name.size()));
    const QString words = YarnWeightWords::tr("%1  %2").arg(standard.number).arg(name);
    const QString shop = shop_names(standard.weight);
    return shop.isEmpty() ? words : YarnWeightWords::tr("%1 (%2)").arg(words, shop);
}

QString yarn_weight_words(YarnWeight weight, Terms terms) {
    return YarnWeightWords::tr("%1 (%2)")
        .arg(yarn_weight_name(weight, terms))
        .arg(yarn_standard(weight).number);
}

}  // namespace roundwright
