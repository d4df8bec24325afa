#include "app/window/main_window.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <memory>

#include <QAbstractScrollArea>
#include <QAccessible>
#include <QClipboard>
#include <QDir>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>
#include <QUrl>

#include "app/checks/checks_list.h"
#include "app/face/face_panel.h"
#include "app/files/document_files.h"
#include "app/materials/stuffing_panel.h"
#include "app/pieces/piece_edits.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/panel_column.h"
#include "render/scene/scene_view.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class MainWindowTest : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        open_window();
        session->start(empty_toy());
    }

    void open_window() {
        window.reset();
        session = std::make_unique<DocumentSession>();
        session->preferences().set_units(LengthUnit::millimetres);
        session->preferences().set_terms(Terms::us);
        window = std::make_unique<MainWindow>(*session, folder.filePath(QStringLiteral("state")));
        window->resize(1280, 760);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        ASSERT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
    }

    void type(const QString& text) {
        for (const QChar letter : text) QTest::keyClick(focus(), letter.toLatin1());
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(focus(), key, modifiers);
        QCoreApplication::processEvents();
    }
    void press_two(Qt::Key key) {  // Ctrl+B, then the key
        press(Qt::Key_B, Qt::ControlModifier);
        press(key);
    }
    QWidget* focus() { return QApplication::focusWidget() ? QApplication::focusWidget() : window.get(); }
    [[nodiscard]] std::vector<int> counts() const { return counts_of(*session->piece()); }
    [[nodiscard]] QString pup() const { return folder.filePath(QStringLiteral("pup.roundwright")); }

    /// Sizes settle over several turns of the event loop: what folds changes what the layouts ask for.
    void resize_to(const QSize& size) {
        window->resize(size);
        for (int turn = 0; turn < 5; ++turn) QTest::qWait(10);
    }

    void type_a_ball() {
        window->fast_entry().focus_line();
        type(QStringLiteral("6, 12, 18, 24x3, 18, 12, 6"));
        press(Qt::Key_Return);
        ASSERT_TRUE(wait_for_shape(*session));
    }

    QTemporaryDir folder;
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST_F(MainWindowTest, ATypedTableBecomesAShapeWithASize) {
    window->rounds_view().setFocus();
    for (const auto* count : {"6", "+6", "18"}) {
        type(QString::fromLatin1(count));
        press(Qt::Key_Return);
    }
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    const QString small = window->shape().size_text();
    EXPECT_TRUE(small.contains(QStringLiteral("mm wide"))) << small.toStdString();
    type(QStringLiteral("24"));
    press(Qt::Key_Return);
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_NE(window->shape().size_text(), small);
    EXPECT_TRUE(window->shape().words().contains(QStringLiteral("open at the last round")));
}

TEST_F(MainWindowTest, FastEntrySaysWhatItUnderstoodThenAddsIt) {
    window->fast_entry().focus_line();
    type(QStringLiteral("6, 12, 24x2"));
    EXPECT_TRUE(window->fast_entry().understood().contains(QStringLiteral("2 rounds of 24")));
    EXPECT_EQ(session->undo_stack().count(), 0);
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 24, 24}));
    EXPECT_TRUE(window->fast_entry().line()->text().isEmpty());
    EXPECT_EQ(session->undo_stack().undoText(), QStringLiteral("Add rounds 1 to 4"));
}

TEST_F(MainWindowTest, TheShapeFollowsTheLineAsItIsTyped) {
    window->fast_entry().focus_line();
    type(QStringLiteral("6, 12, 18"));
    ASSERT_TRUE(wait_until([&] { return session->shows_trial(); }));
    ASSERT_TRUE(wait_until([&] { return window->shape().size_text().contains(QStringLiteral("mm wide")); }));
    const QString three_rounds = window->shape().size_text();
    EXPECT_TRUE(window->shape().words().startsWith(QStringLiteral("With the rounds being typed")));
    type(QStringLiteral(", 24, "));  // half typed: what came out last stays
    ASSERT_TRUE(wait_until([&] { return window->shape().size_text() != three_rounds; }));
    EXPECT_TRUE(counts().empty());  // nothing is said yet
    EXPECT_EQ(session->undo_stack().count(), 0);
    EXPECT_FALSE(session->modified());
    press(Qt::Key_Escape);
    EXPECT_FALSE(session->shows_trial());
    EXPECT_TRUE(window->shape().size_text().isEmpty());
}

TEST_F(MainWindowTest, WhatWasTriedOutBecomesTheToysOwnShape) {
    window->fast_entry().focus_line();
    type(QStringLiteral("6, 12, 18, 24"));
    ASSERT_TRUE(wait_until([&] { return session->shows_trial() && !session->solving(); }));
    const auto tried = session->surface(0);
    QTest::keyClick(focus(), Qt::Key_Return);  // before the new shape can have come in
    EXPECT_FALSE(session->shows_trial());
    EXPECT_EQ(session->surface(0), tried);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24}));
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_EQ(session->surface(0), tried);
    ASSERT_TRUE(session->study(0));
    EXPECT_EQ(session->study(0)->graph().graph.rounds.size(), 4u);
    EXPECT_FALSE(window->shape().words().startsWith(QStringLiteral("With the rounds being typed")));
}

QAction* action_called(const QWidget& window, const QString& name) {
    for (QAction* action : window.actions())
        if (action->text().remove(QLatin1Char('&')) == name) return action;
    return nullptr;
}

TEST_F(MainWindowTest, WithoutStuffingAHeadIsAFlatBag) {
    type_a_ball();
    const auto depth = [&] { return session->shown_study(0)->measures().depth_mm; };
    const double stuffed_depth = depth();
    session->edit_piece(QStringLiteral("close"), [](Piece& piece) { piece.end = End::drawn_closed; });
    press(Qt::Key_T, Qt::ControlModifier);
    ASSERT_TRUE(wait_until([&] { return session->shown_study(0)->problem().area_stretch == 0; }));
    EXPECT_LT(depth(), 0.2 * stuffed_depth);
    EXPECT_TRUE(window->shape().words().startsWith(QStringLiteral("Not stuffed: flat, two layers")))
        << window->shape().words().toStdString();
    press(Qt::Key_T, Qt::ControlModifier);
    ASSERT_TRUE(wait_until([&] { return session->shown_study(0)->problem().area_stretch > 0; }));
    EXPECT_GT(depth(), 0.8 * stuffed_depth);
}

// The button says what is to be seen: where the maker does not stuff a piece it is not lit, and cannot be.
TEST_F(MainWindowTest, StuffedIsNotLitOnAPieceWithoutStuffing) {
    type_a_ball();
    QAction* stuffed = action_called(*window, QStringLiteral("Stuffed"));
    ASSERT_NE(stuffed, nullptr);
    EXPECT_TRUE(stuffed->isChecked());
    const auto stuff = [&](double stretch) {
        session->edit_piece(QStringLiteral("stuff"), [&](Piece& piece) { piece.area_stretch = stretch; });
        QCoreApplication::processEvents();
    };
    stuff(unstuffed_stretch);
    EXPECT_FALSE(stuffed->isChecked());
    EXPECT_FALSE(stuffed->isEnabled());
    EXPECT_FALSE(session->shows_unstuffed());
    stuff(medium_stuffing_stretch);
    EXPECT_TRUE(stuffed->isChecked());
    EXPECT_TRUE(stuffed->isEnabled());
    press(Qt::Key_T, Qt::ControlModifier);
    EXPECT_FALSE(stuffed->isChecked());
    EXPECT_TRUE(session->shows_unstuffed());
    stuff(unstuffed_stretch);
    session->undo_stack().undo();
    EXPECT_FALSE(stuffed->isChecked());
    press(Qt::Key_T, Qt::ControlModifier);
    EXPECT_TRUE(stuffed->isChecked());
    EXPECT_FALSE(session->shows_unstuffed());
}

TEST_F(MainWindowTest, OutsideTheLineTheShapeIsThatOfTheRoundsThereAre) {
    type_a_ball();
    const QString ball = window->shape().size_text();
    window->fast_entry().focus_line();
    type(QStringLiteral("12, 18"));
    ASSERT_TRUE(wait_until([&] { return session->shows_trial(); }));
    EXPECT_NE(window->shape().size_text(), ball);
    window->rounds_view().setFocus();
    EXPECT_EQ(window->shape().size_text(), ball);
    window->fast_entry().line()->setFocus();
    ASSERT_TRUE(wait_until([&] { return session->shows_trial(); }));
}

TEST_F(MainWindowTest, TheShapeFollowsTheNextRoundInTheTable) {
    type_a_ball();
    const QString ball = window->shape().size_text();
    window->rounds_view().setFocus();
    window->rounds_view().setCurrentIndex(
        window->rounds_view().model()->index(window->rounds_view().model()->rowCount() - 1, 1));
    type(QStringLiteral("12"));
    ASSERT_TRUE(wait_until([&] { return session->shows_trial(); }));
    EXPECT_NE(window->shape().size_text(), ball);
    press(Qt::Key_Escape);
    EXPECT_FALSE(session->shows_trial());
    EXPECT_EQ(window->shape().size_text(), ball);
}

TEST_F(MainWindowTest, APanelIsReachedByItsNumber) {
    press(Qt::Key_3, Qt::AltModifier);
    EXPECT_EQ(window->panels().open_key(), QStringLiteral("stuffing"));
    auto* panel = window->panels().findChild<StuffingPanel*>();
    ASSERT_NE(panel, nullptr);
    EXPECT_TRUE(panel->isAncestorOf(QApplication::focusWidget()));
    press(Qt::Key_4, Qt::AltModifier);
    EXPECT_EQ(window->panels().open_key(), QStringLiteral("face"));
    EXPECT_TRUE(window->panels().isAncestorOf(QApplication::focusWidget()));
}

TEST_F(MainWindowTest, FastEntryHoldsWhatItDoesNotUnderstand) {
    window->fast_entry().focus_line();
    type(QStringLiteral("6, 12x"));
    press(Qt::Key_Return);
    EXPECT_TRUE(counts().empty());
    EXPECT_EQ(window->fast_entry().line()->text(), QStringLiteral("6, 12x"));
}

TEST_F(MainWindowTest, UndoAndRedoGoThroughIdenticalDocuments) {
    std::vector<std::string> states{write_document(session->toy())};
    const auto step = [&] { states.push_back(write_document(session->toy())); };
    type_a_ball();
    step();
    window->rounds_view().setFocus();
    session->select_rounds({3});
    type(QStringLiteral("25"));
    press(Qt::Key_Return);
    step();
    session->select_rounds({1, 2});
    press(Qt::Key_D, Qt::ControlModifier);
    step();
    press(Qt::Key_Down, Qt::AltModifier);
    step();
    press(Qt::Key_Delete);
    step();
    press(Qt::Key_L, Qt::ControlModifier);
    step();
    press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
    step();
    press_two(Qt::Key_E);
    step();
    ASSERT_EQ(session->undo_stack().count(), static_cast<int>(states.size()) - 1);
    for (int at = static_cast<int>(states.size()) - 2; at >= 0; --at) {
        press(Qt::Key_Z, Qt::ControlModifier);
        ASSERT_EQ(write_document(session->toy()), states[static_cast<std::size_t>(at)]) << "undo to " << at;
    }
    for (std::size_t at = 1; at < states.size(); ++at) {
        press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
        ASSERT_EQ(write_document(session->toy()), states[at]) << "redo to " << at;
    }
}

TEST_F(MainWindowTest, RoundsAreCopiedAndPasted) {
    type_a_ball();
    window->rounds_view().setFocus();
    session->select_rounds({0, 1});
    press(Qt::Key_C, Qt::ControlModifier);
    session->select_rounds({8});
    press(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18, 24, 24, 24, 18, 12, 6, 6, 12}));
    EXPECT_EQ(session->selection(), (std::vector{9, 10}));
    press(Qt::Key_X, Qt::ControlModifier);
    EXPECT_EQ(counts().size(), 9u);
}

TEST_F(MainWindowTest, PastedTextGoesToTheFastEntry) {
    QApplication::clipboard()->setText(QStringLiteral("6, 12\n18"));
    window->rounds_view().setFocus();
    press(Qt::Key_V, Qt::ControlModifier);
    EXPECT_TRUE(window->fast_entry().line()->hasFocus());
    press(Qt::Key_Return);
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
}

TEST_F(MainWindowTest, APatternPastedIntoTheFastEntryIsReviewedFirst) {
    QApplication::clipboard()->setText(
        QStringLiteral("Nose (make 2)\nRnd 1: 6 sc in magic ring (6)\nRnds 2-3: sc in each st around (6)"));
    window->fast_entry().focus_line();
    QString seen;
    answer_next_dialog(QStringLiteral("Cancel"), &seen);
    press(Qt::Key_V, Qt::ControlModifier);
    ASSERT_TRUE(wait_until([&] { return !seen.isNull(); }));
    EXPECT_TRUE(window->fast_entry().line()->text().isEmpty());
    EXPECT_TRUE(counts().empty());
}

TEST_F(MainWindowTest, SavedAndOpenedItIsTheSame) {
    type_a_ball();
    const std::string before = write_document(session->toy());
    EXPECT_TRUE(window->isWindowModified());
    ASSERT_FALSE(session->save(pup()));
    EXPECT_FALSE(window->isWindowModified());
    EXPECT_TRUE(window->windowTitle().contains(QStringLiteral("pup")));
    session->start(empty_toy());
    ASSERT_TRUE(window->files().open(pup()));
    EXPECT_EQ(write_document(session->toy()), before);
}

TEST_F(MainWindowTest, AFileDroppedOnTheWindowIsOpened) {
    type_a_ball();
    ASSERT_FALSE(session->save(pup()));
    session->start(empty_toy());
    ASSERT_TRUE(counts().empty());
    QMimeData files;
    files.setUrls({QUrl::fromLocalFile(pup())});
    QDragEnterEvent enter(QPoint(20, 20), Qt::CopyAction, &files, Qt::LeftButton, {});
    QApplication::sendEvent(&window->rounds_view(), &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(20, 20), Qt::CopyAction, &files, Qt::LeftButton, {});
    QApplication::sendEvent(&window->rounds_view(), &drop);
    EXPECT_TRUE(wait_until([&] { return session->path() == pup(); }));
    EXPECT_EQ(counts().size(), 9u);
}

TEST_F(MainWindowTest, ClosingAsksBeforeChangesAreLost) {
    type_a_ball();
    answer_next_dialog(QStringLiteral("Cancel"));
    EXPECT_FALSE(window->close());
    ASSERT_FALSE(session->save(pup()));
    session->edit_piece(QStringLiteral("Name"), [](Piece& piece) { piece.name = "Snout"; });
    answer_next_dialog(QStringLiteral("Save"));
    EXPECT_TRUE(window->close());
    EXPECT_EQ(load_document_file(pup()).document.toy.pieces.front().name, "Snout");
}

TEST_F(MainWindowTest, ClosingWithoutSavingLeavesTheFile) {
    type_a_ball();
    ASSERT_FALSE(session->save(pup()));
    session->edit_piece(QStringLiteral("Name"), [](Piece& piece) { piece.name = "Snout"; });
    answer_next_dialog(QStringLiteral("Don’t save"));
    EXPECT_TRUE(window->close());
    EXPECT_NE(load_document_file(pup()).document.toy.pieces.front().name, "Snout");
}

TEST_F(MainWindowTest, OpeningAnotherToyAsksToo) {
    type_a_ball();
    ASSERT_FALSE(save_document_file(pup(), toy_of({6, 12})));
    answer_next_dialog(QStringLiteral("Cancel"));
    EXPECT_FALSE(window->files().open(pup()));
    EXPECT_EQ(counts().size(), 9u);
}

TEST_F(MainWindowTest, ADamagedFileIsToldWithItsPlace) {
    type_a_ball();
    ASSERT_FALSE(session->save(folder.filePath(QStringLiteral("fine.roundwright"))));
    const std::string before = write_document(session->toy());
    std::string json = before;
    json.replace(json.find("12"), 2, "-1");
    QFile file(pup());
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(json.c_str());
    file.close();
    QString told;
    answer_next_dialog(QStringLiteral("OK"), &told);
    EXPECT_FALSE(window->files().open(pup()));
    EXPECT_TRUE(told.contains(QStringLiteral("pup.roundwright"))) << told.toStdString();
    EXPECT_TRUE(told.contains(QStringLiteral("/pieces/0/rounds/1"))) << told.toStdString();
    EXPECT_EQ(write_document(session->toy()), before);
}

TEST_F(MainWindowTest, AfterACrashTheToyIsOfferedAndComesBack) {
    const QString state = folder.filePath(QStringLiteral("state"));
    ASSERT_TRUE(QDir().mkpath(state));
    const QString copy = state + QStringLiteral("/lost.roundwright");
    Toy lost = toy_of({6, 12, 18});
    lost.title.clear();
    ASSERT_FALSE(save_document_file(copy, lost));
    QFile note(state + QStringLiteral("/lost.note"));
    ASSERT_TRUE(note.open(QIODevice::WriteOnly));
    note.write(QStringLiteral("{\"copy\": \"%1\", \"document\": \"\"}").arg(copy).toUtf8());
    note.close();
    QString offered;
    QTimer reads;
    QObject::connect(&reads, &QTimer::timeout, &reads, [&offered] {
        const QWidget* dialog = QApplication::activeModalWidget();
        const auto* list = dialog ? dialog->findChild<QListWidget*>() : nullptr;
        if (list) offered = list->item(0)->text();
    });
    reads.start(1);
    answer_next_dialog(QStringLiteral("Bring it back"));
    window->begin({});
    EXPECT_TRUE(offered.contains(QStringLiteral("not saved yet"))) << offered.toStdString();
    EXPECT_EQ(counts(), (std::vector{6, 12, 18}));
    EXPECT_TRUE(session->modified());
}

TEST_F(MainWindowTest, TheFirstStartShowsAStartedPieceAndWaitsForTheNextRounds) {
    QSettings().clear();
    open_window();
    window->begin({});
    ASSERT_TRUE(session->piece());
    EXPECT_GE(session->piece()->rounds.size(), 6u);
    EXPECT_TRUE(window->fast_entry().line()->hasFocus());
    EXPECT_FALSE(session->modified());
    ASSERT_TRUE(wait_for_shape(*session));
    EXPECT_FALSE(window->shape().size_text().isEmpty());
}

TEST_F(MainWindowTest, AClickOnTheShapeSelectsTheRound) {
    type_a_ball();
    session->select_rounds({});
    auto* picture = window->shape().scene()->widget();
    auto* canvas = picture->childAt(picture->rect().center());
    QTest::mouseClick(canvas, Qt::LeftButton, {}, canvas->rect().center());
    ASSERT_EQ(session->selection().size(), 1u);
    EXPECT_TRUE(window->shape().words().contains(QStringLiteral("selected")));
    EXPECT_EQ(window->rounds_view().currentIndex().row(), session->selection().front());
}

TEST_F(MainWindowTest, CtrlAndTheArrowsMoveTheEyeThatWasClicked) {
    type_a_ball();
    window->face().add(FeatureKind::safety_eye);
    ASSERT_TRUE(wait_for_shape(*session));
    const auto eye = [&]() -> const Feature& { return session->piece()->features.front(); };
    window->panels().open_section(QStringLiteral("gauge"));
    window->rounds_view().setFocus();
    const Feature untouched = eye();
    press(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(eye(), untouched) << "nothing shows what would move";

    auto* scene = window->shape().scene();
    scene->look_from(render::ViewDirection::front);
    scene->fit();
    QCoreApplication::processEvents();
    QWidget* canvas = scene->widget()->childAt(scene->widget()->rect().center());
    if (canvas == nullptr) canvas = scene->widget();
    const auto click_an_eye = [&](int from, int to) {
        for (int y = 0; y < canvas->height(); y += 3) {
            for (int x = from; x < to; x += 3) {
                if (!scene->part_at(QPointF(x, y)) || !scene->part_at(QPointF(x + 4, y + 4))) continue;
                QTest::mouseClick(canvas, Qt::LeftButton, {}, QPoint(x + 2, y + 2));
                return true;
            }
        }
        return false;
    };
    ASSERT_TRUE(click_an_eye(0, canvas->width() / 2));
    EXPECT_EQ(window->panels().open_key(), QStringLiteral("face"));
    EXPECT_TRUE(window->rounds_view().hasFocus() || QApplication::focusWidget() != nullptr);
    Feature before = eye();
    press(Qt::Key_Left, Qt::ControlModifier);  // the left one to the left: further apart
    EXPECT_EQ(eye().stitches_apart, before.stitches_apart + 1);
    press(Qt::Key_Right, Qt::ControlModifier);
    press(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(eye().stitches_apart, before.stitches_apart - 1);
    before = eye();
    press(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(eye().round, before.round + 1) << "this piece begins at the bottom";
    ASSERT_TRUE(wait_for_shape(*session));
    ASSERT_TRUE(click_an_eye(canvas->width() / 2, canvas->width()));
    before = eye();
    press(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(eye().stitches_apart, before.stitches_apart + 1);
}

TEST_F(MainWindowTest, ASampleOpensAsANewToy) {
    press_two(Qt::Key_P);
    ASSERT_TRUE(session->piece());
    EXPECT_FALSE(session->toy().title.empty());
    EXPECT_TRUE(session->path().isEmpty()) << "saving never writes over a sample";
    EXPECT_FALSE(session->modified());
}

TEST_F(MainWindowTest, UnitsChangeEverywhere) {
    type_a_ball();
    EXPECT_TRUE(window->shape().size_text().contains(QStringLiteral("mm")));
    press_two(Qt::Key_I);
    EXPECT_TRUE(window->shape().size_text().contains(QStringLiteral("in")));
    EXPECT_FALSE(window->shape().size_text().contains(QStringLiteral("mm")));
    press_two(Qt::Key_M);
}

TEST_F(MainWindowTest, PiecesAreAddedNamedAndDeleted) {
    press(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session->toy().pieces.size(), 2u);
    EXPECT_EQ(session->current_piece(), 1);
    PieceEdits(*session).rename(QStringLiteral("Left fin"));
    press(Qt::Key_PageUp, Qt::ControlModifier);
    EXPECT_EQ(session->current_piece(), 0);
    press(Qt::Key_PageDown, Qt::ControlModifier);
    press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session->toy().pieces.size(), 1u);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session->toy().pieces.back().name, "Left fin");
}

// Every action is in a menu and has a shortcut (WCAG 2.1, 2.1.1: all by keyboard), and no two have the same.
void collect(const QMenu& menu, std::map<QString, QString>& owners, const QString& path) {
    for (const auto* action : menu.actions()) {
        if (action->isSeparator()) continue;
        const QString name = path + QLatin1Char('/') + action->text();
        if (action->menu()) {
            const bool of_the_toy =
                action->text().contains(QStringLiteral("recent")) || path == QStringLiteral("/&Round");
            if (!of_the_toy) collect(*action->menu(), owners, name);
            continue;
        }
        const auto keys = action->shortcuts();
        EXPECT_FALSE(keys.isEmpty()) << name.toStdString();
        for (const auto& key : keys) {
            const auto [other, fresh] = owners.emplace(key.toString(), name);
            EXPECT_TRUE(fresh) << key.toString().toStdString() << ": " << name.toStdString() << " and "
                               << other->second.toStdString();
        }
    }
}

TEST_F(MainWindowTest, EveryActionHasAShortcutOfItsOwn) {
    std::map<QString, QString> owners;
    for (const auto* action : window->menuBar()->actions()) {
        collect(*action->menu(), owners, QLatin1Char('/') + action->text());
    }
    EXPECT_GT(owners.size(), 50u);
}

TEST_F(MainWindowTest, EveryControlHasAName) {
    for (auto* widget : window->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
        if (widget->objectName().startsWith(QStringLiteral("qt_"))) continue;
        auto* interface = QAccessible::queryAccessibleInterface(widget);
        if (!interface) continue;
        const bool is_container = qobject_cast<QAbstractScrollArea*>(widget->parentWidget()) != nullptr;
        if (is_container || widget == window->centralWidget()) continue;
        EXPECT_FALSE(interface->text(QAccessible::Name).isEmpty())
            << widget->metaObject()->className() << " " << widget->objectName().toStdString();
    }
}

void expect_nothing_is_cut(const QWidget& window) {
    for (const auto* label : window.findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty() || label->wordWrap()) continue;
        const QSize wanted = label->sizeHint();
        EXPECT_GE(label->width(), std::min(wanted.width(), window.width())) << label->text().toStdString();
        EXPECT_GE(label->height(), wanted.height()) << label->text().toStdString();
    }
    const QRect all(QPoint(), window.size());
    for (const auto* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->parentWidget()->inherits("QAbstractScrollArea")) continue;
        if (widget->window() != &window || qobject_cast<const QAbstractScrollArea*>(widget->parentWidget()))
            continue;
        const QRect place(widget->mapTo(&window, QPoint()), widget->size());
        if (widget->parentWidget() == window.findChild<QMenuBar*>()) continue;
        EXPECT_TRUE(all.contains(place)) << widget->metaObject()->className();
    }
}

TEST_F(MainWindowTest, NothingIsCutAtTheSmallestSizes) {
    type_a_ball();
    for (const QSize size : {QSize(1280, 760), QSize(1024, 660)}) {
        resize_to(size);
        EXPECT_EQ(window->size(), size);
        expect_nothing_is_cut(*window);
    }
}

TEST_F(MainWindowTest, PicturesOfTheWindow) {
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    type_a_ball();
    session->select_rounds({3});
    for (const auto& [name, appearance] :
         {std::pair{"light", Appearance::light}, std::pair{"dark", Appearance::dark}}) {
        session->preferences().set_appearance(appearance);
        for (const QSize size : {QSize(1280, 760), QSize(1024, 660)}) {
            resize_to(size);
            ASSERT_TRUE(wait_for_shape(*session));
            const QString path = QStringLiteral("%1/window-%2-%3.png")
                                     .arg(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS), QString::fromLatin1(name))
                                     .arg(size.width());
            EXPECT_TRUE(window->grab().save(path));
        }
    }
    session->preferences().set_appearance(Appearance::light);
}

}  // namespace
}  // namespace roundwright::app
