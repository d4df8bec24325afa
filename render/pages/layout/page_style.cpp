#include "render/pages/layout/page_style.h"

#include <cmath>

namespace roundwright::render {
namespace {

QFont font(const QStringList& families, double points, QFont::Weight weight) {
    QFont font;
    font.setFamilies(families);
    font.setPixelSize(static_cast<int>(std::lround(pt(points))));
    font.setWeight(weight);
    // Type is set at the page's own resolution: hinting for a screen would only shift letters.
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::PreferOutline);
    // Spacing however small keeps ligatures out, which would be copied from the page as odd characters.
    font.setLetterSpacing(QFont::AbsoluteSpacing, pt(0.02));
    return font;
}

QStringList sans() { return {QStringLiteral("DejaVu Sans")}; }
QStringList serif() { return {QStringLiteral("DejaVu Serif"), QStringLiteral("DejaVu Sans")}; }

}  // namespace

QFont body_font(double points) { return font(sans(), points, QFont::Normal); }
QFont bold_font(double points) { return font(sans(), points, QFont::Bold); }
QFont title_font(double points) { return font(serif(), points, QFont::Normal); }

QFont label_font(double points) {
    QFont label = font(sans(), points, QFont::Normal);
    label.setLetterSpacing(QFont::AbsoluteSpacing, pt(points) * 0.08);
    return label;
}

}  // namespace roundwright::render
