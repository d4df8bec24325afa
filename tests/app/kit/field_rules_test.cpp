// The wheel scrolls; it changes no field that has not the keyboard, and gives the keyboard to nothing.

#include <gtest/gtest.h>

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QScrollBar>
#include <QSlider>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <QtTest/qtestspontaneevent.h>

#include "app/chart/chart_window.h"
#include "app/export/mesh_dialog.h"
#include "app/export/picture_dialog.h"
#include "app/gauge/finished_piece_dialog.h"
#include "app/kit/length_spin_box.h"
#include "app/print/pattern_preview.h"
#include "app/read_pattern/pattern_review.h"
#include "app/reshape/form_dialog.h"
#include "app/reshape/join_dialog.h"
#include "app/reshape/reshape_dialog.h"
#include "app/toy/toy_details.h"
#include "app/work_along/work_along_view.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

/// One notch towards the maker, as from the system: Qt gives the keyboard to what takes it by the wheel.
void roll(QWidget* widget) {
    const QPointF place = widget->rect().center();
    QWheelEvent wheel(place, widget->mapToGlobal(place), {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QSpontaneKeyEvent::setSpontaneous(&wheel);
    qApp->notify(widget, &wheel);
}

QString value_of(const QWidget& field) {
    if (const auto* box = qobject_cast<const QAbstractSpinBox*>(&field)) return box->text();
    if (const auto* box = qobject_cast<const QComboBox*>(&field)) return box->currentText();
    if (const auto* slider = qobject_cast<const QSlider*>(&field)) return QString::number(slider->value());
    return {};
}

std::vector<QWidget*> fields_in(const QWidget& window) {
    std::vector<QWidget*> fields;
    for (auto* widget : window.findChildren<QWidget*>()) {
        const bool is_field = qobject_cast<QAbstractSpinBox*>(widget) || qobject_cast<QComboBox*>(widget) ||
                              qobject_cast<QSlider*>(widget);
        if (is_field && widget->isVisible() && widget->isEnabled() && widget->window() == &window)
            fields.push_back(widget);
    }
    return fields;
}

class FieldRulesTest : public ::testing::Test {
  protected:
    void expect_the_wheel_changes_nothing_in(QWidget& window) {
        window.show();
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        const auto fields = fields_in(window);
        EXPECT_FALSE(fields.empty()) << window.metaObject()->className();
        for (QWidget* field : fields) {
            QWidget* const focus = QApplication::focusWidget();
            if (focus == field) field->clearFocus();
            QWidget* const keyboard = QApplication::focusWidget();
            const QString value = value_of(*field);
            roll(field);
            for (auto* line : field->findChildren<QLineEdit*>()) roll(line);
            EXPECT_EQ(value_of(*field), value)
                << window.metaObject()->className() << ": " << field->metaObject()->className();
            EXPECT_EQ(QApplication::focusWidget(), keyboard);
            if (focus) focus->setFocus();
        }
    }

    MakerAtTheWindow maker{toy_to_type_into()};
};

TEST_F(FieldRulesTest, NoPanelTakesTheWheel) {
    maker.session.edit_piece(QStringLiteral("Eyes"), [](Piece& piece) { piece.features.resize(1); });
    for (const QString& key : maker.window->panels().keys()) {
        maker.window->panels().open_section(key);
        maker.window->fast_entry().focus_line();
        const std::string before = write_document(maker.session.toy());
        if (key != QStringLiteral("plot")) expect_the_wheel_changes_nothing_in(*maker.window);
        EXPECT_EQ(write_document(maker.session.toy()), before) << key.toStdString();
    }
}

TEST_F(FieldRulesTest, NoDialogTakesTheWheel) {
    auto& session = maker.session;
    QWidget* const window = maker.window.get();
    const std::vector<std::function<QWidget*()>> openings{
        [&] { return new ReshapeDialog(session, window); },
        [&] { return new FormDialog(session, window); },
        [&] { return new JoinDialog(session, window); },
        [&] { return new FinishedPieceDialog(session, window); },
        [&] { return new PictureDialog(session, maker.window->shape().scene(), window); },
        [&] { return new MeshDialog(session, window); },
        [&] { return new ToyDetailsDialog(session.toy(), window); },
        [&] { return new PatternReview(session, QStringLiteral("Rnd 1: 6 sc in magic ring"), window); },
        [&] { return new PatternPreview(session, window); },
        [&] { return new ChartWindow(session, window); },
        [&] {
            auto* view = new WorkAlongView(session);
            view->setWindowFlag(Qt::Window);
            return view;
        }};
    for (const auto& open : openings) {
        const std::unique_ptr<QWidget> dialog(open());
        expect_the_wheel_changes_nothing_in(*dialog);
    }
}

TEST_F(FieldRulesTest, ThePanelScrollsUnderThePointerAndTheFieldWithTheKeyboardTurns) {
    QScrollArea area;
    auto* page = new QWidget;
    auto* layout = new QVBoxLayout(page);
    auto* box = new QSpinBox;
    auto* other = new QSpinBox;
    for (auto* field : {box, other}) {
        field->setValue(50);
        layout->addWidget(field);
    }
    page->setMinimumHeight(2000);
    area.setWidget(page);
    area.resize(200, 200);
    area.show();
    area.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&area));
    other->setFocus();
    roll(box);
    EXPECT_EQ(box->value(), 50);
    EXPECT_GT(area.verticalScrollBar()->value(), 0);
    EXPECT_TRUE(other->hasFocus());
    const int scrolled = area.verticalScrollBar()->value();
    roll(other);
    EXPECT_EQ(other->value(), 49);
    EXPECT_EQ(area.verticalScrollBar()->value(), scrolled);
}

TEST_F(FieldRulesTest, TheTableScrollsWithoutTakingTheKeyboard) {
    maker.window->fast_entry().focus_line();
    roll(maker.table().viewport());
    EXPECT_TRUE(maker.window->fast_entry().line()->hasFocus());
}

TEST_F(FieldRulesTest, AYarnBeingChosenInTheTableTakesNoWheelWithoutTheKeyboard) {
    maker.click_cell(3, RoundColumn::yarn);
    maker.table().edit(maker.table().currentIndex());
    auto* picker = maker.table().viewport()->findChild<QComboBox*>();
    ASSERT_TRUE(picker);
    const int yarn = picker->currentIndex();
    {
        const QSignalBlocker held(picker);
        picker->clearFocus();
    }
    roll(picker);
    EXPECT_EQ(maker.round(3).yarn, static_cast<std::size_t>(yarn));
}

TEST_F(FieldRulesTest, ALengthThatStandsForNothingIsTypedOverHoweverBusyTheProgramIs) {
    LengthSpinBox box(maker.session.preferences(), 0, 500);
    box.setSpecialValueText(QStringLiteral("not measured"));
    QLineEdit before;
    box.show();
    before.show();
    before.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&before));
    box.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&box));
    box.clearFocus();
    box.setFocus(Qt::TabFocusReason);
    QTest::keyClick(&box, '5');
    QTest::keyClick(&box, '7');
    QCoreApplication::processEvents();
    QTest::keyClick(&box, Qt::Key_Return);
    EXPECT_EQ(box.millimetres(), 57);
    box.show_millimetres(0);
    box.clearFocus();
    auto* line = box.findChild<QLineEdit*>();
    QTest::mouseClick(line, Qt::LeftButton, {}, line->rect().center());
    QTest::keyClick(&box, '4');
    QTest::keyClick(&box, '2');
    QCoreApplication::processEvents();
    QTest::keyClick(&box, Qt::Key_Return);
    EXPECT_EQ(box.millimetres(), 42);
}

/// Alt and a letter press a button without giving it the keyboard.
TEST_F(FieldRulesTest, AButtonPressedByItsLetterHasWhatIsTyped) {
    JoinDialog dialog(maker.session);
    dialog.show();
    dialog.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    auto* neck = dialog.findChild<QSpinBox*>();
    neck->setFocus();
    neck->selectAll();
    QTest::keyClick(neck, '9');
    QTest::keyClick(neck, Qt::Key_J, Qt::AltModifier);
    EXPECT_EQ(neck->value(), 9);
    dialog.reject();
}

}  // namespace
}  // namespace roundwright::app
