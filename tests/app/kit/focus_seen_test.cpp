#include <algorithm>
#include <gtest/gtest.h>
#include <memory>

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QGridLayout>
#include <QGroupBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollArea>
#include <QSlider>
#include <QSpinBox>
#include <QTabBar>
#include <QTableWidget>
#include <QTest>
#include <QToolButton>

#include "app/kit/theme.h"
#include "tests/app/kit/seen_ring.h"

namespace roundwright::app {
namespace {

/// One of each kind of control, as they stand in the program.
class FocusSeen : public ::testing::TestWithParam<bool> {
  protected:
    void SetUp() override {
        preferences_.set_appearance(GetParam() ? Appearance::dark : Appearance::light);
        theme_ = std::make_unique<Theme>(preferences_);
        layout_ = new QGridLayout(&window_);
        layout_->setSpacing(10);
        add_buttons();
        add_fields();
        add_views();
        window_.show();
        window_.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window_));
    }
    void TearDown() override { preferences_.set_appearance(Appearance::system); }

    void add(QWidget* control) {
        layout_->addWidget(control, layout_->count() / 3, layout_->count() % 3);
        controls_.push_back(control);
    }
    void add_buttons() {
        add(new QPushButton(QStringLiteral("Keep")));
        auto* usual = new QPushButton(QStringLiteral("The usual"));
        usual->setDefault(true);
        add(usual);
        for (const bool checked : {false, true}) {
            auto* title = new QToolButton;
            title->setText(QStringLiteral("Stuffing"));
            title->setCheckable(true);
            title->setChecked(checked);
            title->setFocusPolicy(Qt::TabFocus);
            add(title);
            auto* tick = new QCheckBox(QStringLiteral("Stuffed"));
            tick->setChecked(checked);
            add(tick);
        }
        add(new QRadioButton(QStringLiteral("Closed")));
        auto* tabs = new QTabBar;
        tabs->addTab(QStringLiteral("Head"));
        tabs->addTab(QStringLiteral("Body"));
        add(tabs);
        auto* group = new QGroupBox(QStringLiteral("Undo rounds"));
        group->setCheckable(true);
        group->setMinimumSize(120, 50);
        add(group);
    }
    void add_fields() {
        add(new QLineEdit(QStringLiteral("6, 12, 18")));
        add(new QSpinBox);
        add(new QDoubleSpinBox);
        auto* combo = new QComboBox;
        combo->addItems({QStringLiteral("magic ring"), QStringLiteral("chain")});
        add(combo);
        add(new QSlider(Qt::Horizontal));
        auto* notes = new QPlainTextEdit(QStringLiteral("Notes"));
        notes->setTabChangesFocus(true);
        notes->setMaximumHeight(70);
        add(notes);
        auto* words = new QLabel(QStringLiteral("84 mm wide"));
        words->setTextInteractionFlags(Qt::TextSelectableByKeyboard | Qt::TextSelectableByMouse);
        words->setFocusPolicy(Qt::StrongFocus);
        add(words);
        auto* area = new QScrollArea;
        auto* inside = new QPushButton(QStringLiteral("In a panel"));
        area->setFocusPolicy(Qt::NoFocus);
        area->setFrameShape(QFrame::NoFrame);
        area->setWidget(inside);
        area->setWidgetResizable(true);
        area->setMaximumHeight(40);
        layout_->addWidget(area, layout_->count() / 3, layout_->count() % 3);
        controls_.push_back(inside);
    }
    void add_views() {
        for (const bool selected : {false, true}) {
            auto* list = new QListWidget;
            list->addItems({QStringLiteral("Round 6 ruffles"), QStringLiteral("Round 9 cups")});
            list->setCurrentRow(
                1, selected ? QItemSelectionModel::ClearAndSelect : QItemSelectionModel::NoUpdate);
            list->setMaximumHeight(90);
            add(list);
        }
        add(new QListWidget);  // nothing in it
        controls_.back()->setMaximumHeight(60);
        auto* table = new QTableWidget(2, 2);
        table->setTabKeyNavigation(false);
        table->setCurrentCell(0, 1);
        table->setMaximumHeight(110);
        add(table);
    }
    QImage picture() {
        QTest::qWait(20);
        return window_.grab().toImage().convertToFormat(QImage::Format_RGB32);
    }
    /// Goes on by real Tab keys until the control has the focus.
    void tab_to(QWidget* control) {
        for (std::size_t i = 0; i <= 2 * controls_.size() && !control->hasFocus(); ++i)
            QTest::keyClick(QApplication::focusWidget() ? QApplication::focusWidget() : &window_,
                            Qt::Key_Tab);
        ASSERT_TRUE(control->hasFocus()) << control->metaObject()->className();
    }

    Preferences preferences_;
    std::unique_ptr<Theme> theme_;
    QWidget window_;
    QGridLayout* layout_ = nullptr;
    std::vector<QWidget*> controls_;
};

// WCAG 2.2, 2.4.13: at least as large as a perimeter 2 px thick, at 3 : 1 between the two states.
TEST_P(FocusSeen, OnEachKindOfControlByTab) {
    for (std::size_t i = 0; i < controls_.size(); ++i) {
        QWidget* control = controls_[i];
        tab_to(controls_[(i + 1) % controls_.size()]);
        const QImage without = picture();
        tab_to(control);
        const QImage with = picture();
        const QRect part = acted_on(*control);
        const QRect place(control->mapTo(&window_, part.topLeft()), part.size());
        constexpr int around = 4;
        const int changed = clearly_changed(without, with, place.adjusted(-around, -around, around, around));
        EXPECT_GE(changed, perimeter_area(place.size()) * 0.98)
            << control->metaObject()->className() << " number " << i;
        RecordProperty(QStringLiteral("changed_%1").arg(i).toStdString(), changed);
    }
    if (const QString folder = qEnvironmentVariable("ROUNDWRIGHT_FOCUS_PICTURES"); !folder.isEmpty()) {
        QDir().mkpath(folder);
        for (std::size_t i = 0; i < controls_.size(); ++i) {
            tab_to(controls_[i]);
            const QString look = GetParam() ? QStringLiteral("dark") : QStringLiteral("light");
            picture().save(QStringLiteral("%1/%2_%3.png").arg(folder, look).arg(i));
        }
    }
}

TEST_P(FocusSeen, FollowsTheCurrentRowAndGoesWithTheFocus) {
    auto* list = qobject_cast<QListWidget*>(controls_[controls_.size() - 4]);
    ASSERT_TRUE(list);
    tab_to(list);
    const QImage at_second = picture();
    QTest::keyClick(list, Qt::Key_Up);
    const QImage at_first = picture();
    const QRect row = list->visualItemRect(list->item(1));
    const QRect place(list->viewport()->mapTo(&window_, row.topLeft()), row.size());
    EXPECT_GE(clearly_changed(at_first, at_second, place.adjusted(0, 2, 0, 0)), 2 * row.height());
    list->hide();
    const QImage hidden = picture();
    list->show();
    tab_to(controls_.front());
    list->hide();
    EXPECT_LT(clearly_changed(hidden, picture(), place.adjusted(-4, -4, 4, 4)), 10)
        << "a ring was left behind";
}

INSTANTIATE_TEST_SUITE_P(LightAndDark, FocusSeen, ::testing::Bool());

}  // namespace
}  // namespace roundwright::app
