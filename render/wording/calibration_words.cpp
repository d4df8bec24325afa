#include "render/wording/calibration_words.h"

#include <algorithm>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/as_sentence.h"
#include "render/wording/length_text.h"

namespace roundwright {
namespace {

struct CalibrationText {
    Q_DECLARE_TR_FUNCTIONS(Calibration)
};

QString percent(double part) { return QLocale().toString(100 * part, 'f', part < 0.1 ? 1 : 0); }

QString value_name(CalibratedValue value) {
    switch (value) {
        case CalibratedValue::stitch_width:
            return CalibrationText::tr("how wide a stitch is");
        case CalibratedValue::round_height:
            return CalibrationText::tr("how tall a round is");
        case CalibratedValue::area_stretch:
            return CalibrationText::tr("how far the stuffing stretches the fabric");
    }
    return {};
}

QString free_words(CalibratedValue value) {
    return value == CalibratedValue::area_stretch
               ? CalibrationText::tr(
                     "These measurements say little about %1, so it stays close to the piece's stuffing.")
                     .arg(value_name(value))
               : CalibrationText::tr(
                     "These measurements say little about %1, so it stays close to a typical value. Another "
                     "measurement, or a swatch, would settle it.")
                     .arg(value_name(value));
}

QString together_words(CalibratedValue one, CalibratedValue other) {
    const bool with_stretch = other == CalibratedValue::area_stretch;
    if (!with_stretch)
        return CalibrationText::tr(
            "They cannot tell wide stitches in short rounds from narrow stitches in tall rounds: both "
            "measure the same.");
    return one == CalibratedValue::stitch_width
               ? CalibrationText::tr(
                     "They cannot tell narrow stitches, firmly stuffed, from "
                     "wide stitches, softly stuffed: both measure the same.")
               : CalibrationText::tr(
                     "They cannot tell short rounds, firmly stuffed, from "
                     "tall rounds, softly stuffed: both measure the same.");
}

QString disagreement_words(const Calibration& found, const std::vector<Measured>& measured, std::size_t which,
                           LengthUnit units) {
    if (which >= measured.size() || which >= found.modelled_mm.size()) return {};
    const QString name = measured_name(measured[which]);
    const QString sentence =
        measured.size() > 1
            ? CalibrationText::tr(
                  "%1 does not fit with the rest: it should be %2, and was measured as %3. Measure it again, "
                  "or check that the rounds were worked as written.")
            : CalibrationText::tr(
                  "%1 does not fit with what is known: it should be %2, and was measured as %3.");
    return as_sentence(sentence.arg(name, fine_length_text(found.modelled_mm[which], units),
                                    fine_length_text(measured[which].mm, units)));
}

QString note_words(const CalibrationNote& note, const Calibration& found,
                   const std::vector<Measured>& measured, LengthUnit units) {
    switch (note.code) {
        case CalibrationCode::unusable_piece:
            return CalibrationText::tr(
                "Nothing to go on yet: this takes a piece with rounds and one measurement.");
        case CalibrationCode::left_free:
            return free_words(note.value);
        case CalibrationCode::not_told_apart:
            return together_words(note.value, note.other);
        case CalibrationCode::measurements_disagree:
            return disagreement_words(found, measured, note.measured, units);
        case CalibrationCode::not_converged:
            return CalibrationText::tr("No gauge fits these measurements.");
    }
    return {};
}

}  // namespace

QString gauge_words(const Gauge& gauge, LengthUnit units) {
    return CalibrationText::tr("A stitch is %1 wide, a round %2 tall.")
        .arg(fine_length_with_range(gauge.stitch_width_mm, gauge.stitch_width_error_mm, units),
             fine_length_with_range(gauge.round_height_mm, gauge.round_height_error_mm, units));
}

QString calibration_words(const Calibration& found, LengthUnit units) {
    if (!found.usable()) return {};
    QStringList sentences{gauge_words(found.gauge, units)};
    if (found.area_stretch_error > 0)
        sentences << CalibrationText::tr("Fabric stretch: %1 % (%2–%3).")
                         .arg(percent(found.area_stretch),
                              percent(std::max(0.0, found.area_stretch - found.area_stretch_error)),
                              percent(found.area_stretch + found.area_stretch_error));
    sentences << CalibrationText::tr("Typical difference from your measurements: %1.")
                     .arg(fine_length_text(found.residual_mm, units));
    return sentences.join(QLatin1Char(' '));
}

QStringList calibration_note_words(const Calibration& found, const std::vector<Measured>& measured,
                                   LengthUnit units) {
    QStringList sentences;
    for (const CalibrationNote& note : found.notes) sentences << note_words(note, found, measured, units);
    return sentences;
}

QString measured_name(const Measured& measured) {
    switch (measured.of) {
        case MeasuredOf::width:
            return CalibrationText::tr("the width");
        case MeasuredOf::height:
            return CalibrationText::tr("the height");
        case MeasuredOf::circumference:
            return CalibrationText::tr("the circumference");
        case MeasuredOf::circumference_of_round:
            return CalibrationText::tr("the circumference of round %1").arg(measured.round + 1);
    }
    return {};
}

const char* measured_of_name(MeasuredOf of) {
    switch (of) {
        case MeasuredOf::width:
            return "width";
        case MeasuredOf::height:
            return "height";
        case MeasuredOf::circumference:
            return "circumference";
        case MeasuredOf::circumference_of_round:
            return "circumference_of_round";
    }
    return "";
}

const char* calibration_code_name(CalibrationCode code) {
    switch (code) {
        case CalibrationCode::unusable_piece:
            return "unusable_piece";
        case CalibrationCode::left_free:
            return "left_free";
        case CalibrationCode::not_told_apart:
            return "not_told_apart";
        case CalibrationCode::measurements_disagree:
            return "measurements_disagree";
        case CalibrationCode::not_converged:
            return "not_converged";
    }
    return "";
}

const char* calibrated_value_name(CalibratedValue value) {
    switch (value) {
        case CalibratedValue::stitch_width:
            return "stitch_width";
        case CalibratedValue::round_height:
            return "round_height";
        case CalibratedValue::area_stretch:
            return "area_stretch";
    }
    return "";
}

}  // namespace roundwright
