#include "app/window/theme.h"

#include <cmath>
#include <gtest/gtest.h>
#include <memory>

#include <QCheckBox>
#include <QImage>
#include <QRadioButton>

namespace roundwright::app {
namespace {

// Relative luminance and contrast ratio: WCAG 2.1, definitions; AA asks 4.5 for text, 3 for large text and
// parts of controls (success criteria 1.4.3 and 1.4.11).
double luminance(const QColor& colour) {
    const auto linear = [](double c) {
        return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
}

double contrast(const QColor& a, const QColor& b) {
    const double light = std::max(luminance(a), luminance(b));
    const double dark = std::min(luminance(a), luminance(b));
    return (light + 0.05) / (dark + 0.05);
}

class ThemeContrast : public ::testing::TestWithParam<bool> {};

TEST_P(ThemeContrast, OfTextIsEnough) {
    const QPalette palette = theme_palette(GetParam());
    const ThemeColours colours = theme_colours(GetParam());
    const QColor grounds[] = {palette.color(QPalette::Window), palette.color(QPalette::Base),
                              palette.color(QPalette::AlternateBase), palette.color(QPalette::Button)};
    const QColor inks[] = {palette.color(QPalette::Text),
                           palette.color(QPalette::Link),
                           colours.quiet_text,
                           colours.warning_text,
                           colours.error_text,
                           palette.color(QPalette::PlaceholderText)};
    for (const auto& ground : grounds) {
        for (const auto& ink : inks) {
            EXPECT_GE(contrast(ink, ground), 4.5)
                << ink.name().toStdString() << " on " << ground.name().toStdString();
        }
    }
    EXPECT_GE(contrast(palette.color(QPalette::Text), colours.soft_accent), 4.5);
    EXPECT_GE(contrast(colours.quiet_text, colours.soft_accent), 4.5);
    EXPECT_GE(contrast(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)), 4.5);
    EXPECT_GE(contrast(palette.color(QPalette::ToolTipText), palette.color(QPalette::ToolTipBase)), 4.5);
    EXPECT_GE(contrast(colours.accent, palette.color(QPalette::Window)), 3) << "the mark of focus";
    EXPECT_GE(contrast(colours.accent, palette.color(QPalette::Base)), 3) << "the mark of focus";
}

TEST_P(ThemeContrast, OfARimToTickInIsEnough) {
    Preferences preferences;
    preferences.set_appearance(GetParam() ? Appearance::dark : Appearance::light);
    const Theme theme(preferences);
    for (QAbstractButton* box :
         {static_cast<QAbstractButton*>(new QCheckBox), static_cast<QAbstractButton*>(new QRadioButton)}) {
        const std::unique_ptr<QAbstractButton> owned(box);
        box->resize(40, 30);
        const QImage picture = box->grab().toImage();
        const QColor ground = picture.pixelColor(picture.width() - 1, 0);
        double most = 1;
        for (int x = 0; x < picture.width(); ++x)
            most = std::max(most, contrast(picture.pixelColor(x, picture.height() / 2), ground));
        EXPECT_GE(most, 3) << box->metaObject()->className();
    }
}

INSTANTIATE_TEST_SUITE_P(LightAndDark, ThemeContrast, ::testing::Bool());

}  // namespace
}  // namespace roundwright::app
