#include "render/pages/layout/drawable_text.h"

#include <algorithm>

#include <QFontMetricsF>

#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

/// Letters of Latin, which every font of the pages has.
bool is_surely_drawn(QChar c) { return c.unicode() < 0x250; }

bool only_shapes_neighbours(char32_t c) {
    switch (QChar::category(c)) {
        case QChar::Mark_NonSpacing:
        case QChar::Mark_Enclosing:
        case QChar::Other_Format:
            return true;
        default:
            return false;
    }
}

/// Directional marks and line separators are read by the layout and not drawn.
bool is_for_layout(char32_t c) {
    return QChar::category(c) == QChar::Separator_Line || (c >= 0x200E && c <= 0x200F) ||
           (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
}

}  // namespace

QString drawable(const QString& text) {
    if (std::ranges::all_of(text, is_surely_drawn)) return text;
    const QFontMetricsF fonts(body_font());
    QString drawn;
    for (const char32_t c : text.toUcs4()) {
        if (is_for_layout(c) || fonts.inFontUcs4(c)) {
            drawn += QStringView(QChar::fromUcs4(c));
        } else if (!only_shapes_neighbours(c) && !drawn.endsWith(QChar::ReplacementCharacter)) {
            drawn += QChar(QChar::ReplacementCharacter);
        }
    }
    return drawn;
}

}  // namespace roundwright::render
