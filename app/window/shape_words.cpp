#include "app/window/shape_words.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "app/session/length_text.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("ShapeWords", text); }

/// Every length of the shape grows with the gauge's; where width and height of a stitch may be off by
/// different parts, the larger part counts.
double relative_gauge_error(const Gauge& gauge) {
    if (gauge.stitch_width_mm <= 0 || gauge.round_height_mm <= 0) return 0;
    return std::max(gauge.stitch_width_error_mm / gauge.stitch_width_mm,
                    gauge.round_height_error_mm / gauge.round_height_mm);
}

QString measure_words(const QString& pattern, double mm, double error, LengthUnit units) {
    const QString range = length_range_text(mm * (1 - error), mm * (1 + error), units);
    const QString size = pattern.arg(length_text(mm, units));
    return range == length_number(mm, units) ? size : QStringLiteral("%1 (%2)").arg(size, range);
}

QString proportion_words(double height_over_width) {
    if (height_over_width < 0.12) return tr("flat");
    if (height_over_width < 0.5) return tr("a low bowl, much wider than tall");
    if (height_over_width < 0.9) return tr("wider than tall");
    if (height_over_width <= 1.1) return tr("about as tall as wide");
    if (height_over_width <= 2) return tr("taller than wide");
    return tr("long and slim");
}

QString end_words(MeridianEnd first, MeridianEnd last) {
    const bool starts_closed = first != MeridianEnd::open;
    const bool ends_closed = last != MeridianEnd::open;
    if (starts_closed && ends_closed) return tr("closed at both ends");
    if (starts_closed) return tr("open at the last round");
    return ends_closed ? tr("open at the start") : tr("open at both ends");
}

}  // namespace

QString size_words(const PieceStudy& study, LengthUnit units) {
    const double error = relative_gauge_error(study.gauge);
    return QStringLiteral("%1, %2").arg(measure_words(tr("%1 wide"), study.shape.width_mm, error, units),
                                        measure_words(tr("%1 tall"), study.shape.height_mm, error, units));
}

QString shape_words(const PieceStudy& study) {
    const auto& radius = study.shape.radius_mm;
    if (radius.empty() || study.shape.width_mm <= 0) return {};
    const auto widest = std::ranges::max_element(radius) - radius.begin();
    return tr("%1, widest at round %2, %3")
        .arg(proportion_words(study.shape.height_mm / study.shape.width_mm))
        .arg(std::max<std::ptrdiff_t>(widest, 1))
        .arg(end_words(study.problem.first, study.problem.last));
}

}  // namespace roundwright::app
