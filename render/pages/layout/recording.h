#pragma once

#include <memory>
#include <vector>

#include <QBrush>
#include <QPainterPath>
#include <QPen>
#include <QRectF>

#include "render/pages/layout/paper.h"

class QPainter;

namespace roundwright::render {

/// A drawing of paths, made once and painted as often as wanted, on any device: what is costly to work out is
/// worked out when a page is composed. Lengths in layout units.
class Recording {
  public:
    struct Shape {
        QPainterPath path;
        QPen pen;
        QBrush brush;
    };

    void add(Shape shape) { shapes_.push_back(std::move(shape)); }
    [[nodiscard]] bool empty() const { return shapes_.empty(); }
    [[nodiscard]] QRectF bounds() const;

    /// Paints with the recording's origin at `origin`, which is brought to the grid of layout units, so that
    /// places in the file stay short.
    void paint(QPainter& painter, QPointF origin) const;

  private:
    std::vector<Shape> shapes_;
};

/// Curves shorter than this are kept as their chords: nobody sees the difference, and files get shorter.
inline constexpr double shortest_curve = mm(0.45);

/// Runs `draw` with a painter whose device has the resolution of the pages, and keeps the paths it draws,
/// with curves from `shortest` on. Text and pixels are not kept.
template <class Draw>
[[nodiscard]] std::shared_ptr<const Recording> record(Draw&& draw, double shortest = shortest_curve);

/// The painter behind `record`.
class Recorder {
  public:
    explicit Recorder(double shortest);
    ~Recorder();
    Recorder(const Recorder&) = delete;
    Recorder& operator=(const Recorder&) = delete;

    [[nodiscard]] QPainter& painter();
    [[nodiscard]] std::shared_ptr<const Recording> take();

  private:
    struct Device;
    std::unique_ptr<Device> device_;
    std::unique_ptr<QPainter> painter_;
};

template <class Draw>
std::shared_ptr<const Recording> record(Draw&& draw, double shortest) {
    Recorder recorder(shortest);
    draw(recorder.painter());
    return recorder.take();
}

}  // namespace roundwright::render
