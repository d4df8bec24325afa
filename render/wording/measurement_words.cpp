#include "render/wording/measurement_words.h"

#include <cmath>

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QStringList>

#include "render/wording/as_sentence.h"
#include "render/wording/calibration_words.h"
#include "render/wording/counted.h"
#include "render/wording/length_text.h"
#include "render/wording/measure_words.h"
#include "render/wording/piece_name.h"
#include "render/wording/plain_text.h"

namespace roundwright {
namespace {

struct MeasurementText {
    Q_DECLARE_TR_FUNCTIONS(Measurement)
};

QString percent(double part) {
    return MeasurementText::tr("%1\u00a0%").arg(QLocale().toString(100 * std::abs(part), 'f', 0));
}

QString number(double counted) { return QLocale().toString(counted, 'g', 4); }

/// "3 May 2026", in the order that QLocale takes from the format; a day that cannot be read stands as it is.
QString day_words(const std::string& day) {
    const QDate date = QDate::fromString(QString::fromStdString(day), Qt::ISODate);
    if (!date.isValid()) return name_in_words(day);
    return QLocale().toString(date, MeasurementText::tr("d MMMM yyyy"));
}

QString kind_words(const SwatchGauge&) { return MeasurementText::tr("the swatch"); }
QString kind_words(const CircleGauge&) { return MeasurementText::tr("the circle"); }
QString kind_words(const FinishedPieceGauge& finished) {
    const QString piece = name_in_words(finished.piece);
    return piece.isEmpty() ? MeasurementText::tr("the finished piece")
                           : MeasurementText::tr("the finished %1").arg(piece);
}
QString kind_words(const GivenGauge& given) {
    return given.found_on.empty() ? MeasurementText::tr("the known stitch size")
                                  : MeasurementText::tr("the finished %1").arg(name_in_words(given.found_on));
}

QString lie_words(CircleLie lie) {
    switch (lie) {
        case CircleLie::flat:
            return {};
        case CircleLie::cups:
            return MeasurementText::tr(", cups");
        case CircleLie::ruffles:
            return MeasurementText::tr(", ruffles");
    }
    return {};
}

QString what_words(const SwatchGauge& swatch, LengthUnit units) {
    const QString words = swatch.worked_in_rows ? MeasurementText::tr("%1 stitches in %2, %3 rows in %4")
                                                : MeasurementText::tr("%1 stitches in %2, %3 rounds in %4");
    return words.arg(number(swatch.stitches), fine_length_text(swatch.width_mm, units), number(swatch.rounds),
                     fine_length_text(swatch.height_mm, units));
}

QString what_words(const CircleGauge& circle, LengthUnit units) {
    return MeasurementText::tr("%1 of %2, %3 across")
               .arg(rounds_words(circle.rounds))
               .arg(circle.increases)
               .arg(fine_length_text(circle.across_mm, units)) +
           lie_words(circle.lie);
}

QString what_words(const GivenGauge& given, LengthUnit units) {
    return MeasurementText::tr("stitch %1, round %2")
        .arg(fine_length_text(given.gauge.stitch_width_mm, units),
             fine_length_text(given.gauge.round_height_mm, units));
}

/// "the width 82 mm, the height 76 mm"
QString what_words(const FinishedPieceGauge& finished, LengthUnit units) {
    QStringList lengths;
    for (const Measured& measured : finished.measured)
        lengths << QStringLiteral("%1 %2").arg(measured_name(measured), fine_length_text(measured.mm, units));
    return lengths.join(QStringLiteral(", "));
}

QString candidate_words(const NextMeasurement& next, const Toy& toy) {
    switch (next.kind) {
        case NextMeasurementKind::circle:
            return MeasurementText::tr("a gauge circle of five rounds");
        case NextMeasurementKind::swatch_in_rounds:
            return MeasurementText::tr("a swatch worked in the round");
        case NextMeasurementKind::finished_piece:
            break;
    }
    const QString words = next.finished ? MeasurementText::tr("%1 of the finished %2")
                                        : MeasurementText::tr("%1 of the %2, once it is finished");
    return words.arg(measured_name({next.of}), piece_name(toy, next.piece));
}

}  // namespace

QString measurement_name(const GaugeMeasurement& measurement) {
    const QString kind = std::visit([](const auto& what) { return kind_words(what); }, measurement.what);
    if (!measurement.name.empty())
        return MeasurementText::tr("%1 “%2”").arg(kind, name_in_words(measurement.name));
    if (measurement.measured_on.empty()) return kind;
    return MeasurementText::tr("%1 of %2").arg(kind, day_words(measurement.measured_on));
}

QString measurement_words(const GaugeMeasurement& measurement, LengthUnit units) {
    return std::visit([&](const auto& what) { return what_words(what, units); }, measurement.what);
}

QString share_words(const GaugeMeasurement& measurement, const MeasurementPart& part) {
    if (!measurement.counts) return MeasurementText::tr("left out");
    if (!(part.share > 0)) return MeasurementText::tr("cannot be used");
    return MeasurementText::tr("counts for %1").arg(percent(part.share));
}

QString disagreement_words(const SeveralGauge& several, const CombinedGauge& combined) {
    if (!combined.disagrees) return {};
    const std::size_t odd = *combined.disagrees;
    const MeasurementPart& part = combined.parts[odd];
    QString others = MeasurementText::tr("the others");
    for (std::size_t i = 0; i < combined.parts.size() && combined.counted() == 2; ++i)
        if (i != odd && combined.parts[i].share > 0) others = measurement_name(several.measurements[i]);
    const QString words =
        part.how == Differs::ratio
            ? (part.by > 0 ? MeasurementText::tr("%1 gives rounds %2 taller for their width than %3.")
                           : MeasurementText::tr("%1 gives rounds %2 lower for their width than %3."))
            : (part.by > 0 ? MeasurementText::tr("%1 gives stitches %2 larger than %3.")
                           : MeasurementText::tr("%1 gives stitches %2 smaller than %3."));
    return as_sentence(words.arg(measurement_name(several.measurements[odd]), percent(part.by), others)) +
           QLatin1Char(' ') + MeasurementText::tr("Measure it again, or leave it out.");
}

QString next_measurement_words(const std::vector<NextMeasurement>& next, const Toy& toy) {
    if (next.empty()) return {};
    const QString now = percent(next.front().error_before);
    const QString then = percent(next.front().error_after);
    if (now == then) return {};
    return MeasurementText::tr("What would help most: %1. Sizes would be good to about %2 instead of %3.")
        .arg(candidate_words(next.front(), toy), then, now);
}

QString circle_task_words() {
    return MeasurementText::tr(
        "Work five rounds: six stitches, then six more each round, to 30. Lay the circle flat and measure "
        "across.");
}

QString expected_circle_words(const Range& across_mm, LengthUnit units) {
    return MeasurementText::tr("Expected with this yarn and hook: %1 to %2.")
        .arg(length_number(across_mm.low, units), length_text(across_mm.high, units));
}

QString circle_would_help_words(const Range& width_mm, const Range& with_circle_mm, LengthUnit units) {
    const QString now = length_range_text(width_mm.low, width_mm.high, units);
    const QString then = length_range_text(with_circle_mm.low, with_circle_mm.high, units);
    if (now == then) return {};
    return MeasurementText::tr(
               "In your hand it could come out %1 to %2 wide; one measured circle brings that to "
               "%3 to %4.")
        .arg(length_number(width_mm.low, units), length_text(width_mm.high, units),
             length_number(with_circle_mm.low, units), length_text(with_circle_mm.high, units));
}

const char* differs_name(Differs how) { return how == Differs::ratio ? "ratio" : "size"; }

const char* next_measurement_name(NextMeasurementKind kind) {
    switch (kind) {
        case NextMeasurementKind::circle:
            return "circle";
        case NextMeasurementKind::swatch_in_rounds:
            return "swatch_in_rounds";
        case NextMeasurementKind::finished_piece:
            return "finished_piece";
    }
    return "";
}

}  // namespace roundwright
