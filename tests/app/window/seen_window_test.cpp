#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <memory>
#include <set>

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QLabel>
#include <QPointer>
#include <QPushButton>
#include <QRadioButton>
#include <QRegularExpression>
#include <QScreen>
#include <QScrollArea>
#include <QTabBar>
#include <QToolButton>

#include "app/kit/room_on_screen.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "render/drawing/contrast.h"
#include "tests/app/app_testing.h"
#include "tests/app/kit/seen_ring.h"
#include "tests/app/window/every_window.h"

namespace roundwright::app {
namespace {

constexpr double least_of_text = 4.5;      // WCAG 2.2, 1.4.3
constexpr double least_of_large_text = 3;  // of 18 points, or 14 in bold
constexpr double drawn_thinly = 0.85;      // strokes thinner than a pixel do not reach their colour

bool is_text(const QWidget& widget) {
    const auto* label = qobject_cast<const QLabel*>(&widget);
    if (label != nullptr) return !label->text().isEmpty() && label->pixmap().isNull();
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    return button != nullptr && !button->text().isEmpty();
}

double least_contrast(const QFont& font) {
    const double points = font.pointSizeF() > 0 ? font.pointSizeF() : font.pixelSize() * 0.75;
    const bool large = points >= 18 || (points >= 14 && font.weight() >= QFont::Bold);
    return (large ? least_of_large_text : least_of_text) * drawn_thinly;
}

/// Between what most of the place is and what in it differs most from that.
double contrast_within(const QImage& image, const QRect& place) {
    std::map<QRgb, int> counts;
    const QRect within = place.intersected(image.rect());
    for (int y = within.top(); y <= within.bottom(); ++y)
        for (int x = within.left(); x <= within.right(); ++x) ++counts[image.pixel(x, y)];
    if (counts.empty()) return 21;
    const QColor ground =
        QColor(std::ranges::max_element(counts, {}, [](const auto& one) { return one.second; })->first);
    double most = 1;
    for (const auto& [colour, count] : counts)
        most = std::max(most, render::contrast_ratio(QColor(colour), ground));
    return most;
}

/// Whole, and not in an area that has scrolled it away.
bool is_whole(const QWidget& widget) { return widget.visibleRegion().boundingRect() == widget.rect(); }

QString kind_of(const QWidget& control) {
    const auto* button = qobject_cast<const QAbstractButton*>(&control);
    QString kind = QLatin1String(control.metaObject()->className());
    if (button != nullptr && button->isChecked()) kind += QStringLiteral(" checked");
    if (button != nullptr && !button->icon().isNull()) kind += QStringLiteral(" with a sign");
    return kind;
}

bool takes_tab(const QWidget& widget) {
    return (widget.focusPolicy() & Qt::TabFocus) != 0 && widget.isEnabled() && !widget.focusProxy() &&
           is_whole(widget) && !widget.objectName().startsWith(QStringLiteral("qt_"));
}

/// In both themes, and on whatever screen ctest gives it: of 1280 x 800 with type of 100, 150 and 200 %.
class SeenWindow : public ::testing::TestWithParam<bool> {
  protected:
    void SetUp() override {
        const bool of_a_maker = QByteArray(qgetenv("QT_QPA_PLATFORM")).contains("configfile") &&
                                QGuiApplication::primaryScreen()->size() == QSize(1280, 800);
        if (!of_a_maker) GTEST_SKIP() << "ctest gives it its screens";
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session.preferences().set_units(LengthUnit::millimetres);
        session.preferences().set_terms(Terms::us);
        session.preferences().set_appearance(GetParam() ? Appearance::dark : Appearance::light);
        Toy toy = toy_of({6, 12, 18, 24, 60, 36, 36, 36, 30, 24, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 12, 15, 18, 18}, "Flipper"));
        session.start(toy);
        window = std::make_unique<MainWindow>(session, folder.filePath(QStringLiteral("state")));
        const QRect screen = QGuiApplication::primaryScreen()->geometry();
        window->resize(placed_on_screen({0, 0, 1272, 760}, screen).size());
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
        ASSERT_FALSE(session.save(folder.filePath(QStringLiteral("seal pup.roundwright"))));
        ASSERT_TRUE(wait_for_shape(session));
    }
    void TearDown() override { session.preferences().set_appearance(Appearance::system); }

    static void expect_text_is_read(QWidget& top, const QImage& image, const std::string& where) {
        for (const auto* widget : top.findChildren<QWidget*>()) {
            if (!widget->isVisible() || !widget->isEnabled() || widget->window() != &top) continue;
            if (!is_text(*widget) || !is_whole(*widget)) continue;
            const QRect place(widget->mapTo(&top, QPoint()), widget->size());
            EXPECT_GE(contrast_within(image, place.adjusted(4, 2, -4, -2)), least_contrast(widget->font()))
                << where << ": " << widget->metaObject()->className() << " “"
                << widget->property("text").toString().toStdString() << "”";
        }
    }
    /// One of each kind that the window shows.
    static void expect_ring_is_seen(QWidget& top, const QString& name) {
        std::set<QString> seen;
        QPointer<QWidget> before = top.focusWidget();
        std::vector<QPointer<QWidget>> controls;
        for (auto* each : top.findChildren<QWidget*>()) controls.emplace_back(each);
        for (const QPointer<QWidget>& control : controls) {
            if (control.isNull() || !control->isVisible() || control->window() != &top ||
                !takes_tab(*control))
                continue;
            if (!seen.insert(kind_of(*control)).second) continue;
            if (!before.isNull()) before->clearFocus();
            QTest::qWait(5);
            const QImage without = top.grab().toImage();
            control->setFocus(Qt::TabFocusReason);
            QTest::qWait(5);
            if (control.isNull() || top.focusWidget() != control) continue;
            const QImage with = top.grab().toImage();
            before = control;
            const QRect part = acted_on(*control);
            const QRect place(control->mapTo(&top, part.topLeft()), part.size());
            constexpr int around = 4;
            constexpr double most = 0.9;  // what else changes with the focus may take some of it away
            EXPECT_GE(clearly_changed(without, with, place.adjusted(-around, -around, around, around)),
                      most * perimeter_area(place.size()))
                << name.toStdString() << ": " << kind_of(*control).toStdString() << " “"
                << control->accessibleName().toStdString()
                << control->property("text").toString().toStdString() << "”";
            save(with, name + QLatin1Char(' ') + kind_of(*control));
        }
    }
    static void save(const QImage& image, const QString& name) {
        const QString folder = qEnvironmentVariable("ROUNDWRIGHT_SEEN_PICTURES");
        if (folder.isEmpty()) return;
        QDir().mkpath(folder);
        QString file = name;
        file.remove(QRegularExpression(QStringLiteral("[^a-zA-Z0-9 ]"))).replace(u' ', u'-');
        const QScreen& screen = *QGuiApplication::primaryScreen();
        image.save(QStringLiteral("%1/%2-%3-%4-%5.png")
                       .arg(folder, GetParam() ? QStringLiteral("dark") : QStringLiteral("light"))
                       .arg(screen.size().width())
                       .arg(qRound(screen.logicalDotsPerInchY()))
                       .arg(file));
    }

    QTemporaryDir folder;
    DocumentSession session;
    std::unique_ptr<MainWindow> window;
};

TEST_P(SeenWindow, TextIsReadAndTheRingIsSeenEverywhere) {
    for_every_window(*window, [](QWidget& top, const QString& name) {
        expect_text_is_read(top, top.grab().toImage(), name.toStdString());
        expect_ring_is_seen(top, name);
    });
}

INSTANTIATE_TEST_SUITE_P(LightAndDark, SeenWindow, ::testing::Bool());

}  // namespace
}  // namespace roundwright::app
