#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <limits>
#include <string>
#include <time.h>

#include "core/shape/cold_start.h"
#include "core/shape/minimise.h"
#include "tests/bench/shape_bench_piece.h"

namespace roundwright::bench {

/// Processor time of this process, so that other work on the machine does not count. All run on one thread.
struct Clock {
    using time_point = double;
    static double now() {
        timespec time{};
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
        return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
    }
};

inline double seconds_since(Clock::time_point start) { return Clock::now() - start; }

/// A run of an optimiser that takes longer is given up.
inline constexpr double patience_seconds = 5;
inline constexpr double relative_energy = 1e-8;

/// One problem, its start and its solution.
struct Arena {
    explicit Arena(std::int64_t rounds, bool is_stuffed)
        : problem(piece_of_rounds(rounds)),
          meridian(meridian_of(problem)),
          membrane(meridian, {}),
          stuffed(is_stuffed) {
        if (!stuffed) problem.area_stretch = 0;
        start = start_from_counts(meridian);
        const Shape shape = solve_shape(problem);
        stuffing = shape.pressure * shape.volume_mm3;
        reference_volume = shape.volume_mm3;
        least = shape.energy;
    }

    [[nodiscard]] double value(const Positions& x) const {
        const double energy = membrane.energy(x);
        if (!stuffed) return energy;
        const double volume = membrane.volume(x);
        if (!(volume > 0)) return std::numeric_limits<double>::infinity();
        return energy - stuffing * std::log(volume / reference_volume);
    }

    void gradient(const Positions& x, double* out) const {
        walls.resize(meridian.segments());
        membrane.take_walls(x, walls);
        membrane.energy_gradient(x, walls, out);
        if (!stuffed) return;
        volume_gradient.resize(x.size());
        membrane.volume_gradient(x, volume_gradient.data());
        const double pressure = stuffing / membrane.volume(x);
        for (std::size_t i = 0; i < x.size(); ++i) out[i] -= pressure * volume_gradient[i];
    }

    [[nodiscard]] double target() const { return least + relative_energy * std::abs(least); }

    ShapeProblem problem;
    Meridian meridian;
    Membrane membrane;
    bool stuffed;
    Positions start;
    double stuffing = 0;
    double reference_volume = 1;
    double least = 0;
    mutable std::vector<double> volume_gradient;
    mutable LyingWalls walls;
};

struct Run {
    double seconds = 0;
    double energy = std::numeric_limits<double>::infinity();
    long evaluations = 0;
    bool reached = false;
};

}  // namespace roundwright::bench
