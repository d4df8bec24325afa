#include "render/wording/measure_words.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include "render/wording/length_text.h"

namespace roundwright {

namespace {

struct MeasureWords {
    Q_DECLARE_TR_FUNCTIONS(MeasureWords)
};

QString with_range(const QString& measure, double mm, const Range& range, LengthUnit units) {
    const QString between = length_range_text(range.low, range.high, units);
    return between == length_number(mm, units) ? measure : QStringLiteral("%1 (%2)").arg(measure, between);
}

}  // namespace

QString width_words(double mm, const Range& range, LengthUnit units) {
    return with_range(MeasureWords::tr("%1 wide").arg(length_text(mm, units)), mm, range, units);
}

QString depth_words(double mm, const Range& range, LengthUnit units) {
    return with_range(MeasureWords::tr("%1 deep").arg(length_text(mm, units)), mm, range, units);
}

QString height_words(double mm, const Range& range, LengthUnit units) {
    if (length_number(mm, units) == length_number(0, units)) return MeasureWords::tr("flat");
    return with_range(MeasureWords::tr("%1 tall").arg(length_text(mm, units)), mm, range, units);
}

QString sizes_kept_whole(QString words) {
    // What follows a unit says which length it is ("84 mm wide"), in whatever language.
    static const QRegularExpression after_unit(QStringLiteral("(\u00a0[^\\s,;.:]+) (?=\\S)"));
    const QString word_joiner = QStringLiteral("\u2060");
    const QString dash = QStringLiteral("\u2013");
    words.replace(after_unit, QStringLiteral("\\1\u00a0"));
    words.replace(QStringLiteral(" ("), QStringLiteral("\u00a0("));
    return words.replace(dash, word_joiner + dash + word_joiner);
}

}  // namespace roundwright
