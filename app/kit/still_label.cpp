#include "app/kit/still_label.h"

#include <algorithm>
#include <cmath>

#include <QEvent>
#include <QTextLayout>

namespace roundwright::app {

QString broken_and_elided(const QString& words, const QFont& font, int width, int lines) {
    QTextLayout layout(words, font);
    QStringList broken;
    layout.beginLayout();
    for (int number = 1; number <= lines; ++number) {
        QTextLine line = layout.createLine();
        if (!line.isValid()) break;
        line.setLineWidth(std::max(width, 1));
        const bool last = number == lines;
        const QString text = words.mid(line.textStart(), last ? -1 : line.textLength());
        broken << (last ? QFontMetrics(font).elidedText(text, Qt::ElideRight, width) : text.trimmed());
    }
    layout.endLayout();
    return broken.join(QLatin1Char('\n'));
}

StillLabel::StillLabel(const QString& name, QWidget* parent) : ReadOut(name, parent) {
    setTextFormat(Qt::PlainText);
    setAlignment(Qt::AlignLeft | Qt::AlignTop);
    setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

void StillLabel::set_lines(int lines) {
    lines_ = lines;
    updateGeometry();
    fit_words();
}

void StillLabel::say(const QString& words) {
    if (words == words_) return;
    words_ = words;
    if (!fit_words()) tell_change();
}

QSize StillLabel::sizeHint() const {
    // Lines are laid out in fractions of pixels: whole ones cut what reaches below the last.
    const double height = lines_ * QFontMetricsF(font()).lineSpacing();
    return {fontMetrics().averageCharWidth() * 20, static_cast<int>(std::ceil(height)) + 1};
}

QSize StillLabel::minimumSizeHint() const { return {0, sizeHint().height()}; }

void StillLabel::resizeEvent(QResizeEvent* event) {
    ReadOut::resizeEvent(event);
    fit_words();
}

void StillLabel::changeEvent(QEvent* event) {
    ReadOut::changeEvent(event);
    if (event->type() != QEvent::FontChange) return;
    updateGeometry();
    fit_words();
}

bool StillLabel::fit_words() {
    const QString shown = broken_and_elided(words_, font(), width(), lines_);
    const bool changes = shown != text();
    if (changes) setText(shown);
    setToolTip(shown.endsWith(QChar(0x2026)) && !words_.endsWith(QChar(0x2026)) ? words_ : QString());
    return changes;
}

}  // namespace roundwright::app
