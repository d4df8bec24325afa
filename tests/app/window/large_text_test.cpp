#include <gtest/gtest.h>
#include <memory>

#include <QAbstractScrollArea>
#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QLineEdit>
#include <QMenuBar>
#include <QRadioButton>
#include <QRegularExpression>
#include <QScreen>
#include <QSettings>
#include <QStatusBar>
#include <QStyleOption>
#include <QTabBar>
#include <QToolButton>

#include "app/checks/checks_list.h"
#include "app/face/face_panel.h"
#include "app/files/autosave.h"
#include "app/files/recovery_dialog.h"
#include "app/gauge/measurement_dialog.h"
#include "app/kit/notice_bar.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/still_label.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "render/scene/scene_view.h"
#include "tests/app/app_testing.h"
#include "tests/app/window/every_window.h"

namespace roundwright::app {
namespace {

// What a screen of 1024 x 700 leaves within a window's frame and title.
constexpr QSize room_of_usual_type(1016, 660);

/// ctest runs these tests on screens in memory, of 1280 x 800 pixels with type of 150 and 200 %, and of as
/// many pixels as stay when everything is drawn so much larger. Elsewhere the screen says nothing of a
/// maker's.
QSize room() {
    const QScreen& screen = *QGuiApplication::primaryScreen();
    const bool of_a_maker = QByteArray(qgetenv("QT_QPA_PLATFORM")).contains("configfile");
    return of_a_maker ? placed_on_screen(screen.geometry(), screen.geometry()).size() : room_of_usual_type;
}

/// 1280 x 800 with everything drawn twice as large.
bool is_smallest() { return room().width() < 700; }

/// Rounds, shape and panels find no room beside each other.
bool has_strip() {
    const QScreen& screen = *QGuiApplication::primaryScreen();
    return room() != room_of_usual_type &&
           (screen.logicalDotsPerInchY() > 96 || screen.size().width() < 1000);
}

/// "1280-192"
QString screen_in_words() {
    const QScreen& screen = *QGuiApplication::primaryScreen();
    return QStringLiteral("%1-%2").arg(screen.size().width()).arg(qRound(screen.logicalDotsPerInchY()));
}

std::string said(const QSize& size) {
    return QStringLiteral("%1 x %2").arg(size.width()).arg(size.height()).toStdString();
}

/// "QPushButton “Cancel” 80 x 24"
std::string named(const QWidget& widget) {
    QString words = widget.property("text").toString();
    if (words.isEmpty()) words = widget.accessibleName();
    if (words.isEmpty()) words = widget.objectName();
    return QStringLiteral("%1 “%2” ")
               .arg(QLatin1String(widget.metaObject()->className()), words)
               .toStdString() +
           said(widget.size());
}

bool is_words(const QWidget& widget) {
    return qobject_cast<const QLabel*>(&widget) || qobject_cast<const QAbstractButton*>(&widget) ||
           qobject_cast<const QComboBox*>(&widget) || qobject_cast<const QAbstractSpinBox*>(&widget) ||
           qobject_cast<const QLineEdit*>(&widget);
}

/// What belongs to a control of Qt's own, such as a spin box's line.
bool is_part_of_a_control(const QWidget& widget) {
    const QWidget* parent = widget.parentWidget();
    return qobject_cast<const QAbstractSpinBox*>(parent) || qobject_cast<const QComboBox*>(parent) ||
           qobject_cast<const QTabBar*>(parent) || qobject_cast<const QLineEdit*>(parent) ||
           widget.objectName().startsWith(QStringLiteral("qt_"));
}

bool is_clipped(const QWidget& widget) {
    if (const auto* still = qobject_cast<const StillLabel*>(&widget))
        return still->text().endsWith(QChar(0x2026)) && !still->words().endsWith(QChar(0x2026));
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
        if (label->text().isEmpty()) return false;
        if (label->wordWrap()) return label->heightForWidth(label->width()) > label->height();
        return label->width() < label->sizeHint().width() || label->height() < label->sizeHint().height() - 1;
    }
    if (const auto* combo = qobject_cast<const QComboBox*>(&widget)) {
        QStyleOptionComboBox option;
        option.initFrom(combo);
        option.editable = combo->isEditable();
        const QRect words =
            combo->style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, combo);
        return combo->width() < combo->sizeHint().width() &&
               words.width() < combo->fontMetrics().horizontalAdvance(combo->currentText());
    }
    const bool button = qobject_cast<const QAbstractButton*>(&widget) != nullptr;
    const QSize least = button ? widget.sizeHint() : widget.minimumSizeHint();
    const bool own_least = widget.minimumWidth() > 0 && widget.minimumWidth() < least.width();
    return widget.height() < least.height() || (!own_least && widget.width() < least.width());
}

/// Whether the widget lies within all that holds it, where scrolling counts as lying within.
const QWidget* cut_off_by(const QWidget& widget) {
    QRect place = widget.rect();
    for (const QWidget* child = &widget; !child->isWindow(); child = child->parentWidget()) {
        const QWidget* parent = child->parentWidget();
        place.translate(child->pos());
        if (const auto* area = qobject_cast<const QAbstractScrollArea*>(parent->parentWidget());
            area != nullptr && area->viewport() == parent) {
            const bool across = area->horizontalScrollBarPolicy() != Qt::ScrollBarAlwaysOff;
            if (!across && child->width() > parent->width()) return area;
            place = parent->rect();
        }
        if (!parent->rect().contains(place)) return parent;
    }
    return nullptr;
}

void expect_all_is_read(const QWidget& window, const std::string& where) {
    for (const auto* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible() || !is_words(*widget) || is_part_of_a_control(*widget)) continue;
        if (widget->window() != &window) continue;
        EXPECT_FALSE(is_clipped(*widget))
            << where << ": clipped " << named(*widget) << " wants " << said(widget->sizeHint());
        const QWidget* by = cut_off_by(*widget);
        if (by != nullptr)
            ADD_FAILURE() << where << ": " << named(*widget) << " is cut off by " << named(*by);
    }
}

void picture(QWidget& window, const QString& name) {
    const QString folder = qEnvironmentVariable("ROUNDWRIGHT_LARGE_TEXT_PICTURES");
    if (folder.isEmpty()) return;
    QDir().mkpath(folder);
    QString file = name;
    file.remove(QRegularExpression(QStringLiteral("[^a-zA-Z0-9 ]"))).replace(u' ', u'-');
    window.grab().save(QStringLiteral("%1/%2-%3.png").arg(folder, file, screen_in_words()));
}

void expect_fits(QWidget& window, const QString& name) {
    const std::string where = name.toStdString();
    const QSize least = window.minimumSizeHint().expandedTo(window.minimumSize());
    EXPECT_LE(least.width(), room().width()) << where;
    EXPECT_LE(least.height(), room().height()) << where;
    window.resize(window.size().boundedTo(room()));
    for (int turn = 0; turn < 5; ++turn) QTest::qWait(5);
    EXPECT_LE(window.width(), room().width()) << where;
    EXPECT_LE(window.height(), room().height()) << where;
    expect_all_is_read(window, where);
    picture(window, name);
}

class LargeText : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session.preferences().set_units(LengthUnit::millimetres);
        session.preferences().set_terms(Terms::us);
        session.preferences().set_appearance(
            qEnvironmentVariableIsSet("ROUNDWRIGHT_LARGE_TEXT_DARK") ? Appearance::dark : Appearance::light);
        Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 30, 24, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 12, 15, 18, 18}, "Flipper"));
        session.start(toy);
        window = std::make_unique<MainWindow>(session, folder.filePath(QStringLiteral("state")));
        window->resize(room());
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
        ASSERT_FALSE(session.save(folder.filePath(QStringLiteral("seal pup.roundwright"))));
        settle();
    }
    void settle() {
        ASSERT_TRUE(wait_for_shape(session));
        for (int turn = 0; turn < 5; ++turn) QTest::qWait(5);
    }
    [[nodiscard]] QSize on_show(const QWidget& widget) const {
        return widget.visibleRegion().boundingRect().size();
    }

    QTemporaryDir folder;
    DocumentSession session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(LargeText, TheWindowFitsTheScreen) {
    window->panels().fold_all();
    settle();
    EXPECT_EQ(said(window->size()), said(room()));
    expect_fits(*window, QStringLiteral("window"));
    const auto& table = window->rounds_view();
    EXPECT_GE(on_show(*table.viewport()).height(), (is_smallest() ? 3 : 5) * table.rowHeight(0));
    const QSize shape = on_show(window->shape());
    if (room() == room_of_usual_type) return;
    EXPECT_GE((is_smallest() ? 5 : 3) * shape.width(), room().width())
        << said(shape) << " in " << said(room());
}

TEST_F(LargeText, EveryPanelFitsTheScreen) {
    for (const QString& key : window->panels().keys()) {
        window->panels().go_to_section(key);
        settle();
        EXPECT_EQ(said(window->size()), said(room())) << key.toStdString();
        EXPECT_FALSE(on_show(window->shape()).isEmpty()) << key.toStdString();
        expect_fits(*window, QStringLiteral("panel %1").arg(key));
    }
    for (const FeatureKind kind : {FeatureKind::safety_eye, FeatureKind::stitched_line}) {
        window->panels().go_to_section(QStringLiteral("face"));
        window->face().add(kind);
        settle();
        expect_fits(*window, QStringLiteral("face with feature %1").arg(static_cast<int>(kind)));
    }
}

TEST_F(LargeText, GoingToTheRoundsUncoversThem) {
    window->panels().go_to_section(QStringLiteral("stuffing"));
    settle();
    const bool covers = !window->rounds_view().isVisible();
    EXPECT_EQ(covers, has_strip()) << said(room());
    QTest::keyClick(window.get(), Qt::Key_7, Qt::AltModifier);
    settle();
    EXPECT_TRUE(window->rounds_view().isVisible());
    EXPECT_TRUE(window->rounds_view().hasFocus());
    EXPECT_EQ(window->panels().open_key().isEmpty(), covers);
}

TEST_F(LargeText, EveryDialogFitsTheScreen) {
    const int dialogs = for_every_dialog(*window, expect_fits);
    EXPECT_GT(dialogs, 12);
}

// What the maker works at keeps the greater part of the window, however many there are.
TEST_F(LargeText, LongNoticesLeaveRoomForTheWork) {
    const QString long_words = QStringLiteral(
        "“pup” can no longer be read. The end of the file is missing: it breaks off in line 2. The toy here "
        "is safe, but no file has it.");
    for (const char* cause : {"one", "two", "three"}) {
        window->notices().put_up(QLatin1String(cause), {NoticeRank::danger,
                                                        long_words,
                                                        {{QStringLiteral("Keep &both"), [] {}},
                                                         {QStringLiteral("Keep &mine"), [] {}}}});
        settle();
    }
    EXPECT_EQ(said(window->size()), said(room()));
    EXPECT_LE(3 * window->notices().height(), window->height());
    EXPECT_GT(window->notices().height(), window->fontMetrics().lineSpacing());
    const auto& table = window->rounds_view();
    EXPECT_GE(on_show(*table.viewport()).height(), 2 * table.rowHeight(0)) << said(room());
    picture(*window, QStringLiteral("notices"));
    // Every answer can be reached by Tab, and is seen then.
    ASSERT_TRUE(window->notices().take_keyboard());
    for (int button = 0; button < 6; ++button) {
        QWidget* focus = window->focusWidget();
        ASSERT_TRUE(window->notices().isAncestorOf(focus)) << button;
        settle();
        EXPECT_EQ(said(on_show(*focus)), said(focus->size())) << button;
        QTest::keyClick(focus, Qt::Key_Tab);
    }
}

TEST_F(LargeText, AMeasurementFitsTheScreen) {
    for (const auto& what : {GaugeMeasurement{CircleGauge{}, {}, "2026-05-03"},
                             GaugeMeasurement{SwatchGauge{20, 100, 22, 101.6, true, 1, 0}, {}, {}}}) {
        MeasurementDialog dialog(session, what, window.get());
        dialog.show();
        settle();
        expect_fits(dialog, QStringLiteral("measurement %1").arg(what.what.index()));
    }
}

}  // namespace
}  // namespace roundwright::app
