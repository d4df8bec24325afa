#include "app/cli/length_argument.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/base/units.h"

namespace roundwright::app {

std::optional<double> length_mm(const QString& text, LengthUnit units) {
    static const QRegularExpression pattern(QStringLiteral("^\\s*([0-9]*\\.?[0-9]+)\\s*(mm|cm|in|\")?\\s*$"));
    const auto match = pattern.match(text);
    if (!match.hasMatch()) return std::nullopt;
    const QString unit = match.captured(2);
    double factor = units == LengthUnit::inches ? mm_per_inch : 1;
    if (unit == QLatin1String("mm")) factor = 1;
    if (unit == QLatin1String("cm")) factor = 10;
    if (unit == QLatin1String("in") || unit == QLatin1String("\"")) factor = mm_per_inch;
    const double mm = match.captured(1).toDouble() * factor;
    return mm > 0 ? std::optional(mm) : std::nullopt;
}

std::optional<LengthWithError> length_with_error(const QString& text, LengthUnit units) {
    static const QRegularExpression plus_minus(QStringLiteral("\\+-|\u00B1"));
    const QStringList parts = text.split(plus_minus);
    const auto mm = length_mm(parts[0], units);
    if (!mm || parts.size() > 2) return std::nullopt;
    if (parts.size() == 1) return LengthWithError{*mm, std::nullopt};
    const auto error = length_mm(parts[1], units);
    return error ? std::optional(LengthWithError{*mm, error}) : std::nullopt;
}

}  // namespace roundwright::app
