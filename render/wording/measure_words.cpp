#include "render/wording/measure_words.h"

#include <QCoreApplication>

#include "render/wording/length_text.h"

namespace roundwright {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("MeasureWords", text); }

QString with_range(const QString& measure, double mm, const Range& range, LengthUnit units) {
    const QString between = length_range_text(range.low, range.high, units);
    return between == length_number(mm, units) ? measure : QStringLiteral("%1 (%2)").arg(measure, between);
}

}  // namespace

QString width_words(double mm, const Range& range, LengthUnit units) {
    return with_range(tr("%1 wide").arg(length_text(mm, units)), mm, range, units);
}

QString height_words(double mm, const Range& range, LengthUnit units) {
    if (length_number(mm, units) == length_number(0, units)) return tr("flat");
    return with_range(tr("%1 tall").arg(length_text(mm, units)), mm, range, units);
}

QString sizes_kept_whole(QString words) {
    const QString no_break_space = QStringLiteral("\u00a0");
    const QString word_joiner = QStringLiteral("\u2060");
    const QString dash = QStringLiteral("\u2013");
    for (const char* glued : {"(", "wide", "tall"})
        words.replace(u' ' + QLatin1String(glued), no_break_space + QLatin1String(glued));
    return words.replace(dash, word_joiner + dash + word_joiner);
}

}  // namespace roundwright
