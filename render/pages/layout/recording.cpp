#include "render/pages/layout/recording.h"

#include <cmath>

#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>

namespace roundwright::render {
namespace {

QPointF in_whole_units(double x, double y) { return {std::round(x), std::round(y)}; }

/// Layout units are fine enough for any printer, and whole numbers make short files.
QPainterPath shortened(const QPainterPath& path, double shortest) {
    QPainterPath shorter;
    shorter.setFillRule(path.fillRule());
    for (int i = 0; i < path.elementCount(); ++i) {
        const QPainterPath::Element at = path.elementAt(i);
        if (at.isMoveTo()) shorter.moveTo(in_whole_units(at.x, at.y));
        if (at.isLineTo()) shorter.lineTo(in_whole_units(at.x, at.y));
        if (!at.isCurveTo()) continue;
        const QPainterPath::Element second = path.elementAt(i + 1);
        const QPainterPath::Element end = path.elementAt(i + 2);
        const QPointF from = shorter.currentPosition();
        if (std::hypot(end.x - from.x(), end.y - from.y()) < shortest) {
            shorter.lineTo(in_whole_units(end.x, end.y));
        } else {
            shorter.cubicTo(in_whole_units(at.x, at.y), in_whole_units(second.x, second.y),
                            in_whole_units(end.x, end.y));
        }
    }
    return shorter;
}

class PathEngine : public QPaintEngine {
  public:
    PathEngine(Recording& recording, double shortest)
        : QPaintEngine(AllFeatures), recording_(recording), shortest_(shortest) {}

    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    Type type() const override { return User; }
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawTextItem(const QPointF&, const QTextItem&) override {}

    void drawPath(const QPainterPath& path) override {
        recording_.add({shortened(state->transform().map(path), shortest_), state->pen(), state->brush()});
    }

    void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
        QPainterPath path;
        path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
        if (mode != PolylineMode) path.closeSubpath();
        drawPath(path);
    }

  private:
    Recording& recording_;
    double shortest_;
};

/// Large enough for any page.
constexpr int device_side = 100 * units_per_inch;

}  // namespace

struct Recorder::Device : QPaintDevice {
    explicit Device(double shortest) : engine(*recording, shortest) {}

    [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine; }

    [[nodiscard]] int metric(PaintDeviceMetric metric) const override {
        switch (metric) {
            case PdmWidth:
            case PdmHeight:
                return device_side;
            case PdmWidthMM:
            case PdmHeightMM:
                return static_cast<int>(device_side / units_per_mm);
            case PdmDpiX:
            case PdmDpiY:
            case PdmPhysicalDpiX:
            case PdmPhysicalDpiY:
                return units_per_inch;
            case PdmDepth:
                return 24;
            case PdmNumColors:
                return 1 << 24;
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
            default:  // newer Qt asks for more
                return QPaintDevice::metric(metric);
        }
    }

    std::shared_ptr<Recording> recording = std::make_shared<Recording>();
    mutable PathEngine engine;
};

Recorder::Recorder(double shortest)
    : device_(std::make_unique<Device>(shortest)), painter_(std::make_unique<QPainter>(device_.get())) {}

Recorder::~Recorder() = default;

QPainter& Recorder::painter() { return *painter_; }

std::shared_ptr<const Recording> Recorder::take() {
    painter_->end();
    return device_->recording;
}

QRectF Recording::bounds() const {
    QRectF bounds;
    for (const Shape& shape : shapes_) bounds |= shape.path.controlPointRect();
    return bounds;
}

void Recording::paint(QPainter& painter, QPointF origin) const {
    painter.save();
    painter.translate(std::round(origin.x()), std::round(origin.y()));
    for (const Shape& shape : shapes_) {
        painter.setPen(shape.pen);
        painter.setBrush(shape.brush);
        painter.drawPath(shape.path);
    }
    painter.restore();
}

}  // namespace roundwright::render
