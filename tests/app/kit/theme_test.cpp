#include "app/kit/theme.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <memory>

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QImage>
#include <QLineEdit>
#include <QRadioButton>
#include <QSpinBox>

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

// WCAG 2.1, 1.4.11.
TEST_P(ThemeContrast, OfTheRimOfWhatIsFilledInIsEnough) {
    Preferences preferences;
    preferences.set_appearance(GetParam() ? Appearance::dark : Appearance::light);
    const Theme theme(preferences);
    QWidget ground;
    ground.resize(300, 60);
    for (QWidget* box : {static_cast<QWidget*>(new QCheckBox), static_cast<QWidget*>(new QRadioButton),
                         static_cast<QWidget*>(new QSpinBox), static_cast<QWidget*>(new QDoubleSpinBox),
                         static_cast<QWidget*>(new QComboBox), static_cast<QWidget*>(new QLineEdit)}) {
        const std::unique_ptr<QWidget> owned(box);
        box->setParent(&ground);
        box->setGeometry(20, 10, 120, 36);
        const QImage picture = ground.grab().toImage();
        const QColor around = picture.pixelColor(5, 28);
        double most = 1;  // over the left edge
        for (int x = 15; x < 26; ++x) most = std::max(most, contrast(picture.pixelColor(x, 28), around));
        EXPECT_GE(most, 3) << box->metaObject()->className();
    }
}

INSTANTIATE_TEST_SUITE_P(LightAndDark, ThemeContrast, ::testing::Bool());

}  // namespace
}  // namespace roundwright::app
