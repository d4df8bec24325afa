#include "render/wording/yarn_weight_words.h"

#include <QCoreApplication>

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

}  // namespace

QString yarn_weight_words(const YarnStandard& standard) {
    const auto name = QString::fromUtf8(standard.name.data(), static_cast<qsizetype>(standard.name.size()));
    const QString words = YarnWeightWords::tr("%1  %2").arg(standard.number).arg(name);
    const QString shop = shop_names(standard.weight);
    return shop.isEmpty() ? words : YarnWeightWords::tr("%1 (%2)").arg(words, shop);
}

}  // namespace roundwright
