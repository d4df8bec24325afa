#pragma once

#include "core/reshape/resize.h"
#include "core/reshape/silhouette.h"
#include "core/toy/toy.h"

namespace roundwright {

enum class FormKind { ball, egg, pear, cone, cylinder, bell, gourd, half_ball };

/// A form to start a piece from, with its finished sizes.
struct Form {
    FormKind kind = FormKind::ball;
    double width_mm = 60;   ///< largest diameter
    double height_mm = 60;  ///< a half ball's is half its width, whatever is given
    double top_width_mm =
        0;  ///< pear and gourd: of the upper part; cone: of its top (0: a tip); bell: of the dome
    double waist_width_mm = 0;  ///< gourd: between the two parts
    bool closed = true;         ///< cone, cylinder, bell, half ball: the flat end is worked too
};

/// A form with sizes in usual proportions, of this width.
[[nodiscard]] Form usual_form(FormKind kind, double width_mm);

/// Worked from the top: cone, bell and half ball.
[[nodiscard]] bool starts_at_top(FormKind kind);

enum class FormCode {
    good,
    size_not_positive,
    top_not_narrower,    ///< a pear's, cone's or bell's top must be narrower than the whole
    waist_not_narrower,  ///< a gourd's waist must be narrower than its top, and the top no wider than the
                         ///< whole
};
[[nodiscard]] FormCode form_code(const Form& form);

/// The outline of a form, in the order it is worked: cone, bell and half ball from the top, the others from
/// the bottom. z grows from the start. With u the height from 0 to 1, W the width, H the height:
///
/// - ball: r = W sqrt(u (1 - u)), an ellipse; a circle if H = W
/// - egg: r ~ sqrt(u (1 - u)) (1.25 - u / 2), the blunt end below; scaled to W
/// - pear: r ~ sqrt(u (1 - u)) g(u), where g falls from 1 to the top's share by a smooth step
/// - gourd: two such parts joined by a smooth step, with a waist between them
/// - cone: straight from top to base
/// - cylinder: flat base, straight wall, flat lid
/// - bell: a quarter of an ellipse down to the dome's width, then flaring with the square of the height
/// - half ball: a quarter circle
///
/// Drawn with 400 points a curve: the arc length is right to 1 in 10^5.
[[nodiscard]] Silhouette silhouette_of(const Form& form);

/// Where the counts of a form come from.
enum class FormCounts {
    nearest_stitch,  ///< the form itself: each round the nearest whole number that can be worked. On a ball
                     ///< the handbook circle, N(s) = 2 pi R sin(s / R) / w, with the stretch of the stuffing,
                     ///< at the places s = k pi R / (n + 1) of n rounds, the same from both poles. The size
                     ///< of the solved shape is what it is, and the code says whether that is the form's
    size,  ///< the solved shape: corrected until that has the form's size, and as tidy as the options say.
           ///< Counts may be some stitches off the circle then
};

/// A piece for a form, in single crochet, begun with `usual_start_count`. Where it is not stuffed, the rounds
/// of a base that lie flat are marked so.
[[nodiscard]] Reshaped piece_from_form(const Form& form, const Gauge& gauge,
                                       double area_stretch = medium_stuffing_stretch,
                                       FormCounts counts = FormCounts::size, ReshapeOptions options = {});

/// A piece for an outline drawn from nothing, in single crochet; `start_count` stitches in the ring.
[[nodiscard]] Reshaped piece_from_silhouette(const Silhouette& outline, const Gauge& gauge,
                                             double area_stretch, int start_count,
                                             const ReshapeOptions& options = {});

}  // namespace roundwright
