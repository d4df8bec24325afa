#include "app/kit/icons.h"

#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QPalette>
#include <QPixmap>
#include <QSvgRenderer>

namespace roundwright::app {
namespace {

QByteArray drawing(const QString& name) {
    QFile file(QStringLiteral(":/icons/%1.svg").arg(name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QColor ink(QIcon::Mode mode) {
    const QPalette palette = QGuiApplication::palette();
    switch (mode) {
        case QIcon::Disabled:
            return palette.color(QPalette::Disabled, QPalette::Text);
        case QIcon::Selected:
        case QIcon::Active:
        case QIcon::Normal:
            break;
    }
    return palette.color(QPalette::Active, QPalette::Text);
}

/// Draws the SVG anew for every size, colour and screen, so that a change of theme needs no new icons.
class LineIconEngine : public QIconEngine {
  public:
    explicit LineIconEngine(QByteArray svg) : svg_(std::move(svg)) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        QByteArray coloured = svg_;
        coloured.replace("#000000", ink(mode).name().toLatin1());
        QSvgRenderer(coloured).render(painter, rect);
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap pixmap(size);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        paint(&painter, QRect(QPoint(), size), mode, state);
        return pixmap;
    }

    [[nodiscard]] QIconEngine* clone() const override { return new LineIconEngine(svg_); }

  private:
    QByteArray svg_;
};

}  // namespace

QIcon icon(const QString& name) { return QIcon(new LineIconEngine(drawing(name))); }

}  // namespace roundwright::app
