#include "tests/bench/shape_growth.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <functional>
#include <limits>

#include "tests/bench/shape_arena.h"

namespace roundwright::bench {

namespace {

/// Seconds of processor time that one call takes: the least of five batches of a twentieth of a second or
/// more. Reading the clock takes as long as a short call, so it is read once a batch.
double seconds_of(const std::function<void()>& call) {
    constexpr double batch_seconds = 0.05;
    const auto batch = [&](long calls) {
        const auto begin = Clock::now();
        for (long i = 0; i < calls; ++i) call();
        return seconds_since(begin);
    };
    long calls = 1;
    while (batch(calls) < batch_seconds) calls *= 2;
    double least = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 5; ++i) least = std::min(least, batch(calls));
    return least / static_cast<double>(calls);
}

struct Point {
    double rounds;
    double seconds;
};

/// Slope of the straight line of least squares through the logarithms.
double exponent(const std::array<Point, 4>& points) {
    double x = 0, y = 0, xx = 0, xy = 0;
    for (const Point& point : points) {
        x += std::log(point.rounds);
        y += std::log(point.seconds);
        xx += std::log(point.rounds) * std::log(point.rounds);
        xy += std::log(point.rounds) * std::log(point.seconds);
    }
    const auto n = static_cast<double>(points.size());
    return (n * xy - x * y) / (n * xx - x * x);
}

template <class Time>
void print_growth(const char* name, const Time& time) {
    std::array<Point, 4> points{{{60, 0}, {300, 0}, {3000, 0}, {6000, 0}}};
    std::printf("%s solve:", name);
    for (Point& point : points) {
        point.seconds = time(static_cast<std::int64_t>(point.rounds));
        std::printf("  %.0f rounds %.1f us", point.rounds, 1e6 * point.seconds);
    }
    std::printf("  exponent %.2f\n", exponent(points));
}

double cold(std::int64_t rounds) {
    const ShapeProblem problem = piece_of_rounds(rounds);
    return seconds_of([&] { static_cast<void>(solve_shape(problem)); });
}

/// A round in the middle gets three stitches more, as when the maker types.
double warm(std::int64_t rounds) {
    ShapeProblem problem = piece_of_rounds(rounds);
    const Shape before = solve_shape(problem);
    problem.rest_loop_mm[problem.rest_loop_mm.size() / 2] += 15;
    return seconds_of([&] { static_cast<void>(solve_shape(problem, {}, &before)); });
}

/// Nanoseconds of a multiplication and an addition of doubles that wait for nothing, as this program is
/// compiled.
double nanoseconds_of_multiply_add() {
    std::array<double, 512> a{};
    std::array<double, 512> b{};
    a.fill(1.0);
    b.fill(1e-9);
    const double seconds = seconds_of([&] {
        for (std::size_t i = 0; i < a.size(); ++i) a[i] += 0.999 * b[i];
        asm volatile("" : : "r"(a.data()) : "memory");
    });
    return 1e9 * seconds / static_cast<double>(a.size());
}

/// What one Newton step does, and about how many multiplications and additions that takes a node.
struct Part {
    const char* name;
    double nanoseconds;  ///< a node
    double multiply_adds;
};

void print_profile(const std::vector<Part>& parts) {
    const double of_arithmetic = nanoseconds_of_multiply_add();
    double all = 0;
    for (const Part& part : parts) all += part.nanoseconds;
    std::printf("a multiplication and an addition alone: %.2f ns\n", of_arithmetic);
    std::printf("  %-30s %10s %8s %16s %8s\n", "part of a step", "ns a node", "share", "arithmetic, ns",
                "times");
    for (const Part& part : parts) {
        const double alone = part.multiply_adds * of_arithmetic;
        std::printf("  %-30s %10.1f %7.0f%% %16.1f %8.1f\n", part.name, part.nanoseconds,
                    100 * part.nanoseconds / all, alone, part.nanoseconds / alone);
    }
    std::printf("  %-30s %10.1f\n", "all", all);
}

}  // namespace

void report_growth() {
    print_growth("cold", cold);
    print_growth("warm", warm);
}

void report_profile(std::int64_t rounds) {
    const Arena arena(rounds, true);
    const Membrane& membrane = arena.membrane;
    const Positions& x = arena.start;
    LyingWalls walls(membrane.nodes() - 1);
    membrane.take_walls(x, walls);
    std::vector<double> out(membrane.unknowns());
    std::vector<double> other(membrane.unknowns());
    BandMatrix matrix;
    matrix.resize(membrane.unknowns());
    membrane.hessian(x, walls, 0, Curvature::projected, matrix);
    const BandMatrix unfactored = matrix;
    BandMatrix factored = matrix;
    factored.factor(1e-12);
    const auto ns = [&](const std::function<void()>& call) {
        return 1e9 * seconds_of(call) / static_cast<double>(membrane.nodes());
    };
    double sink = 0;
    const double copy = ns([&] { matrix = unfactored; });
    std::vector<Part> parts{
        {"second derivatives", ns([&] { membrane.hessian(x, walls, 1e-3, Curvature::exact, matrix); }), 110},
        {"factor", ns([&] {
                       matrix = unfactored;
                       matrix.factor(1e-12);
                   }) - copy,
         40},
        {"two solves", ns([&] { factored.solve(out.data(), other.data()); }), 44},
        {"walls", ns([&] { membrane.take_walls(x, walls); }), 6},
        {"energy gradient", ns([&] { membrane.energy_gradient(x, walls, out.data()); }), 25},
        {"volume and its gradient", ns([&] {
             sink += membrane.volume(x);
             membrane.volume_gradient(x, other.data());
         }),
         14},
        {"stretch and its gradient", ns([&] {
             sink += membrane.area_stretch(x, walls);
             membrane.area_stretch_gradient(x, walls, other.data());
         }),
         8},
        {"energy, a try", ns([&] { sink += membrane.energy(x, walls); }), 10}};
    asm volatile("" : : "r"(&sink) : "memory");
    std::printf("\nwhere a step's time goes, %ld rounds\n", static_cast<long>(rounds));
    print_profile(parts);
}

}  // namespace roundwright::bench
