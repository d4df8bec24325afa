#include "core/assembly/solid.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

namespace roundwright {
namespace {

class SolidBuilder {
  public:
    SolidBuilder(const FabricGeometry& fabric, const EdgeSpan& edges, std::size_t around)
        : fabric_(fabric), edges_(edges), around_(static_cast<std::uint32_t>(around)) {}

    Solid build() {
        for (std::size_t edge = edges_.first; edge <= edges_.last; ++edge) add_loop(edge);
        for (std::uint32_t row = 0; row + 1 < rows(); ++row) join(row);
        const auto below = pole_below(), above = pole_above();
        if (below) close(0, below->place, true);
        if (above) close(rows() - 1, above->place, false);
        solid_.fabric = solid_.triangles.size();
        if (!below) close(0, middles_.front(), true);
        if (!above) close(rows() - 1, middles_.back(), false);
        return std::move(solid_);
    }

  private:
    [[nodiscard]] std::uint32_t rows() const {
        return static_cast<std::uint32_t>(edges_.last - edges_.first + 1);
    }

    void add_loop(std::size_t edge) {
        Vec3 middle = Vec3::Zero();
        for (std::uint32_t k = 0; k < around_; ++k) {
            solid_.points.push_back(fabric_.on_edge(edge, fabric_.loops_at(edge, k, around_)).place);
            middle += solid_.points.back() / around_;
        }
        middles_.push_back(middle);
    }

    void join(std::uint32_t row) {
        for (std::uint32_t k = 0; k < around_; ++k) {
            const std::uint32_t next = (k + 1) % around_;
            const std::uint32_t b0 = row * around_ + k, b1 = row * around_ + next;
            const std::uint32_t t0 = b0 + around_, t1 = b1 + around_;
            solid_.triangles.push_back({b0, t0, b1});
            solid_.triangles.push_back({b1, t0, t1});
        }
    }

    [[nodiscard]] std::optional<FabricPoint> pole_below() const {
        return edges_.first == 0 ? fabric_.pole_below() : std::nullopt;
    }
    [[nodiscard]] std::optional<FabricPoint> pole_above() const {
        return edges_.last == fabric_.rounds() ? fabric_.pole_above() : std::nullopt;
    }

    void close(std::uint32_t row, const Vec3& at, bool below) {
        const auto apex = static_cast<std::uint32_t>(solid_.points.size());
        solid_.points.push_back(at);
        for (std::uint32_t k = 0; k < around_; ++k) {
            const std::uint32_t a = row * around_ + k, b = row * around_ + (k + 1) % around_;
            solid_.triangles.push_back(below ? std::array{apex, a, b} : std::array{apex, b, a});
        }
    }

    const FabricGeometry& fabric_;
    EdgeSpan edges_;
    std::uint32_t around_;
    Solid solid_;
    std::vector<Vec3> middles_;
};

/// Both sides of a sheet, and the walls around it.
class SheetBuilder {
  public:
    SheetBuilder(const FabricGeometry& sheet, double thickness_mm)
        : sheet_(sheet),
          half_mm_(thickness_mm / 2),
          along_(static_cast<std::uint32_t>(
              std::clamp(2 * sheet.loops(sheet.rounds()), 8.0, static_cast<double>(most_along)))) {}

    Solid build() {
        for (const double lift : {half_mm_, -half_mm_})
            for (std::uint32_t edge = 0; edge < edges(); ++edge) add_edge(edge, lift);
        for (std::uint32_t edge = 0; edge + 1 < edges(); ++edge) add_side(edge, true);
        solid_.fabric = solid_.triangles.size();
        for (std::uint32_t edge = 0; edge + 1 < edges(); ++edge) add_side(edge, false);
        for (std::uint32_t k = 0; k < along_; ++k) {
            wall(at(0, k), at(0, k + 1));
            wall(at(edges() - 1, k + 1), at(edges() - 1, k));
        }
        for (std::uint32_t edge = 0; edge + 1 < edges(); ++edge) {
            wall(at(edge + 1, 0), at(edge, 0));
            wall(at(edge, along_), at(edge + 1, along_));
        }
        return std::move(solid_);
    }

  private:
    static constexpr std::uint32_t most_along = 4'000;

    [[nodiscard]] std::uint32_t edges() const { return static_cast<std::uint32_t>(sheet_.rounds()) + 1; }
    [[nodiscard]] std::uint32_t at(std::uint32_t edge, std::uint32_t k) const {
        return edge * (along_ + 1) + k;
    }
    /// The same point on the other side.
    [[nodiscard]] std::uint32_t behind(std::uint32_t point) const { return point + edges() * (along_ + 1); }

    void add_edge(std::uint32_t edge, double lift) {
        for (std::uint32_t k = 0; k <= along_; ++k)
            solid_.points.push_back(sheet_.on_edge(edge, sheet_.loops_at(edge, k, along_), lift).place);
    }

    void add_side(std::uint32_t edge, bool front) {
        for (std::uint32_t k = 0; k < along_; ++k) {
            const std::uint32_t b0 = at(edge, k), b1 = at(edge, k + 1);
            const std::uint32_t t0 = at(edge + 1, k), t1 = at(edge + 1, k + 1);
            if (front) {
                solid_.triangles.push_back({b0, t0, b1});
                solid_.triangles.push_back({b1, t0, t1});
            } else {
                solid_.triangles.push_back({behind(b0), behind(b1), behind(t0)});
                solid_.triangles.push_back({behind(b1), behind(t1), behind(t0)});
            }
        }
    }

    /// From a side of the front to the same one behind.
    void wall(std::uint32_t a, std::uint32_t b) {
        solid_.triangles.push_back({a, b, behind(a)});
        solid_.triangles.push_back({b, behind(b), behind(a)});
    }

    const FabricGeometry& sheet_;
    double half_mm_;
    std::uint32_t along_;
    Solid solid_;
};

Vec3 middle_of_points(const Solid& solid) {
    Vec3 sum = Vec3::Zero();
    for (const Vec3& point : solid.points) sum += point;
    return solid.points.empty() ? sum : Vec3(sum / static_cast<double>(solid.points.size()));
}

}  // namespace

Solid solid_of(const FabricGeometry& fabric, std::size_t around) {
    return solid_of(fabric, {0, fabric.rounds()}, around);
}

Solid solid_of(const FabricGeometry& fabric, const EdgeSpan& edges, std::size_t around) {
    EdgeSpan held{std::min(edges.first, fabric.rounds()), std::min(edges.last, fabric.rounds())};
    if (held.first >= held.last) return {};
    return SolidBuilder(fabric, held, around).build();
}

Solid solid_of_sheet(const FabricGeometry& sheet, double thickness_mm) {
    return sheet.rounds() > 0 ? SheetBuilder(sheet, thickness_mm).build() : Solid{};
}

Solid solid_of(const Mesh& mesh) {
    Solid solid;
    for (std::size_t i = 0; i + 2 < mesh.positions.size(); i += 3)
        solid.points.emplace_back(mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]);
    for (std::size_t i = 0; i + 2 < mesh.indices.size(); i += 3)
        solid.triangles.push_back({mesh.indices[i], mesh.indices[i + 1], mesh.indices[i + 2]});
    return solid;
}

VolumeMeasure measure_volume(const Solid& solid) {
    // From a point in the middle, so that little is lost where the solid is far away.
    const Vec3 from = middle_of_points(solid);
    double six = 0;
    Vec3 moment = Vec3::Zero();
    for (const auto& triangle : solid.triangles) {
        const Vec3 a = solid.points[triangle[0]] - from, b = solid.points[triangle[1]] - from,
                   c = solid.points[triangle[2]] - from;
        const double volume = a.dot(b.cross(c));
        six += volume;
        moment += volume * (a + b + c) / 4;
    }
    const double least = 1e-12;
    return {six / 6, std::abs(six) > least ? Vec3(from + moment / six) : from};
}

AreaMeasure measure_area(const Solid& solid) {
    AreaMeasure found;
    Vec3 moment = Vec3::Zero();
    const std::size_t fabric = std::min(solid.fabric, solid.triangles.size());
    for (const auto& triangle : std::span(solid.triangles).first(fabric)) {
        const Vec3& a = solid.points[triangle[0]];
        const Vec3& b = solid.points[triangle[1]];
        const Vec3& c = solid.points[triangle[2]];
        const double area = (b - a).cross(c - a).norm() / 2;
        found.area_mm2 += area;
        moment += area * (a + b + c) / 3;
    }
    found.centre = found.area_mm2 > 0 ? Vec3(moment / found.area_mm2) : middle_of_points(solid);
    return found;
}

namespace {

struct Box {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::infinity());
    Vec3 high = Vec3::Constant(-std::numeric_limits<double>::infinity());
};

Box box_of(const Solid& solid) {
    Box box;
    for (const Vec3& point : solid.points) {
        box.low = box.low.cwiseMin(point);
        box.high = box.high.cwiseMax(point);
    }
    return box;
}

/// Where a line enters (1) or leaves (-1) a solid.
struct Crossing {
    float line_place;
    std::int8_t turn;
};

/// Lines along one axis through a grid over a box.
class LineGrid {
  public:
    LineGrid(const Box& box, int across) : box_(box), across_(across) {
        cell_ = (box.high - box.low).head<2>() / across;
    }

    [[nodiscard]] double cell_area() const { return cell_.x() * cell_.y(); }

    [[nodiscard]] Vec2 place_of(std::size_t line) const {
        const auto across = static_cast<std::size_t>(across_);
        return {box_.low.x() + (static_cast<double>(line % across) + 0.5) * cell_.x(),
                box_.low.y() + (static_cast<double>(line / across) + 0.5) * cell_.y()};
    }

    /// The crossings of all lines with a solid, by line, in order along it.
    [[nodiscard]] std::vector<std::vector<Crossing>> cut(const Solid& solid) const {
        std::vector<std::vector<Crossing>> lines(static_cast<std::size_t>(across_) *
                                                 static_cast<std::size_t>(across_));
        for (const auto& triangle : solid.triangles)
            cut(solid.points[triangle[0]], solid.points[triangle[1]], solid.points[triangle[2]], lines);
        for (auto& line : lines) std::ranges::sort(line, {}, &Crossing::line_place);
        return lines;
    }

  private:
    /// A line lies beside an edge or on it: those on it count to the one side alone, so that none is counted
    /// twice where triangles meet.
    static double side(const Vec2& from, const Vec2& to, const Vec2& at) {
        const Vec2 way = to - from, off = at - from;
        return way.x() * off.y() - way.y() * off.x();
    }
    static bool counts(double value, const Vec2& from, const Vec2& to) {
        if (value != 0) return value > 0;
        const Vec2 way = to - from;
        return way.y() > 0 || (way.y() == 0 && way.x() < 0);
    }

    void cut(const Vec3& a, const Vec3& b, const Vec3& c, std::vector<std::vector<Crossing>>& lines) const {
        Vec2 p = a.head<2>(), q = b.head<2>(), r = c.head<2>();
        double area = side(p, q, r);
        if (area == 0) return;
        const bool up = area > 0;  // the outside is towards the line's end: it leaves
        double zq = b.z(), zr = c.z();
        if (!up) {
            std::swap(q, r);
            std::swap(zq, zr);
            area = -area;
        }
        const Vec2 low = p.cwiseMin(q).cwiseMin(r), high = p.cwiseMax(q).cwiseMax(r);
        const int first_x = line_from(low.x(), 0), last_x = line_to(high.x(), 0);
        const int first_y = line_from(low.y(), 1), last_y = line_to(high.y(), 1);
        for (int y = first_y; y <= last_y; ++y) {
            for (int x = first_x; x <= last_x; ++x) {
                const Vec2 at(box_.low.x() + (x + 0.5) * cell_.x(), box_.low.y() + (y + 0.5) * cell_.y());
                const double pq = side(p, q, at), qr = side(q, r, at), rp = side(r, p, at);
                if (!counts(pq, p, q) || !counts(qr, q, r) || !counts(rp, r, p)) continue;
                const double z = (qr * a.z() + rp * zq + pq * zr) / area;
                lines[static_cast<std::size_t>(y * across_ + x)].push_back(
                    {static_cast<float>(z), static_cast<std::int8_t>(up ? -1 : 1)});
            }
        }
    }

    [[nodiscard]] int line_from(double at, int axis) const {
        return std::clamp(static_cast<int>(std::floor((at - box_.low[axis]) / cell_[axis] - 0.5)), 0,
                          across_);
    }
    [[nodiscard]] int line_to(double at, int axis) const {
        return std::clamp(static_cast<int>(std::ceil((at - box_.low[axis]) / cell_[axis] - 0.5)), -1,
                          across_ - 1);
    }

    Box box_;
    int across_;
    Vec2 cell_;
};

/// Length of a line that is in both.
double common_length(const std::vector<Crossing>& a, const std::vector<Crossing>& b) {
    double length = 0;
    int in_a = 0, in_b = 0;
    float since = 0;
    for (std::size_t i = 0, k = 0; i < a.size() || k < b.size();) {
        const bool next_is_a = k == b.size() || (i < a.size() && a[i].line_place <= b[k].line_place);
        const Crossing& crossing = next_is_a ? a[i++] : b[k++];
        if (in_a > 0 && in_b > 0) length += crossing.line_place - since;
        (next_is_a ? in_a : in_b) += crossing.turn;
        since = crossing.line_place;
    }
    return length;
}

}  // namespace

namespace {

/// A piece of an upright line within a solid.
struct Column {
    Vec2 at;
    double low, high;
};

std::vector<Column> columns_of(const Solid& solid, const LineGrid& grid) {
    std::vector<Column> columns;
    const auto lines = grid.cut(solid);
    for (std::size_t line = 0; line < lines.size(); ++line) {
        int inside = 0;
        double since = 0;
        for (const Crossing& crossing : lines[line]) {
            if (inside > 0) columns.push_back({grid.place_of(line), since, crossing.line_place});
            inside += crossing.turn;
            since = crossing.line_place;
        }
    }
    return columns;
}

/// Of what the columns hold below a level.
VolumeMeasure below(const std::vector<Column>& columns, double level, double cell_area) {
    VolumeMeasure found;
    Vec3 moment = Vec3::Zero();
    for (const Column& column : columns) {
        const double high = std::min(column.high, level);
        if (!(high > column.low)) continue;
        const double volume = (high - column.low) * cell_area;
        found.volume_mm3 += volume;
        moment += volume * Vec3(column.at.x(), column.at.y(), (column.low + high) / 2);
    }
    if (found.volume_mm3 > 0) found.centre = moment / found.volume_mm3;
    return found;
}

}  // namespace

VolumeMeasure lowest_part(const Solid& solid, const Vec3& down, double volume_mm3) {
    constexpr int across = 48, halvings = 40;
    const Eigen::Matrix3d upright =
        Eigen::Quaterniond::FromTwoVectors(down, -Vec3::UnitZ()).toRotationMatrix();
    Solid turned = solid;
    for (Vec3& point : turned.points) point = upright * point;
    const Box box = box_of(turned);
    VolumeMeasure found = measure_volume(solid);
    if (found.volume_mm3 <= volume_mm3 || !((box.high - box.low).minCoeff() > 0)) return found;
    const LineGrid grid(box, across);
    const auto columns = columns_of(turned, grid);
    double low = box.low.z(), high = box.high.z();
    for (int halving = 0; halving < halvings; ++halving) {
        const double level = (low + high) / 2;
        (below(columns, level, grid.cell_area()).volume_mm3 < volume_mm3 ? low : high) = level;
    }
    found = below(columns, high, grid.cell_area());
    found.centre = upright.transpose() * found.centre;
    return found;
}

double overlap_volume_mm3(const Solid& a, const Solid& b, int across) {
    if (a.empty() || b.empty()) return 0;
    const Box of_a = box_of(a), of_b = box_of(b);
    const Box common{of_a.low.cwiseMax(of_b.low), of_a.high.cwiseMin(of_b.high)};
    if (!((common.high - common.low).minCoeff() > 0)) return 0;
    const LineGrid grid(common, across);
    const auto lines_a = grid.cut(a), lines_b = grid.cut(b);
    double length = 0;
    for (std::size_t line = 0; line < lines_a.size(); ++line)
        length += common_length(lines_a[line], lines_b[line]);
    return length * grid.cell_area();
}

}  // namespace roundwright
