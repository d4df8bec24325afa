#include <algorithm>
#include <gtest/gtest.h>
#include <memory>

#include <QCheckBox>
#include <QComboBox>
#include <QDBusVariant>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSettings>
#include <QSlider>
#include <QSpinBox>
#include <QStyle>
#include <QToolButton>

#include "app/kit/look.h"
#include "app/kit/system_wishes.h"
#include "render/drawing/contrast.h"

namespace roundwright::app {
namespace {

/// What the desktop's portal sends when its user changes a setting.
void desktop_tells(const QString& group, const QString& key, const QVariant& value) {
    ASSERT_TRUE(QMetaObject::invokeMethod(&SystemWishes::instance(), "setting_changed", Q_ARG(QString, group),
                                          Q_ARG(QString, key), Q_ARG(QDBusVariant, QDBusVariant(value))));
}

const auto appearance = QStringLiteral("org.freedesktop.appearance");
const auto desktop = QStringLiteral("org.gnome.desktop.interface");

class FollowedLive : public ::testing::Test {
  protected:
    void SetUp() override {
        preferences_.set_appearance(Appearance::light);
        theme_ = std::make_unique<Theme>(preferences_);
    }
    void TearDown() override {
        desktop_tells(appearance, QStringLiteral("contrast"), 0U);
        desktop_tells(desktop, QStringLiteral("enable-animations"), true);
        desktop_tells(desktop, QStringLiteral("text-scaling-factor"), 1.0);
        ReadingAids::instance().set_more_contrast(false);
        ReadingAids::instance().set_text_percent(100);
        preferences_.set_appearance(Appearance::system);
    }
    Preferences preferences_;
    std::unique_ptr<Theme> theme_;
};

TEST_F(FollowedLive, MoreContrastByTheDesktopAndBack) {
    const QPalette usual = QApplication::palette();
    desktop_tells(appearance, QStringLiteral("contrast"), 1U);
    EXPECT_EQ(QApplication::palette().color(QPalette::Text), QColor(Qt::black));
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), QColor(Qt::white));
    EXPECT_EQ(ring_width(), 3);
    desktop_tells(appearance, QStringLiteral("contrast"), 0U);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), usual.color(QPalette::Window));
    EXPECT_EQ(ring_width(), 2);
}

TEST_F(FollowedLive, MoreContrastByTheMakerIsRemembered) {
    ReadingAids::instance().set_more_contrast(true);
    EXPECT_EQ(QApplication::palette().color(QPalette::Text), QColor(Qt::black));
    EXPECT_TRUE(QSettings().value(QStringLiteral("more-contrast")).toBool());
}

TEST_F(FollowedLive, LessMotionByTheDesktopOrTheMaker) {
    EXPECT_FALSE(less_motion());
    desktop_tells(desktop, QStringLiteral("enable-animations"), false);
    EXPECT_TRUE(less_motion());
    EXPECT_EQ(QApplication::style()->styleHint(QStyle::SH_Widget_Animation_Duration), 0);
    desktop_tells(desktop, QStringLiteral("enable-animations"), true);
    EXPECT_FALSE(less_motion());
    preferences_.set_reduced_motion(true);
    EXPECT_TRUE(less_motion());
    preferences_.set_reduced_motion(false);
}

TEST_F(FollowedLive, LargerTextByTheDesktopAndByTheMaker) {
    QLabel label(QStringLiteral("84 mm wide"));
    label.ensurePolished();
    const double usual = label.fontInfo().pointSizeF();
    desktop_tells(desktop, QStringLiteral("text-scaling-factor"), 1.0);
    desktop_tells(desktop, QStringLiteral("text-scaling-factor"), 1.5);
    EXPECT_NEAR(label.fontInfo().pointSizeF() / usual, 1.5, 0.1);
    desktop_tells(desktop, QStringLiteral("text-scaling-factor"), 1.0);
    EXPECT_NEAR(label.fontInfo().pointSizeF() / usual, 1, 0.05);
    ReadingAids::instance().set_text_percent(200);
    EXPECT_NEAR(label.fontInfo().pointSizeF() / usual, 2, 0.1);
}

// WCAG 2.2, 1.4.6.
TEST(MoreContrast, OfTextIsSevenToOne) {
    for (const bool dark : {false, true}) {
        const QPalette palette = contrast_palette(dark);
        const ThemeColours colours = contrast_colours(dark);
        for (const QColor& ink :
             {palette.color(QPalette::Text), palette.color(QPalette::Link), colours.quiet_text,
              colours.warning_text, colours.error_text, colours.accent}) {
            for (const QColor& ground :
                 {palette.color(QPalette::Window), palette.color(QPalette::AlternateBase)})
                EXPECT_GE(render::contrast_ratio(ink, ground), 7)
                    << ink.name().toStdString() << (dark ? " dark" : "");
        }
        EXPECT_GE(render::contrast_ratio(palette.color(QPalette::HighlightedText),
                                         palette.color(QPalette::Highlight)),
                  7);
        EXPECT_GE(render::contrast_ratio(colours.rim, palette.color(QPalette::Base)), 4.5);
    }
}

// WCAG 2.2, 2.5.8: at least 24 by 24 px.
TEST_F(FollowedLive, ControlsAreLargeEnoughToHit) {
    auto* bare = new QToolButton;
    bare->setText(QStringLiteral("top"));
    auto* combo = new QComboBox;
    auto* tick = new QCheckBox(QStringLiteral("i"));
    auto* button = new QPushButton(QStringLiteral("i"));
    for (QWidget* control :
         {static_cast<QWidget*>(bare), static_cast<QWidget*>(combo), static_cast<QWidget*>(tick),
          static_cast<QWidget*>(button), static_cast<QWidget*>(new QRadioButton),
          static_cast<QWidget*>(new QSpinBox), static_cast<QWidget*>(new QDoubleSpinBox),
          static_cast<QWidget*>(new QLineEdit), static_cast<QWidget*>(new QSlider(Qt::Horizontal))}) {
        const std::unique_ptr<QWidget> owned(control);
        QFont small = control->font();
        small.setPixelSize(9);
        control->setFont(small);
        control->ensurePolished();
        EXPECT_GE(control->sizeHint().width(), 24) << control->metaObject()->className();
        EXPECT_GE(std::max(control->sizeHint().height(), control->minimumHeight()), 24)
            << control->metaObject()->className();
    }
}

}  // namespace
}  // namespace roundwright::app
