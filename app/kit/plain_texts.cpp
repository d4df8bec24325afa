#include "app/kit/plain_texts.h"

#include <algorithm>

#include <QApplication>
#include <QCursor>
#include <QEvent>
#include <QLabel>
#include <QMessageBox>
#include <QScreen>

#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr qsizetype most_in_a_line = 100, most_lines = 20;

bool is_tip(const QLabel& label) { return label.inherits("QTipLabel"); }

bool is_in_message(const QLabel& label) { return qobject_cast<const QMessageBox*>(label.parentWidget()); }

void show_as_text(QLabel& label) {
    if (label.textFormat() == Qt::AutoText) label.setTextFormat(Qt::PlainText);
    if (is_in_message(label) && label.textFormat() == Qt::PlainText && !label.text().isEmpty())
        label.setText(plain_message(label.text()));
}

/// Qt has placed the tip by the size of its lines as they came: beside the pointer, and on the screen.
void place_again(QLabel& tip) {
    const QScreen* screen = tip.screen();
    if (!screen) return;
    const QRect room = screen->availableGeometry();
    const QPoint beside = QCursor::pos() + QPoint(2, 16);
    tip.move(std::clamp(beside.x(), room.left(), std::max(room.left(), room.right() - tip.width())),
             std::clamp(beside.y(), room.top(), std::max(room.top(), room.bottom() - tip.height())));
}

void break_into_lines(QLabel& tip) {
    const int room = tip.screen() ? tip.screen()->availableGeometry().width() : 800;
    const QString lines = tip_lines(tip.text(), tip.fontMetrics(), room * 3 / 4);
    if (lines == tip.text()) return;
    tip.setText(lines);
    tip.setWordWrap(false);
    tip.resize(tip.sizeHint() + QSize(1, 0));
    place_again(tip);
}

bool fits(const QString& line, const QFontMetrics& font, int width) {
    return line.size() <= most_in_a_line && font.horizontalAdvance(line) <= width;
}

/// Where a line that does not fit is broken: after the last blank that does, if there is one.
qsizetype break_of(const QString& line, const QFontMetrics& font, int width) {
    qsizetype letters = std::min(most_in_a_line, line.size());
    while (letters > 1 && !fits(line.left(letters), font, width)) letters -= 1 + letters / 16;
    const qsizetype blank = line.left(letters + 1).lastIndexOf(u' ');
    return blank > 0 ? blank + 1 : std::max<qsizetype>(letters, 1);
}

}  // namespace

PlainTexts::PlainTexts(QObject* parent) : QObject(parent) { qApp->installEventFilter(this); }

void PlainTexts::hold() {
    if (!qApp->findChild<PlainTexts*>(QString(), Qt::FindDirectChildrenOnly)) new PlainTexts(qApp);
}

/// A label is polished before its text is laid out for the first time, and before it is seen.
bool PlainTexts::eventFilter(QObject* watched, QEvent* event) {
    const auto type = event->type();
    if (type != QEvent::Polish && type != QEvent::Show && type != QEvent::Resize) return false;
    auto* label = qobject_cast<QLabel*>(watched);
    if (!label) return false;
    if (type == QEvent::Polish) show_as_text(*label);
    if (type != QEvent::Polish && is_tip(*label)) break_into_lines(*label);
    return false;
}

QString without_mnemonics(QString text) { return text.replace(u'&', QStringLiteral("&&")); }

QString tip_lines(const QString& text, const QFontMetrics& font, int width) {
    QStringList lines;
    const QStringList own_lines = plain_message(text).split(u'\n');
    for (QString line : own_lines) {
        while (!fits(line, font, width) && lines.size() <= most_lines) {
            const qsizetype at = break_of(line, font, width);
            lines << line.left(at).trimmed();
            line = line.mid(at);
        }
        lines << line;
        if (lines.size() > most_lines) break;
    }
    if (lines.size() > most_lines) {
        lines = lines.mid(0, most_lines);
        lines.last() = font.elidedText(lines.last() + QChar(0x2026), Qt::ElideRight, width);
    }
    return lines.join(u'\n');
}

}  // namespace roundwright::app
