#include "app/wording/measure_words.h"

#include "app/session/length_text.h"

namespace roundwright::app {

QString measure_words(const QString& pattern, double mm, const Range& range, LengthUnit units) {
    const QString between = length_range_text(range.low, range.high, units);
    const QString size = pattern.arg(length_text(mm, units));
    return between == length_number(mm, units) ? size : QStringLiteral("%1 (%2)").arg(size, between);
}

}  // namespace roundwright::app
