#include "render/wording/when_words.h"

#include <QCoreApplication>
#include <QLocale>

namespace roundwright {
namespace {

struct WhenText {
    Q_DECLARE_TR_FUNCTIONS(When)
};

}  // namespace

QString when_words(const QDateTime& moment, const QDateTime& now) {
    const QDateTime here = moment.toLocalTime();
    const QString time = QLocale().toString(here.time(), QLocale::ShortFormat);
    const auto days = here.date().daysTo(now.toLocalTime().date());
    if (days == 0) return WhenText::tr("today %1").arg(time);
    if (days == 1) return WhenText::tr("yesterday %1").arg(time);
    return WhenText::tr("%1 %2").arg(QLocale().toString(here.date(), QLocale::ShortFormat), time);
}

}  // namespace roundwright
