#include "app/plot/rounds_plot.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include "app/kit/spoken_roles.h"
#include "app/plot/strip_drawing.h"
#include "render/wording/counted.h"
#include "render/wording/round_by_round.h"

namespace roundwright::app {

namespace {

constexpr int strip_count = 3;
constexpr double gap = 10;

}  // namespace

RoundsPlot::RoundsPlot(DocumentSession& session, QWidget* parent) : QWidget(parent), session_(session) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    speak_as(*this, QAccessible::Chart);
    setAccessibleName(tr("Plot of the rounds"));
    connect(&session_, &DocumentSession::study_ready, this, &RoundsPlot::show_study);
    connect(&session_, &DocumentSession::current_piece_changed, this, &RoundsPlot::show_study);
    connect(&session_, &DocumentSession::selection_changed, this, qOverload<>(&QWidget::update));
    connect(&session_.preferences(), &Preferences::units_changed, this, &RoundsPlot::show_study);
    connect(&session_, &DocumentSession::selection_changed, this, &RoundsPlot::describe);
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
    if (study_ != nullptr && !study_->measures().usable()) study_.reset();
    hovered_ = -1;
    describe();
    update();
}

/// The round that the keys have chosen first, since they are heard one after the other.
void RoundsPlot::describe() {
    if (study_ == nullptr || study_->lies().empty())
        return setAccessibleDescription(tr("Nothing to plot yet"));
    const LengthUnit units = session_.preferences().units();
    const int count = static_cast<int>(study_->lies().size());
    QString words = tr("%1: %2").arg(rounds_words(count), profile_words(*study_, units));
    const auto& chosen = session_.selection();
    if (!chosen.empty() && chosen.back() < count)
        words = tr("%1. All %2")
                    .arg(round_words(round_strips(*study_, units), chosen.back())
                             .replace(QLatin1Char('\n'), QStringLiteral(", ")),
                         words);
    if (words != accessibleDescription()) setAccessibleDescription(words);
}

QRectF RoundsPlot::strip_area(int strip) const {
    const QFontMetricsF metrics(font());
    const double left = metrics.horizontalAdvance(QStringLiteral("-0000")) + gap;
    const double bottom = metrics.height() + gap / 2;
    const double each = (height() - bottom - gap / 2) / strip_count;
    const double top = gap / 2 + strip * each + metrics.height();
    return {left, top, std::max(1.0, width() - left - gap), std::max(1.0, each - metrics.height() - gap)};
}

double RoundsPlot::x_of(int round) const {
    const QRectF area = strip_area(0);
    const double count =
        study_ == nullptr ? 1 : static_cast<double>(std::max<std::size_t>(study_->lies().size(), 1));
    return area.left() + area.width() * (round + 0.5) / count;
}

std::optional<int> RoundsPlot::round_at(double x) const {
    if (study_ == nullptr || study_->lies().empty()) return std::nullopt;
    const QRectF area = strip_area(0);
    if (x < area.left() || x > area.right()) return std::nullopt;
    const int count = static_cast<int>(study_->lies().size());
    return std::min(count - 1, static_cast<int>((x - area.left()) / area.width() * count));
}

void RoundsPlot::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (study_ == nullptr || study_->lies().empty()) {
        painter.setPen(palette().color(QPalette::PlaceholderText));
        painter.drawText(rect(), Qt::AlignCenter, tr("No rounds yet"));
        return;
    }
    draw_columns(painter);
    draw_numbers(painter);
    const std::vector<RoundStrip> strips = round_strips(*study_, session_.preferences().units());
    for (int k = 0; k < strip_count; ++k)
        draw_strip(
            painter, strips[static_cast<std::size_t>(k)], strip_area(k),
            [this](int round) { return x_of(round); }, palette());
    if (hasFocus()) {
        painter.setPen(QPen(palette().color(QPalette::Highlight), 1.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

void RoundsPlot::draw_columns(QPainter& painter) const {
    const QRectF top = strip_area(0);
    const double bottom = strip_area(strip_count - 1).bottom();
    const double step = top.width() / static_cast<double>(study_->lies().size());
    const auto column = [&](int round, QPalette::ColorRole role, int alpha) {
        QColor colour = palette().color(role);
        colour.setAlpha(alpha);
        painter.fillRect(QRectF(x_of(round) - step / 2, top.top(), step, bottom - top.top()), colour);
    };
    for (const int round : session_.selection()) column(round, QPalette::Highlight, 70);
    if (hovered_ >= 0) column(hovered_, QPalette::Text, 28);
}

/// As many as there is room for, in steps that read easily.
void RoundsPlot::draw_numbers(QPainter& painter) const {
    const double bottom = strip_area(strip_count - 1).bottom();
    const int count = static_cast<int>(study_->lies().size());
    const QFontMetricsF metrics(font());
    const double room = metrics.horizontalAdvance(QStringLiteral("0000"));
    int every = 1;
    for (const int next : {2, 5, 10, 20, 50, 100, 200, 500})
        if (strip_area(0).width() / count * every < room) every = next;
    painter.setPen(palette().color(QPalette::Text));
    for (int round = 0; round < count; ++round) {
        if (round != 0 && (round + 1) % every != 0) continue;
        const QRectF box(x_of(round) - room, bottom + 2, 2 * room, metrics.height());
        painter.drawText(box, Qt::AlignHCenter | Qt::AlignTop, QString::number(round + 1));
    }
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
    const int count = study_ == nullptr ? 0 : static_cast<int>(study_->lies().size());
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
        QToolTip::showText(help->globalPos(),
                           round_words(round_strips(*study_, session_.preferences().units()), *round), this);
    } else {
        QToolTip::hideText();
    }
    return true;
}

}  // namespace roundwright::app
