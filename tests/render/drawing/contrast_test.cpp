#include "render/drawing/contrast.h"

#include <gtest/gtest.h>

#include "render/pages/layout/page_style.h"
#include "render/pages/swatch.h"

namespace roundwright::render {
namespace {

TEST(Contrast, OfGreysOnWhite) {
    // WCAG 2.1, contrast ratio; values computed from its formula.
    const QColor white(Qt::white);
    EXPECT_NEAR(contrast_ratio(QColor(0x76, 0x76, 0x76), white), 4.5422, 5e-5);
    EXPECT_NEAR(contrast_ratio(QColor(0x77, 0x77, 0x77), white), 4.4781, 5e-5);
    EXPECT_NEAR(contrast_ratio(QColor(0x94, 0x94, 0x94), white), 3.0335, 5e-5);
    EXPECT_NEAR(contrast_ratio(white, QColor(0x95, 0x95, 0x95)), 2.9953, 5e-5);
    EXPECT_NEAR(contrast_ratio(white, Qt::black), 21, 1e-9);
}

TEST(Contrast, TextOfThePagesCanBeRead) {
    // WCAG 2.1, 1.4.3: text at least 4.5; 1.4.11: graphics at least 3.
    for (const QColor& paper : {QColor(Qt::white), QColor(page_colour::tint)}) {
        for (const QColor& text :
             {page_colour::ink, page_colour::soft_ink, page_colour::accent, page_colour::warning}) {
            EXPECT_GE(contrast_ratio(text, paper), 4.5) << text.name().toStdString();
        }
        EXPECT_GE(contrast_ratio(page_colour::drawn, paper), 3);
    }
}

TEST(Contrast, HatchingShowsOnEveryYarn) {
    for (int red = 0; red <= 255; red += 15) {
        for (int green = 0; green <= 255; green += 15) {
            for (int blue = 0; blue <= 255; blue += 15) {
                const QColor yarn(red, green, blue);
                EXPECT_GE(contrast_ratio(line_on(yarn), yarn), 3) << yarn.name().toStdString();
            }
        }
    }
}

}  // namespace
}  // namespace roundwright::render
