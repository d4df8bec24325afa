#include "render/wording/pattern/pattern_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/units.h"
#include "render/wording/length_text.h"

namespace roundwright::render {
namespace {

/// A length without its unit. Inches are to the eighth, and never none: what is in a pattern has a size.
QString bare_length(double mm, LengthUnit units) {
    const double shown = units == LengthUnit::inches ? std::max(mm, mm_per_inch / 8) : mm;
    return length_number(shown, units, NumberStyle::printed);
}

}  // namespace

QString length_words(double mm, LengthUnit units) {
    return QStringLiteral("%1 %2").arg(bare_length(mm, units), unit_name(units));
}

QString length_words(const Estimate& mm, LengthUnit units) {
    const QString low = bare_length(mm.low, units);
    const QString high = bare_length(mm.high, units);
    if (low == high) return length_words(mm.likely, units);
    return Pattern::tr("%1 (%2 to %3)").arg(length_words(mm.likely, units), low, high);
}

QString size_words(double width_mm, double height_mm, LengthUnit units) {
    return Pattern::tr("%1 × %2 %3")
        .arg(bare_length(width_mm, units), bare_length(height_mm, units), unit_name(units));
}

QString level_words(Level level) {
    switch (level) {
        case Level::basic:
            return Pattern::tr("Basic");
        case Level::easy:
            return Pattern::tr("Easy");
        case Level::intermediate:
            return Pattern::tr("Intermediate");
        case Level::complex:
            return Pattern::tr("Complex");
    }
    return {};
}

}  // namespace roundwright::render
