#pragma once

#include <QColor>
#include <QFont>

#include "render/pages/layout/paper.h"

namespace roundwright::render {

/// Colours of the printed page, on white. Every one that carries text has a contrast of at least 4.5.
namespace page_colour {
inline constexpr QColor ink{34, 40, 46};
inline constexpr QColor soft_ink{84, 94, 102};
inline constexpr QColor accent{23, 99, 110};
inline constexpr QColor warning{150, 52, 20};
inline constexpr QColor rule{196, 205, 208};  ///< hair lines that part, and carry no meaning
inline constexpr QColor tint{242, 246, 246};  ///< behind text in ink
inline constexpr QColor drawn{96, 106, 114};  ///< lines of drawings
}  // namespace page_colour

/// Type of the pages: one family for what is read, its serif for titles.
[[nodiscard]] QFont body_font(double points = 9);
[[nodiscard]] QFont bold_font(double points = 9);
[[nodiscard]] QFont title_font(double points);
/// Spaced capitals for labels; the text itself stays as it is written.
[[nodiscard]] QFont label_font(double points = 7);

/// White round the page's contents, layout units. The foot holds the running title and the page number.
struct PageFrame {
    Paper paper = Paper::a4;

    [[nodiscard]] QSizeF page() const { return paper_size_mm(paper) * units_per_mm; }
    [[nodiscard]] double left() const { return mm(22); }
    [[nodiscard]] double top() const { return mm(20); }
    [[nodiscard]] double foot() const { return mm(24); }
    [[nodiscard]] double width() const { return page().width() - 2 * left(); }
    [[nodiscard]] double height() const { return page().height() - top() - foot(); }
};

}  // namespace roundwright::render
