#include "app/panels/rounds_plot.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QToolTip>

#include "app/wording/counted.h"
#include "core/shape/fabric_limits.h"

namespace roundwright::app {

namespace {

constexpr int strip_count = 3;
constexpr double gap = 10;
constexpr double mm_per_inch = 25.4;

}  // namespace

RoundsPlot::RoundsPlot(DocumentSession& session, QWidget* parent) : QWidget(parent), session_(session) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Plot of the rounds"));
    connect(&session_, &DocumentSession::study_ready, this, &RoundsPlot::show_study);
    connect(&session_, &DocumentSession::current_piece_changed, this, &RoundsPlot::show_study);
    connect(&session_, &DocumentSession::selection_changed, this, qOverload<>(&QWidget::update));
    connect(&session_.preferences(), &Preferences::units_changed, this, qOverload<>(&QWidget::update));
    show_study();
}

QSize RoundsPlot::sizeHint() const {
    return {fontMetrics().averageCharWidth() * 40, fontMetrics().height() * 17};
}

QSize RoundsPlot::minimumSizeHint() const {
    return {fontMetrics().averageCharWidth() * 24, fontMetrics().height() * 11};
}

void RoundsPlot::show_study() {
    study_ = session_.study(session_.current_piece());
    if (study_ != nullptr && !study_->shape.usable()) study_.reset();
    hovered_ = -1;
    setAccessibleDescription(study_ == nullptr ? tr("Nothing to plot yet")
                                               : rounds_words(static_cast<int>(study_->lies.size())));
    update();
}

std::vector<RoundsPlot::Strip> RoundsPlot::strips() const {
    const bool inches = session_.preferences().units() == LengthUnit::inches;
    Strip width{tr("Width"), {}, {}, 0, 0, inches ? 1 : 0, inches ? tr("in") : tr("mm")};
    Strip growth{tr("Growth: 1 lies flat"), {}, {gathers_below_growth, 0, 1}, -1, 1.2, 2, {}};
    Strip stretch{
        tr("Stretch around"), {}, {0, gaps_above_stretch * 100}, -5, gaps_above_stretch * 110, 0, tr("%")};
    for (std::size_t k = 0; k < study_->lies.size() && k + 1 < study_->shape.radius_mm.size(); ++k) {
        width.values.push_back(2 * study_->shape.radius_mm[k + 1] / (inches ? mm_per_inch : 1));
        growth.values.push_back(study_->lies[k].growth);
        stretch.values.push_back(100 * study_->shape.course_stretch[k + 1]);
    }
    return {width, growth, stretch};
}

QRectF RoundsPlot::strip_area(int strip) const {
    const QFontMetricsF metrics(font());
    const double left = metrics.horizontalAdvance(QStringLiteral("-0000")) + gap;
    const double bottom = metrics.height() + gap / 2;
    const double each = (height() - bottom - gap / 2) / strip_count;
    const double top = gap / 2 + strip * each + metrics.height();
    return {left, top, std::max(1.0, width() - left - gap), std::max(1.0, each - metrics.height() - gap / 2)};
}

double RoundsPlot::x_of(int round) const {
    const QRectF area = strip_area(0);
    const double count =
        study_ == nullptr ? 1 : static_cast<double>(std::max<std::size_t>(study_->lies.size(), 1));
    return area.left() + area.width() * (round + 0.5) / count;
}

std::optional<int> RoundsPlot::round_at(double x) const {
    if (study_ == nullptr || study_->lies.empty()) return std::nullopt;
    const QRectF area = strip_area(0);
    if (x < area.left() || x > area.right()) return std::nullopt;
    const int count = static_cast<int>(study_->lies.size());
    return std::min(count - 1, static_cast<int>((x - area.left()) / area.width() * count));
}

void RoundsPlot::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (study_ == nullptr || study_->lies.empty()) {
        painter.setPen(palette().color(QPalette::PlaceholderText));
        painter.drawText(rect(), Qt::AlignCenter, tr("No rounds yet"));
        return;
    }
    draw_rounds(painter);
    const std::vector<Strip> all = strips();
    for (int k = 0; k < strip_count; ++k)
        draw_strip(painter, all[static_cast<std::size_t>(k)], strip_area(k));
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

void RoundsPlot::draw_rounds(QPainter& painter) const {
    const QRectF top = strip_area(0);
    const QRectF bottom = strip_area(strip_count - 1);
    const double step = top.width() / static_cast<double>(study_->lies.size());
    const auto column = [&](int round, const QColor& colour) {
        painter.fillRect(QRectF(x_of(round) - step / 2, top.top(), step, bottom.bottom() - top.top()),
                         colour);
    };
    QColor selected = palette().color(QPalette::Highlight);
    selected.setAlpha(70);
    for (int round : session_.selection()) column(round, selected);
    if (hovered_ >= 0) {
        QColor under = palette().color(QPalette::Text);
        under.setAlpha(28);
        column(hovered_, under);
    }
    // As many round numbers as there is room for, in steps that read easily.
    const QFontMetricsF metrics(font());
    const double room = metrics.horizontalAdvance(QStringLiteral("0000"));
    int every = 1;
    for (int next : {2, 5, 10, 20, 50, 100, 200, 500}) {
        if (step * every < room) every = next;
    }
    painter.setPen(palette().color(QPalette::Text));
    for (int round = 0; round < static_cast<int>(study_->lies.size()); ++round) {
        if (round != 0 && (round + 1) % every != 0) continue;
        const QRectF box(x_of(round) - room, bottom.bottom() + 2, 2 * room, metrics.height());
        painter.drawText(box, Qt::AlignHCenter | Qt::AlignTop, QString::number(round + 1));
    }
}

void RoundsPlot::draw_strip(QPainter& painter, const Strip& strip, const QRectF& area) const {
    double low = strip.low;
    double high = strip.high;
    for (double value : strip.values) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    if (high <= low) high = low + 1;
    const auto y_of = [&](double value) {
        return area.bottom() - (value - low) / (high - low) * area.height();
    };

    const QColor ink = palette().color(QPalette::Text);
    const QFontMetricsF metrics(font());
    painter.setPen(ink);
    painter.drawText(QPointF(area.left(), area.top() - metrics.descent() - 1), strip.title);
    const auto label = [&](double value) {
        const QRectF box(0, y_of(value) - metrics.height() / 2, area.left() - 6, metrics.height());
        painter.drawText(box, Qt::AlignRight | Qt::AlignVCenter, QString::number(value, 'g', 3));
    };
    label(high);
    label(low);

    painter.setPen(QPen(palette().color(QPalette::Mid), 1, Qt::DashLine));
    for (double limit : strip.limits) {
        if (limit > low && limit < high)
            painter.drawLine(QPointF(area.left(), y_of(limit)), QPointF(area.right(), y_of(limit)));
    }
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.drawLine(area.bottomLeft(), area.bottomRight());

    QPolygonF line;
    for (std::size_t k = 0; k < strip.values.size(); ++k)
        line << QPointF(x_of(static_cast<int>(k)), y_of(strip.values[k]));
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(line);
    if (line.size() <= 60) {
        painter.setBrush(palette().color(QPalette::Highlight));
        painter.setPen(Qt::NoPen);
        for (const QPointF& point : line) painter.drawEllipse(point, 2.2, 2.2);
    }
}

QString RoundsPlot::words_of(int round) const {
    QStringList words{tr("Round %1").arg(round + 1)};
    for (const Strip& strip : strips()) {
        if (static_cast<std::size_t>(round) >= strip.values.size()) continue;
        const QString value =
            QString::number(strip.values[static_cast<std::size_t>(round)], 'f', strip.decimals);
        words << tr("%1: %2 %3").arg(strip.title, value, strip.unit).trimmed();
    }
    return words.join(QLatin1Char('\n'));
}

void RoundsPlot::mouseMoveEvent(QMouseEvent* event) {
    const int under = round_at(event->position().x()).value_or(-1);
    if (under == hovered_) return;
    hovered_ = under;
    update();
}

void RoundsPlot::mousePressEvent(QMouseEvent* event) {
    if (const auto round = round_at(event->position().x())) session_.select_rounds({*round});
}

void RoundsPlot::leaveEvent(QEvent*) {
    hovered_ = -1;
    update();
}

void RoundsPlot::keyPressEvent(QKeyEvent* event) {
    const int count = study_ == nullptr ? 0 : static_cast<int>(study_->lies.size());
    const int now = session_.selection().empty() ? -1 : session_.selection().back();
    int next = now;
    switch (event->key()) {
        case Qt::Key_Left:
            next = now - 1;
            break;
        case Qt::Key_Right:
            next = now + 1;
            break;
        case Qt::Key_Home:
            next = 0;
            break;
        case Qt::Key_End:
            next = count - 1;
            break;
        default:
            return QWidget::keyPressEvent(event);
    }
    if (count > 0) session_.select_rounds({std::clamp(next, 0, count - 1)});
}

bool RoundsPlot::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    if (const auto round = round_at(help->pos().x())) {
        QToolTip::showText(help->globalPos(), words_of(*round), this);
    } else {
        QToolTip::hideText();
    }
    return true;
}

}  // namespace roundwright::app
