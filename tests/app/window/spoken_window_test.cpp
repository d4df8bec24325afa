#include <QFileDialog>
#include <QMessageBox>
#include <QPointer>
#include <QPushButton>
#include <QToolButton>

#include "app/files/file_questions.h"
#include "app/files/recovery_dialog.h"
#include "app/gauge/gauge_panel.h"
#include "app/gauge/several_page.h"
#include "app/kit/notice_bar.h"
#include "app/plot/rounds_plot.h"
#include "app/rounds/rounds_in_words.h"
#include "render/scene/scene_view.h"
#include "tests/app/files/kept_testing.h"
#include "tests/app/window/accessible_tree.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

Toy toy_with_a_face() {
    Toy toy = toy_to_type_into();
    Feature eyes;
    eyes.kind = FeatureKind::safety_eye;
    eyes.pair = true;
    eyes.round = 5;
    eyes.stitches_apart = 6;
    Feature nose;
    nose.kind = FeatureKind::safety_nose;
    nose.round = 7;
    Feature mouth;
    mouth.kind = FeatureKind::stitched_line;
    mouth.round = 8;
    mouth.end_round = 8;
    mouth.end_stitches_right = 3;
    toy.pieces[0].features = {eyes, nose, mouth};
    toy.pieces[0].rounds[6].note = "Mark this round.";
    return toy;
}

std::string tree_faults(QWidget& window) {
    if (qEnvironmentVariableIsSet("ROUNDWRIGHT_SHOW_TREE"))
        qInfo().noquote() << accessible_tree_in_words(window);
    return faults_of_accessible_tree(window).join(QLatin1Char('\n')).toStdString();
}

TEST(SpokenWindow, AFreshToy) {
    Toy fresh;
    fresh.yarns.push_back({});
    fresh.pieces.push_back({});
    MakerAtTheWindow maker(fresh);
    for (const QString& key : maker.window->panels().keys()) {
        maker.window->panels().open_section(key);
        EXPECT_EQ(tree_faults(*maker.window), "") << key.toStdString();
    }
}

TEST(SpokenWindow, EveryPanelOfAToyWithAFace) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.session.select_rounds({3, 4});
    for (const QString& key : maker.window->panels().keys()) {
        maker.window->panels().open_section(key);
        QTest::qWait(20);
        EXPECT_EQ(tree_faults(*maker.window), "") << key.toStdString();
    }
    maker.window->panels().fold_all();
    EXPECT_EQ(tree_faults(*maker.window), "");
}

TEST(SpokenWindow, EveryPageOfTheGaugeAndEveryPartOfTheFace) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.window->panels().open_section(QStringLiteral("gauge"));
    auto* source = maker.window->findChild<GaugePanel*>()->findChild<QComboBox*>();
    for (int page = 0; page < source->count(); ++page) {
        source->setCurrentIndex(page);
        Q_EMIT source->activated(page);
        QTest::qWait(10);
        EXPECT_EQ(tree_faults(*maker.window), "") << source->itemText(page).toStdString();
    }
    maker.window->panels().open_section(QStringLiteral("face"));
    for (auto* list : maker.window->panels().findChildren<QListView*>()) {
        if (!list->isVisible()) continue;
        for (int row = 0; row < list->model()->rowCount(); ++row) {
            list->setCurrentIndex(list->model()->index(row, 0));
            EXPECT_EQ(tree_faults(*maker.window), "") << row;
        }
    }
}

/// Every action of the menus that opens a window, with whatever it opens.
TEST(SpokenWindow, EveryDialog) {
    MakerAtTheWindow maker(toy_with_a_face());
    std::vector<QAction*> asking;
    for (const QMenu* menu : maker.window->findChildren<QMenu*>())
        for (QAction* action : menu->actions())
            if (action->isEnabled() && action->text().contains(QStringLiteral("…"))) asking.push_back(action);
    for (QAction* action : maker.window->actions())
        if (action->shortcut() == QKeySequence(Qt::Key_F1)) asking.push_back(action);
    QSet<QString> seen;
    for (QAction* action : asking) {
        const std::string name = action->text().toStdString();
        QTimer closer;
        QObject::connect(&closer, &QTimer::timeout, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            if (qobject_cast<QFileDialog*>(dialog) == nullptr) {
                seen.insert(dialog->windowTitle());
                EXPECT_EQ(tree_faults(*dialog), "") << name;
            }
            dialog->reject();
        });
        closer.start(150);
        action->trigger();
        QTest::qWait(250);
        for (QWidget* top : QApplication::topLevelWidgets()) {
            if (!top->isVisible() || top == maker.window.get()) continue;
            seen.insert(top->windowTitle());
            EXPECT_EQ(tree_faults(*top), "") << name;
            top->close();
        }
    }
    EXPECT_GT(seen.size(), 10) << seen.values().join(QLatin1Char('|')).toStdString();
}

/// Every dialog that is asked, walked and then rejected.
class WalkedDialogs {
  public:
    WalkedDialogs() {
        QObject::connect(&timer_, &QTimer::timeout, &timer_, [this] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr || dialog == last_) return;
            last_ = dialog;
            titles << dialog->windowTitle();
            EXPECT_EQ(tree_faults(*dialog), "") << dialog->windowTitle().toStdString();
            if (auto* box = qobject_cast<QMessageBox*>(dialog)) expect_told(*box);
            dialog->reject();
        });
        timer_.start(30);
    }
    QStringList titles;

  private:
    /// A reader says a message box by its labels.
    static void expect_told(QMessageBox& box) {
        const QString all = accessible_names(box).join(u'\n');
        EXPECT_TRUE(all.contains(box.text())) << box.text().toStdString();
        EXPECT_TRUE(all.contains(box.informativeText())) << box.informativeText().toStdString();
        EXPECT_NE(qobject_cast<QPushButton*>(box.focusWidget()), nullptr) << box.text().toStdString();
    }
    QTimer timer_;
    QPointer<QDialog> last_;
};

TEST(SpokenWindow, EveryQuestionAboutFiles) {
    MakerAtTheWindow maker(toy_with_a_face());
    WalkedDialogs walked;
    EXPECT_EQ(ask_which_to_keep(maker.window.get(), QStringLiteral("Seal pup"), true, {}), Keep::undecided);
    EXPECT_EQ(ask_which_to_keep(maker.window.get(), QStringLiteral("Seal pup"), false,
                                QStringLiteral("It is empty.")),
              Keep::undecided);
    EXPECT_FALSE(wants_file_instead(maker.window.get(), QStringLiteral("Seal pup"), true));
    EXPECT_FALSE(wants_to_replace(maker.window.get(), QStringLiteral("notes.txt")));
    rename_piece(maker.session, "Pup");
    EXPECT_FALSE(maker.window->close());
    EXPECT_EQ(walked.titles.size(), 5) << walked.titles.join(u'|').toStdString();
}

TEST(SpokenWindow, WhatWasLeftBehind) {
    QTemporaryDir folder;
    const QString state = folder.filePath(QStringLiteral("state"));
    leave_behind(state, {}, "Pup");
    leave_behind(state, {}, "Whelk");
    DocumentSession session;
    const Autosave autosave(session, state);
    RecoveryDialog dialog(autosave, autosave.left_behind(), {});
    dialog.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    EXPECT_EQ(tree_faults(dialog), "");
    const auto details = [&dialog] {
        for (const QString& name : accessible_names(dialog))
            if (name.startsWith(QStringLiteral("What is in this copy: "))) return name;
        return QString();
    };
    EXPECT_FALSE(details().isEmpty());
    QTest::keyClick(dialog.focusWidget(), Qt::Key_Down);
    EXPECT_FALSE(details().isEmpty());
}

TEST(SpokenWindow, MeasurementsAndTheirDialog) {
    Toy toy = toy_with_a_face();
    toy.gauge = SeveralGauge{{{CircleGauge{.rounds = 5, .increases = 6, .across_mm = 52}, {}, "2026-05-01"},
                              {CircleGauge{.rounds = 5, .increases = 6, .across_mm = 58}, {}, "2026-05-03"}}};
    MakerAtTheWindow maker(toy);
    maker.window->panels().open_section(QStringLiteral("gauge"));
    auto& page = maker.window->findChild<GaugePanel*>()->several();
    page.list().setCurrentIndex(page.list().model()->index(1, 0));
    EXPECT_EQ(tree_faults(*maker.window), "");
    WalkedDialogs walked;
    page.list().setFocus();
    maker.press(Qt::Key_Return);
    EXPECT_TRUE(wait_until([&walked] { return walked.titles.size() == 1; }));
}

TEST(SpokenWindow, NoticesAndWhatIsReadOnly) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.window->notices().put_up(QStringLiteral("one"),
                                   {NoticeRank::danger,
                                    QStringLiteral("Unsaved changes cannot be kept safe."),
                                    {{QStringLiteral("&Save"), [] {}}, {QStringLiteral("Not &now"), [] {}}}});
    EXPECT_EQ(tree_faults(*maker.window), "");
    DocumentSession other;
    MainWindow looking(other, maker.folder.filePath(QStringLiteral("state")));
    looking.show();
    looking.begin(maker.file());
    ASSERT_TRUE(QTest::qWaitForWindowActive(&looking));
    ASSERT_TRUE(other.read_only());
    EXPECT_EQ(tree_faults(looking), "");
}

QString heard(const QWidget& widget) {
    return QAccessible::queryAccessibleInterface(const_cast<QWidget*>(&widget))->text(QAccessible::Name);
}

TEST(SpokenWindow, SizeAndShapeAreInTheTreeAndCurrent) {
    MakerAtTheWindow maker(toy_with_a_face());
    const auto said = [&](const QString& what) {
        for (const QString& name : accessible_names(*maker.window))
            if (name.startsWith(what + QStringLiteral(": "))) return name;
        return QString();
    };
    const QString before = said(QStringLiteral("Size of the piece"));
    EXPECT_TRUE(before.contains(QStringLiteral("wide"))) << before.toStdString();
    EXPECT_TRUE(said(QStringLiteral("Shape in words")).contains(QStringLiteral("widest at round")));
    EXPECT_EQ(said(QStringLiteral("The whole piece")),
              QStringLiteral("The whole piece: 12 rounds, 348 stitches"));
    maker.click_cell(11);
    maker.type(QStringLiteral("60"));
    maker.press(Qt::Key_Return);
    ASSERT_TRUE(wait_for_shape(maker.session));
    EXPECT_NE(said(QStringLiteral("Size of the piece")), before);
}

TEST(SpokenWindow, EveryCellSaysItsRoundAndColumn) {
    MakerAtTheWindow maker(toy_with_a_face());
    const auto& model = *maker.table().model();
    const auto said = [&](int row, RoundColumn column) {
        return model.index(row, static_cast<int>(column)).data(Qt::AccessibleTextRole).toString();
    };
    EXPECT_EQ(said(3, RoundColumn::stitches), QStringLiteral("Round 4, stitches, 24"));
    EXPECT_EQ(said(3, RoundColumn::change), QStringLiteral("Round 4, change, +6"));
    EXPECT_EQ(said(0, RoundColumn::change), QStringLiteral("Round 1, change, empty"));
    EXPECT_EQ(said(3, RoundColumn::yarn), QStringLiteral("Round 4, yarn, A Fog grey"));
    EXPECT_TRUE(said(3, RoundColumn::width).startsWith(QStringLiteral("Round 4, width, ")));
    EXPECT_TRUE(said(3, RoundColumn::width).endsWith(QStringLiteral(" mm")));
    EXPECT_EQ(said(12, RoundColumn::number), QStringLiteral("Next round, 13"));
    EXPECT_EQ(said(12, RoundColumn::stitches), QStringLiteral("Next round, 13, stitches, empty"));
    EXPECT_TRUE(said(6, RoundColumn::number).contains(QStringLiteral("has a note")));
    EXPECT_EQ(model.headerData(3, Qt::Vertical, Qt::AccessibleTextRole).toString(),
              QStringLiteral("Round 4"));
    auto* table = QAccessible::queryAccessibleInterface(&maker.table())->tableInterface();
    auto* cell = table->cellAt(3, 1);
    ASSERT_NE(cell, nullptr);
    EXPECT_EQ(cell->text(QAccessible::Name), QStringLiteral("Round 4, stitches, 24"));
    const auto heads = cell->tableCellInterface()->rowHeaderCells();
    ASSERT_EQ(heads.size(), 1);
    EXPECT_EQ(heads.front()->text(QAccessible::Name), QStringLiteral("Round 4"));
    // Qt makes a new one for each call and keeps none of them (6.4).
    QAccessible::deleteAccessibleInterface(QAccessible::registerAccessibleInterface(heads.front()));
}

TEST(SpokenWindow, ARoundToFixSaysSo) {
    Toy toy = toy_to_type_into();
    toy.pieces[0] = piece_of({6, 12, 18, 60, 60});
    MakerAtTheWindow maker(toy);
    const auto number = maker.table().model()->index(3, 0);
    EXPECT_EQ(number.data(Qt::AccessibleTextRole).toString(), QStringLiteral("Round 4, to fix"));
    EXPECT_TRUE(
        number.data(Qt::AccessibleDescriptionRole).toString().contains(QStringLiteral("60 stitches over 18")))
        << number.data(Qt::AccessibleDescriptionRole).toString().toStdString();
}

TEST(SpokenWindow, PanelTitlesExpandAndCollapse) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.window->panels().open_section(QStringLiteral("yarn"));
    const auto titles = maker.window->findChildren<QToolButton*>(QStringLiteral("panel-title"));
    ASSERT_EQ(titles.size(), 7);
    auto* first = QAccessible::queryAccessibleInterface(titles[0]);
    auto* second = QAccessible::queryAccessibleInterface(titles[1]);
    EXPECT_EQ(first->role(), QAccessible::Button);
    EXPECT_EQ(first->text(QAccessible::Name), QStringLiteral("Yarn and hook"));
    EXPECT_TRUE(first->state().expandable && first->state().expanded && !first->state().collapsed);
    EXPECT_TRUE(second->state().collapsed && !second->state().expanded);
    second->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_TRUE(wait_until([&] { return second->state().expanded && first->state().collapsed; }));
}

TEST(SpokenWindow, PicturesTellWhatTheyShow) {
    MakerAtTheWindow maker(toy_with_a_face());
    QWidget* picture = maker.window->shape().scene()->widget();
    while (picture->focusProxy() != nullptr) picture = picture->focusProxy();
    auto* scene = QAccessible::queryAccessibleInterface(picture);
    EXPECT_EQ(scene->role(), QAccessible::Graphic);
    EXPECT_EQ(heard(*picture), QStringLiteral("The stuffed shape"));
    const QString shown = scene->text(QAccessible::Description);
    EXPECT_TRUE(shown.contains(QStringLiteral("wide"))) << shown.toStdString();
    EXPECT_TRUE(shown.contains(QStringLiteral("Widest at round 8"))) << shown.toStdString();
    EXPECT_TRUE(shown.contains(QStringLiteral("narrowing from round"))) << shown.toStdString();
    maker.window->panels().open_section(QStringLiteral("plot"));
    auto* plot = maker.window->findChild<RoundsPlot*>();
    maker.session.select_rounds({4});
    EXPECT_EQ(QAccessible::queryAccessibleInterface(plot)->role(), QAccessible::Chart);
    EXPECT_TRUE(plot->accessibleDescription().startsWith(QStringLiteral("Round 5, Width: ")))
        << plot->accessibleDescription().toStdString();
}

TEST(SpokenWindow, RoundByRoundOnAsking) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.press(Qt::Key_I, Qt::ControlModifier);
    auto* words = maker.window->findChild<RoundsInWords*>();
    ASSERT_NE(words, nullptr);
    EXPECT_TRUE(words->isVisible());
    EXPECT_TRUE(words->words().contains(QStringLiteral("Round 4: [sc 2, inc] x 6 (24). ")))
        << words->words().toStdString();
    const qsizetype lines = words->words().count(u'\n');
    maker.session.edit_piece(QStringLiteral("Shorten"), [](Piece& piece) { piece.rounds.pop_back(); });
    ASSERT_TRUE(wait_for_shape(maker.session));
    EXPECT_EQ(words->words().count(u'\n'), lines - 1);
    EXPECT_EQ(tree_faults(*words), "");
    words->close();
}

TEST(SpokenWindow, ColourButtonsSayTheirColour) {
    MakerAtTheWindow maker(toy_with_a_face());
    maker.window->panels().open_section(QStringLiteral("yarn"));
    EXPECT_TRUE(
        accessible_names(*maker.window).contains(QStringLiteral("Colour of the yarn: light grey, #C8CED2")))
        << accessible_names(*maker.window).join(QLatin1Char('|')).toStdString();
}

}  // namespace
}  // namespace roundwright::app
