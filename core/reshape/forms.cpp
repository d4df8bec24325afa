#include "core/reshape/forms.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/lie.h"

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr int curve_points = 400;

double smooth_step(double t) {
    t = std::clamp(t, 0.0, 1.0);
    return t * t * (3 - 2 * t);
}

// Points close together at both ends, where a round end turns fastest.
double height_at(int i, int points) { return (1 - std::cos(pi * i / points)) / 2; }

// r(u) = scale sqrt(u (1 - u)) factor(u), as wide as wanted.
template <class Factor>
Silhouette round_ended(double width, double height, Factor factor) {
    Silhouette outline;
    for (int i = 0; i <= curve_points; ++i) {
        const double u = height_at(i, curve_points);
        const bool end = i == 0 || i == curve_points;
        outline.points.emplace_back(end ? 0 : std::sqrt(u * (1 - u)) * factor(u), height * u);
    }
    const double scale = width / width_mm(outline);
    for (Vec2& p : outline.points) p.x() *= scale;
    return outline;
}

Silhouette pear(const Form& form) {
    // The upper part is as wide as asked where it is widest; the step ends there, two thirds up the rest.
    const double top = form.top_width_mm / form.width_mm;
    return round_ended(form.width_mm, form.height_mm,
                       [top](double u) { return 1 - (1 - top) * smooth_step((u - 0.3) / 0.45); });
}

// Two ellipses, each ending on the axis, joined between their widest places by a curve through the waist.
Silhouette gourd(const Form& form) {
    const double lower = form.width_mm / 2;
    const double upper = form.top_width_mm / 2;
    const double waist = form.waist_width_mm / 2;
    const double widest = form.height_mm * lower / (lower + upper) / 2 * 1.1;
    const double narrow_end = form.height_mm - (form.height_mm - 2 * widest / 1.1) / 2 * 1.1;
    const double middle =
        widest + (narrow_end - widest) * std::sqrt(lower) / (std::sqrt(lower) + std::sqrt(upper));
    const auto radius = [=](double z) {
        if (z <= widest) return lower * std::sqrt(std::max(0.0, 1 - std::pow(1 - z / widest, 2)));
        if (z <= middle) return lower + (waist - lower) * smooth_step((z - widest) / (middle - widest));
        if (z <= narrow_end)
            return waist + (upper - waist) * smooth_step((z - middle) / (narrow_end - middle));
        const double left = form.height_mm - narrow_end;
        return upper * std::sqrt(std::max(0.0, 1 - std::pow((z - narrow_end) / left, 2)));
    };
    Silhouette outline;
    for (int i = 0; i <= curve_points; ++i) {
        const double z = form.height_mm * height_at(i, curve_points);
        outline.points.emplace_back(i == 0 || i == curve_points ? 0 : radius(z), z);
    }
    return outline;
}

Silhouette cone(const Form& form) {
    const double base = form.width_mm / 2;
    const double top = form.top_width_mm / 2;
    Silhouette outline;
    if (top > 0) outline.points.emplace_back(0, 0);
    outline.points.emplace_back(top, 0);
    outline.points.emplace_back(base, form.height_mm);
    if (form.closed) outline.points.emplace_back(0, form.height_mm);
    return outline;
}

Silhouette cylinder(const Form& form) {
    const double r = form.width_mm / 2;
    Silhouette outline{{Vec2(0, 0), Vec2(r, 0), Vec2(r, form.height_mm)}};
    if (form.closed) outline.points.emplace_back(0, form.height_mm);
    return outline;
}

Silhouette bell(const Form& form) {
    const double dome = form.top_width_mm / 2;
    const double mouth = form.width_mm / 2;
    const double dome_height = 0.4 * form.height_mm;
    Silhouette outline;
    for (int i = 0; i <= curve_points; ++i) {
        const double a = pi / 2 * i / curve_points;
        outline.points.emplace_back(i == 0 ? 0 : dome * std::sin(a), dome_height * (1 - std::cos(a)));
    }
    for (int i = 1; i <= curve_points; ++i) {
        const double t = double(i) / curve_points;
        outline.points.emplace_back(dome + (mouth - dome) * t * t,
                                    dome_height + (form.height_mm - dome_height) * t);
    }
    if (form.closed) outline.points.emplace_back(0, form.height_mm);
    return outline;
}

Silhouette half_ball(const Form& form) {
    const double r = form.width_mm / 2;
    Silhouette outline;
    for (int i = 0; i <= curve_points; ++i) {
        const double a = pi / 2 * i / curve_points;
        outline.points.emplace_back(i == 0 ? 0 : r * std::sin(a), r * (1 - std::cos(a)));
    }
    if (form.closed) outline.points.emplace_back(0, r);
    return outline;
}

// What the rounds of a new piece take after: one round of single crochet.
PieceForm blank_form(const Gauge& gauge, double area_stretch, int start_count) {
    Piece piece;
    Round round;
    round.working = WorkedEvenly{start_count};
    piece.rounds.push_back(round);
    piece.area_stretch = area_stretch;
    return piece_form(piece, gauge);
}

// The rounds of a base that lie flat, if it is not stuffed: stuffing makes a dome of it.
void mark_flat_base(PieceForm& made) {
    if (made.piece.area_stretch > 0) return;
    const auto lies = lie_of_rounds(made.problem, made.shape);
    for (std::size_t i = 0; i < lies.size() && lies[i].lie == Lie::lies_flat; ++i)
        made.piece.rounds[i].lies_flat = true;
}

}  // namespace

Form usual_form(FormKind kind, double width_mm) {
    const double w = width_mm;
    switch (kind) {
        case FormKind::ball:
            return {kind, w, w, 0, 0, true};
        case FormKind::egg:
            return {kind, w, 1.3 * w, 0, 0, true};
        case FormKind::pear:
            return {kind, w, 1.45 * w, 0.6 * w, 0, true};
        case FormKind::cone:
            return {kind, w, 1.4 * w, 0, 0, false};
        case FormKind::cylinder:
            return {kind, w, 1.2 * w, 0, 0, true};
        case FormKind::bell:
            return {kind, w, w, 0.6 * w, 0, false};
        case FormKind::gourd:
            return {kind, w, 1.6 * w, 0.7 * w, 0.5 * w, true};
        case FormKind::half_ball:
            return {kind, w, w / 2, 0, 0, false};
    }
    return {};
}

bool starts_at_top(FormKind kind) {
    return kind == FormKind::cone || kind == FormKind::bell || kind == FormKind::half_ball;
}

FormCode form_code(const Form& form) {
    const auto positive = [](double mm) { return std::isfinite(mm) && mm > 0; };
    const auto absent = [](double mm) { return mm == 0; };
    if (!positive(form.width_mm) || (form.kind != FormKind::half_ball && !positive(form.height_mm)))
        return FormCode::size_not_positive;
    const bool cone = form.kind == FormKind::cone;
    if (cone || form.kind == FormKind::pear || form.kind == FormKind::bell) {
        if (!positive(form.top_width_mm) && !(cone && absent(form.top_width_mm)))
            return FormCode::size_not_positive;
        if (form.top_width_mm >= form.width_mm) return FormCode::top_not_narrower;
    }
    if (form.kind == FormKind::gourd) {
        if (!positive(form.top_width_mm) || !positive(form.waist_width_mm))
            return FormCode::size_not_positive;
        if (form.waist_width_mm >= form.top_width_mm || form.top_width_mm > form.width_mm)
            return FormCode::waist_not_narrower;
    }
    return FormCode::good;
}

Silhouette silhouette_of(const Form& form) {
    switch (form.kind) {
        case FormKind::ball:
            return round_ended(form.width_mm, form.height_mm, [](double) { return 1.0; });
        case FormKind::egg:
            return round_ended(form.width_mm, form.height_mm, [](double u) { return 1.25 - u / 2; });
        case FormKind::pear:
            return pear(form);
        case FormKind::cone:
            return cone(form);
        case FormKind::cylinder:
            return cylinder(form);
        case FormKind::bell:
            return bell(form);
        case FormKind::gourd:
            return gourd(form);
        case FormKind::half_ball:
            return half_ball(form);
    }
    return {};
}

Reshaped piece_from_silhouette(const Silhouette& outline, const Gauge& gauge, double area_stretch,
                               int start_count, const ReshapeOptions& options) {
    Target target;
    target.silhouette = outline;
    Reshaped made = resize(blank_form(gauge, area_stretch, start_count), target, options);
    made.before = {};
    return made;
}

Reshaped piece_from_form(const Form& form, const Gauge& gauge, double area_stretch, FormCounts counts,
                         ReshapeOptions options) {
    Reshaped made;
    if (form_code(form) != FormCode::good) {
        made.code = ReshapeCode::unusable_target;
        return made;
    }
    options.as_drawn = counts == FormCounts::nearest_stitch;
    const Silhouette outline = silhouette_of(form);
    made = piece_from_silhouette(outline, gauge, area_stretch, usual_start_count(gauge), options);
    if (!has_piece(made.code)) return made;
    Piece& piece = made.form.piece;
    piece.starts_at_top = starts_at_top(form.kind);
    if (form.kind == FormKind::cylinder) mark_flat_base(made.form);
    return made;
}

}  // namespace roundwright
