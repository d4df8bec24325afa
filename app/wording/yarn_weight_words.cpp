#include "app/wording/yarn_weight_words.h"

#include <QCoreApplication>

namespace roundwright::app {

QString yarn_weight_words(const YarnStandard& standard) {
    const auto name = QString::fromUtf8(standard.name.data(), static_cast<qsizetype>(standard.name.size()));
    return QCoreApplication::translate("YarnWeightWords", "%1  %2").arg(standard.number).arg(name);
}

}  // namespace roundwright::app
