#include "app/window/whole_toy.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QWheelEvent>

#include "app/checks/checks_list.h"
#include "app/kit/announcer.h"
#include "app/session/assembled_toy.h"
#include "core/assembly/join_frames.h"
#include "core/assembly/overlap_region.h"
#include "tests/app/window/maker_at_the_window.h"
#include "tests/support/plain_pieces.h"

namespace roundwright::app {
namespace {

/// A body, a head on top of it with eyes, and two flippers at the sides.
Toy pup() {
    Toy toy = toy_of({6});
    Piece body = test::ball_piece(48);
    body.name = "Body";
    Piece head = test::ball_piece(36);
    head.name = "Head";
    head.features.push_back({.name = {}, .round = 9, .stitches_apart = 7});
    Piece flipper = piece_of({6, 12, 12, 12, 12}, "Flipper");
    flipper.make = 2;
    toy.pieces = PieceList{body, head, flipper};
    const auto id = [&](std::size_t piece) { return PieceCopy{toy.pieces.id(piece), 0}; };
    Join on_top, fins;
    on_top.piece = id(1);
    on_top.onto = id(0);
    on_top.end = JoinedEnd::start;
    on_top.seam = Seam::closed;
    on_top.at = {static_cast<int>(std::as_const(toy).pieces[0].rounds.size()) - 1, 0, true};
    on_top.sink_mm = 6;
    fins.piece = id(2);
    fins.onto = id(0);
    fins.pair = true;
    fins.at = {10, 10, false};
    toy.joins = {on_top, fins};
    return toy;
}

class WholeToyTest : public ::testing::Test {
  protected:
    WholeToyTest() : maker(pup()) {}

    void show_toy() {
        maker.press(Qt::Key_F3);
        ASSERT_TRUE(session().shows_whole_toy());
        ASSERT_TRUE(settle());
    }
    bool settle() {
        return wait_until([&] {
            return session().assembled_is_up_to_date() && session().assembled()->measures != nullptr &&
                   !session().solving();
        });
    }
    DocumentSession& session() { return maker.session; }
    WholeToy& whole() { return maker.window->whole_toy(); }
    render::SceneView& scene() { return *whole().toy().scene(); }
    QWidget& canvas() {
        for (auto* widget : scene().widget()->findChildren<QWidget*>())
            if (widget->focusPolicy() == Qt::StrongFocus) return *widget;
        return *scene().widget();
    }
    [[nodiscard]] PieceCopy copy(std::size_t piece, int number = 0) {
        return {session().toy().pieces.id(piece), number};
    }
    /// A point of the view where this copy is seen: of its patches, the one nearest to the eye.
    QPoint on(const PieceCopy& wanted) {
        const auto toy = session().assembled();
        for (std::size_t at = 0; at < toy->placed().pieces.size(); ++at) {
            if (toy->placed().pieces[at].copy != wanted) continue;
            for (const StitchPatch& patch : toy->surfaces()[at]->stitches) {
                const Vec3 corner = toy->on_table * patch.corners[0];
                const QPointF seen = scene().on_screen((corner + toy->on_table * patch.corners[2]) / 2);
                const auto hit = scene().hit(seen);
                if (!hit || (hit->point - corner).norm() > 12) continue;
                if (scene().part_at(seen)) continue;
                if (patch.round > 1 && canvas().rect().contains(seen.toPoint())) return seen.toPoint();
            }
        }
        ADD_FAILURE() << "it is not seen";
        return {};
    }
    void drag(const QPoint& from, const QPoint& to, bool drop = true) {
        QTest::mousePress(&canvas(), Qt::LeftButton, {}, from);
        for (int step = 1; step <= 8; ++step) {
            const QPointF at = from + QPointF(to - from) * step / 8;
            QMouseEvent move(QEvent::MouseMove, at, canvas().mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                             {});
            QApplication::sendEvent(&canvas(), &move);
            QTest::qWait(5);
        }
        if (drop) QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, to);
    }
    [[nodiscard]] const Join& join(std::size_t at) { return session().toy().joins[at]; }

    MakerAtTheWindow maker;
};

TEST_F(WholeToyTest, IsTheFirstTabAndComesAndGoesByKeyAndClick) {
    EXPECT_EQ(maker.tabs().tabText(0), QStringLiteral("Whole toy"));
    EXPECT_EQ(maker.tabs().currentIndex(), 1);
    show_toy();
    EXPECT_EQ(maker.tabs().currentIndex(), 0);
    EXPECT_TRUE(whole().joins().isVisible());
    EXPECT_TRUE(whole().toy().isVisible());
    EXPECT_FALSE(maker.table().isVisible());
    EXPECT_FALSE(maker.window->shape().isVisible());
    EXPECT_TRUE(whole().toy().size_text().contains(QStringLiteral("mm tall")))
        << whole().toy().size_text().toStdString();
    maker.click_tab(1);
    EXPECT_FALSE(session().shows_whole_toy());
    EXPECT_EQ(session().current_piece(), 1);
    EXPECT_TRUE(maker.table().isVisible());
    maker.click(&maker.tabs(), maker.tabs().tabRect(0).center());
    EXPECT_TRUE(session().shows_whole_toy());
    maker.press(Qt::Key_7, Qt::AltModifier);
    EXPECT_FALSE(session().shows_whole_toy());
    EXPECT_TRUE(maker.table().hasFocus());
}

TEST_F(WholeToyTest, TellsWhatIsJoinedWhereInTheWordsOfThePicture) {
    show_toy();
    const QString words = whole().toy().picture_words();
    EXPECT_TRUE(words.contains(QStringLiteral("Body stands by itself"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Head on Body: at its end"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Flipper ×2 on Body: between rounds 11 and 12")))
        << words.toStdString();
    EXPECT_EQ(canvas().accessibleDescription(), words);
}

TEST_F(WholeToyTest, AClickPicksAPieceAndADoubleClickGoesToItsRounds) {
    show_toy();
    const QPoint head = on(copy(1));
    QTest::mouseClick(&canvas(), Qt::LeftButton, {}, head);
    EXPECT_EQ(whole().state().picked(), copy(1));
    EXPECT_EQ(session().current_piece(), 1);
    EXPECT_EQ(session().selection().size(), 1u);
    EXPECT_TRUE(session().shows_whole_toy());
    EXPECT_EQ(whole().joins().list().currentIndex().row(), 1);
    QTest::mouseDClick(&canvas(), Qt::LeftButton, {}, on(copy(2)));
    EXPECT_FALSE(session().shows_whole_toy());
    EXPECT_EQ(session().current_piece(), 2);
    EXPECT_TRUE(maker.table().hasFocus());
}

TEST_F(WholeToyTest, TheListPicksHidesAndOpensByKeys) {
    show_toy();
    whole().joins().take_keyboard();
    maker.press(Qt::Key_Down);
    maker.press(Qt::Key_Down);
    EXPECT_EQ(session().current_piece(), 2);
    maker.press(Qt::Key_Space);
    EXPECT_TRUE(whole().state().is_hidden(copy(2, 0)));
    EXPECT_TRUE(whole().state().is_hidden(copy(2, 1)));
    maker.press(Qt::Key_F3, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_FALSE(whole().state().any_hidden());
    const auto hide = [&] {
        maker.press(Qt::Key_B, Qt::ControlModifier);
        maker.press(Qt::Key_H);
    };
    hide();
    EXPECT_TRUE(whole().state().is_hidden(copy(2, 0)));
    hide();
    maker.press(Qt::Key_Return);
    EXPECT_FALSE(session().shows_whole_toy());
    EXPECT_EQ(session().current_piece(), 2);
}

TEST_F(WholeToyTest, KeysMoveTurnAndLeanThePickedPieceOneStepEach) {
    show_toy();
    whole().state().pick(copy(2));
    const int round = join(1).at.round;
    const double right = join(1).at.stitches_right;
    maker.press(Qt::Key_Up, Qt::ControlModifier);
    maker.press(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(join(1).at.round, round + 2);
    maker.press(Qt::Key_Left, Qt::ControlModifier);
    EXPECT_EQ(join(1).at.stitches_right, right - 1);
    EXPECT_EQ(session().undo_stack().count(), 1);
    maker.press(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(join(1).turn_degrees, 5);
    maker.press(Qt::Key_PageUp, Qt::AltModifier);
    EXPECT_EQ(join(1).lean_degrees, 5);
    maker.press(Qt::Key_End, Qt::AltModifier);
    EXPECT_EQ(join(1).lean_right_degrees, 5);
    EXPECT_EQ(session().undo_stack().count(), 3);
    const auto heard = [&] { return maker.window->announcer().shown(); };
    EXPECT_TRUE(wait_until([&] { return heard().contains(QStringLiteral("leaning 5° up")); }))
        << heard().toStdString();
    // As the viewer sees it, the other of the pair goes the other way.
    whole().state().pick(copy(2, 1));
    maker.press(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(join(1).at.stitches_right, right - 2);
    while (session().undo_stack().canUndo()) maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(join(1).at.round, round);
    EXPECT_EQ(join(1).turn_degrees, 0);
}

TEST_F(WholeToyTest, FieldsSayWhereAPieceIsSewnOn) {
    show_toy();
    whole().state().pick(copy(2));
    auto& joins = whole().joins();
    const auto combo = [&](const QString& text) -> QComboBox* {
        for (auto* box : joins.findChildren<QComboBox*>())
            if (box->isVisible() && box->findText(text) >= 0) return box;
        return nullptr;
    };
    QComboBox* onto = combo(QStringLiteral("Nothing: it stands by itself"));
    ASSERT_NE(onto, nullptr);
    EXPECT_EQ(onto->currentText(), QStringLiteral("Body"));
    onto->setFocus();
    maker.press(Qt::Key_H);  // Head
    EXPECT_EQ(join(1).onto, copy(1));
    EXPECT_EQ(session().undo_stack().undoText(), QStringLiteral("Sew Flipper 1 to Head"));
    for (auto* box : joins.findChildren<QSpinBox*>()) {
        if (!box->isVisible()) continue;
        box->setFocus();
        box->selectAll();
        maker.type(QStringLiteral("5"));
        maker.press(Qt::Key_Return);
    }
    EXPECT_EQ(join(1).at.round, 4);
    onto->setFocus();
    QTest::qWait(QApplication::keyboardInputInterval() + 100);
    maker.press(Qt::Key_N);  // Nothing
    EXPECT_EQ(session().toy().joins.size(), 1u);
    EXPECT_TRUE(settle());
}

TEST_F(WholeToyTest, ThePickedPieceIsDraggedOverAnotherInOneStep) {
    show_toy();
    whole().state().pick(copy(2));
    const Toy before = session().toy();
    const QPoint fin = on(copy(2));
    drag(fin, fin + QPoint(-30, -40));
    ASSERT_TRUE(settle());
    EXPECT_NE(join(1).at, before.joins[1].at);
    EXPECT_EQ(session().undo_stack().count(), 1);
    EXPECT_EQ(session().undo_stack().undoText(), QStringLiteral("Move Flipper 1"));
    EXPECT_EQ(2 * join(1).at.stitches_right, std::round(2 * join(1).at.stitches_right));
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy(), before);
}

TEST_F(WholeToyTest, EscapeGivesADragUp) {
    show_toy();
    whole().state().pick(copy(2));
    const Toy before = session().toy();
    const QPoint fin = on(copy(2));
    drag(fin, fin + QPoint(-30, -40), false);
    EXPECT_NE(session().toy(), before);
    QTest::keyClick(&canvas(), Qt::Key_Escape);
    EXPECT_EQ(session().toy(), before);
    QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, fin + QPoint(-30, -40));
    EXPECT_EQ(session().toy(), before);
    EXPECT_EQ(session().undo_stack().count(), 0);
}

TEST_F(WholeToyTest, ANewPieceIsSewnOnInTheSameStep) {
    show_toy();
    const auto joins = session().toy().joins.size();
    maker.press(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_FALSE(session().shows_whole_toy());  // its rounds are typed next
    EXPECT_EQ(session().toy().joins.size(), joins + 1);
    EXPECT_EQ(session().undo_stack().count(), 1);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy().joins.size(), joins);
    EXPECT_EQ(session().toy().pieces.size(), 3u);
}

TEST_F(WholeToyTest, DeletingWhatOthersAreSewnToAsksAndIsUndoneInOneStep) {
    show_toy();
    whole().state().pick(copy(0));
    const Toy before = session().toy();
    QString asked;
    answer_next_dialog(QStringLiteral("Cancel"), &asked);
    maker.press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session().toy(), before);
    // A list is written as the language has it: "Head, Flipper" in none, "Head and Flipper" in English.
    EXPECT_TRUE(asked.startsWith(QStringLiteral("Sewn to Body: Head"))) << asked.toStdString();
    EXPECT_TRUE(asked.contains(QStringLiteral("Flipper"))) << asked.toStdString();
    maker.window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(maker.window.get()));
    answer_next_dialog(QStringLiteral("Delete"));
    maker.press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(session().toy().pieces.size(), 2u);
    EXPECT_TRUE(session().toy().joins.empty());
    maker.window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(maker.window.get()));
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy(), before);
}

TEST_F(WholeToyTest, AToyWithoutJoinsIsPutTogetherAtOnce) {
    Toy apart = pup();
    apart.joins.clear();
    session().start(apart);
    show_toy();
    QPushButton* together = nullptr;
    for (auto* button : whole().joins().findChildren<QPushButton*>())
        if (button->isVisible()) together = button;
    ASSERT_NE(together, nullptr);
    together->setFocus();
    maker.press(Qt::Key_Space);
    ASSERT_TRUE(settle());
    EXPECT_EQ(session().toy().joins.size(), 2u);
    EXPECT_TRUE(session().assembled()->placed().problems.empty());
    EXPECT_FALSE(together->isVisible());
    EXPECT_EQ(session().undo_stack().count(), 1);
}

TEST_F(WholeToyTest, PiecesComeApartAndTogetherAgain) {
    show_toy();
    const auto width = [&] { return on(copy(2)).x() - on(copy(2, 1)).x(); };
    const int together = width();
    maker.press(Qt::Key_F3, Qt::ShiftModifier);
    EXPECT_EQ(whole().state().apart(), 1);
    EXPECT_EQ(whole().toy().findChild<QSlider*>()->value(), 100);
    maker.press(Qt::Key_F3, Qt::ShiftModifier);
    EXPECT_EQ(whole().state().apart(), 0);
    EXPECT_EQ(width(), together);
}

TEST_F(WholeToyTest, WhereThereIsLittleRoomTheControlsScrollAndNothingLiesOnAnother) {
    show_toy();
    ToyPanel& panel = whole().toy();
    auto* controls = panel.findChild<QScrollArea*>();
    ASSERT_NE(controls, nullptr);
    const auto least = [&] { return panel.minimumSizeHint(); };  // of its words as they are broken now
    const std::function<QSize()> sizes[] = {[] { return QSize(520, 520); }, [] { return QSize(200, 300); },
                                            least, least};
    for (const auto& size : sizes) {
        panel.resize(size());
        panel.layout()->activate();
        if (size().height() > panel.height()) continue;
        const QRect picture = panel.findChild<QStackedWidget*>()->geometry();
        const QRect words = panel.findChild<StillLabel*>()->geometry();
        EXPECT_LT(picture.bottom(), controls->geometry().top());
        EXPECT_LT(controls->geometry().bottom(), words.top());
        const QWidget* filled = controls->widget();
        EXPECT_EQ(controls->verticalScrollBar()->maximum(),
                  std::max(0, filled->height() - controls->viewport()->height()));
        EXPECT_GE(filled->height(), filled->layout()->heightForWidth(filled->width()));
    }
}

TEST_F(WholeToyTest, ShowsHowItRestsAndIsPickedAndDraggedThere) {
    show_toy();
    EXPECT_TRUE(session().assembled()->on_table.matrix().isIdentity());
    QComboBox* stance = nullptr;
    for (auto* box : whole().toy().findChildren<QComboBox*>())
        if (box->findText(QStringLiteral("lying"), Qt::MatchFixedString) >= 0) stance = box;
    ASSERT_NE(stance, nullptr);
    stance->setFocus();
    maker.press(Qt::Key_End);
    EXPECT_EQ(session().toy().stance, Stance::lying);
    ASSERT_TRUE(settle());
    const Pose pose = session().assembled()->on_table;
    EXPECT_TRUE(pose.isApprox(session().assembled()->measures->rest.pose));
    EXPECT_GT(Eigen::AngleAxisd(pose.linear()).angle(), 1);  // it lies on its back
    QTest::mouseClick(&canvas(), Qt::LeftButton, {}, on(copy(1)));
    EXPECT_EQ(whole().state().picked(), copy(1));

    whole().state().pick(copy(2));
    const QPointF head = on(copy(1));
    const auto head_before = scene().hit(head);
    const auto place = [&] {
        const auto toy = session().assembled();
        const auto frame = frame_of_place(toy->solved()[0], join(1).at);
        return scene().on_screen(pose * toy->placed().pieces[0].pose * frame->point);
    };
    const QPoint fin = on(copy(2));
    const QPointF from = place();
    const QPoint by(-25, -20);
    drag(fin, fin + by, false);
    ASSERT_TRUE(settle());
    EXPECT_LT(QLineF(place(), from + by).length(), 25) << "it is sewn on where it was dragged to";
    ASSERT_TRUE(head_before);
    const auto head_now = scene().hit(scene().on_screen(head_before->point));
    ASSERT_TRUE(head_now);
    EXPECT_LT((head_now->point - head_before->point).norm(), 1e-2) << "it holds still under the hand";
    QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, fin + by);
    ASSERT_TRUE(settle());
    on(copy(1));  // it settles where it comes to rest now
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    ASSERT_TRUE(settle());
    EXPECT_EQ(session().toy().stance, Stance::standing);
    EXPECT_TRUE(session().assembled()->on_table.matrix().isIdentity());
}

TEST_F(WholeToyTest, WhereTwoPiecesRunIntoEachOtherIsSeenAndEnterOnTheSentenceTurnsThere) {
    show_toy();
    EXPECT_TRUE(session().assembled()->overlaps.empty());
    Toy close = session().toy();
    close.joins[1].at = {10, 1, false};
    session().edit(QStringLiteral("Move"), close);
    ASSERT_TRUE(settle());
    const auto toy = session().assembled();
    ASSERT_EQ(toy->overlaps.size(), 1u);
    ASSERT_EQ(toy->measures->overlaps.size(), 1u);
    ASSERT_FALSE(toy->overlaps[0].lines.empty());
    const auto beads_seen = [&] {
        int seen = 0;
        for (const auto& line : session().assembled()->overlaps[0].lines)
            for (const Vec3& bead : spaced_along(line, 4.5))
                seen += scene().part_at(scene().on_screen(bead)).has_value();
        return seen;
    };
    EXPECT_GT(beads_seen(), 0);
    maker.press(Qt::Key_F3, Qt::ShiftModifier);  // apart they do not touch
    EXPECT_EQ(beads_seen(), 0);
    scene().face(180);

    maker.click_tab(0);
    auto* checks = maker.window->findChild<ChecksList*>();
    int row = 0;
    while (row < checks->model().rowCount() && checks->model().check(row).code != CheckCode::pieces_overlap)
        ++row;
    ASSERT_LT(row, checks->model().rowCount());
    checks->view()->setFocus();
    checks->view()->setCurrentIndex(checks->model().index(row));
    maker.press(Qt::Key_Return);
    EXPECT_TRUE(session().shows_whole_toy());
    EXPECT_EQ(session().current_piece(), 2);
    EXPECT_EQ(whole().state().apart(), 0);
    EXPECT_LT(std::abs(std::remainder(scene().yaw_degrees(), 360.0)), 20);
    EXPECT_GT(beads_seen(), 0);
}

TEST_F(WholeToyTest, UndoInTheMiddleOfADragEndsIt) {
    show_toy();
    whole().state().pick(copy(2));
    const Toy first = session().toy();
    maker.press(Qt::Key_Up, Qt::ControlModifier);
    ASSERT_TRUE(settle());
    EXPECT_NE(session().toy(), first);
    const QPoint fin = on(copy(2));
    drag(fin, fin + QPoint(-30, -40), false);
    QTest::keyClick(&canvas(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy(), first);
    drag(fin + QPoint(-30, -40), fin + QPoint(-10, -10));
    QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, fin + QPoint(-10, -10));
    EXPECT_EQ(session().undo_stack().index(), session().toy() == first ? 0 : 1);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy(), first);
    EXPECT_TRUE(settle());
}

TEST_F(WholeToyTest, APieceThatIsHiddenAndThenDeletedIsNotMissed) {
    show_toy();
    whole().state().pick(copy(2));
    whole().state().set_hidden({copy(2), copy(2, 1)}, true);
    EXPECT_TRUE(whole().toy().picture_words().contains(QStringLiteral("not shown")));
    maker.press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_EQ(session().toy().pieces.size(), 2u);
    ASSERT_TRUE(settle());
    EXPECT_FALSE(whole().state().any_hidden());
    EXPECT_FALSE(whole().toy().picture_words().contains(QStringLiteral("not shown")));
    EXPECT_EQ(session().current_piece(), 1);
}

TEST_F(WholeToyTest, AHeadDeletedWhileTheWholeToyIsOnShowLeavesWhatWasSewnToIt) {
    Toy toy = pup();
    toy.joins[1].onto = {toy.pieces.id(1), 0};
    session().start(toy);
    show_toy();
    QTest::mouseClick(&canvas(), Qt::LeftButton, {}, on(copy(1)));
    answer_next_dialog(QStringLiteral("Delete"));
    maker.press(Qt::Key_Delete, Qt::ControlModifier | Qt::ShiftModifier);
    maker.window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(maker.window.get()));
    ASSERT_TRUE(settle());
    EXPECT_EQ(whole().joins().model().standing(), 3);  // the body and both flippers
    EXPECT_NE(whole().joins().unit(), nullptr);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    ASSERT_TRUE(settle());
    EXPECT_EQ(session().toy(), toy);
}

TEST_F(WholeToyTest, ANumberThatIsBeingTypedIsNotWipedOutWhenTheToyIsPutTogether) {
    show_toy();
    whole().state().pick(copy(2));
    int tried = 0;
    for (auto* box : whole().joins().findChildren<QAbstractSpinBox*>()) {
        if (!box->isVisible() || !box->isEnabled()) continue;
        box->setFocus();
        box->selectAll();
        maker.press(Qt::Key_1);
        session().edit(QStringLiteral("Sew"), [](Toy toy) {
            toy.joins[0].sink_mm += 1;
            return toy;
        });
        ASSERT_TRUE(settle());
        maker.press(Qt::Key_2);
        EXPECT_TRUE(box->text().startsWith(QStringLiteral("12"))) << box->text().toStdString();
        maker.press(Qt::Key_Return);
        ++tried;
    }
    EXPECT_EQ(tried, 6);
    EXPECT_EQ(join(1).at.round, 11);
    EXPECT_EQ(join(1).turn_degrees, 12);
    EXPECT_EQ(join(1).sink_mm, 12);
}

TEST_F(WholeToyTest, TheWheelChangesNoField) {
    show_toy();
    whole().state().pick(copy(2));
    maker.press(Qt::Key_3, Qt::AltModifier);
    whole().joins().take_keyboard();
    const Toy before = session().toy();
    for (auto* field : maker.window->findChildren<QWidget*>()) {
        const bool is_field = qobject_cast<QAbstractSpinBox*>(field) || qobject_cast<QComboBox*>(field) ||
                              qobject_cast<QSlider*>(field);
        if (!is_field || !field->isVisible()) continue;
        const QPointF at = field->rect().center();
        QWheelEvent wheel(at, field->mapToGlobal(at), {}, {0, 120}, Qt::NoButton, {}, Qt::NoScrollPhase,
                          false);
        QApplication::sendEvent(field, &wheel);
        EXPECT_FALSE(field->hasFocus());
    }
    EXPECT_EQ(session().toy(), before);
    EXPECT_EQ(whole().state().apart(), 0);
}

TEST_F(WholeToyTest, TwentyPiecesInASmallWindowStayInTheirPlaces) {
    Toy many = pup();
    for (int number = 0; number < 17; ++number) {
        many.pieces.push_back(piece_of({6, 12, 12, 12}, "Barnacle"));
        Join join;
        join.piece = {many.pieces.id(many.pieces.size() - 1), 0};
        join.onto = {many.pieces.id(0), 0};
        join.at = {4 + number % 6 * 2, 3.0 * number, false};
        many.joins.push_back(join);
    }
    session().start(many);
    show_toy();
    maker.window->resize(maker.window->minimumSizeHint());
    QTest::qWait(50);
    ASSERT_TRUE(settle());
    EXPECT_EQ(whole().joins().model().rowCount(), 20);
    EXPECT_EQ(session().assembled()->surfaces().size(), 21u);
    whole().state().pick(copy(19));
    maker.press(Qt::Key_Up, Qt::ControlModifier);
    ASSERT_TRUE(settle());
    // Only what was moved is placed again.
    EXPECT_EQ(session().assembled()->whole->placed_again, 1u);
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().toy(), many);
}

TEST_F(WholeToyTest, AnEyeUnderAnotherPieceIsNamed) {
    show_toy();
    EXPECT_FALSE(whole().toy().picture_words().contains(QStringLiteral("hidden by")));
    Toy toy = session().toy();
    toy.joins[1].onto = copy(1);
    toy.joins[1].at = {9, 3.5, false};
    session().edit(QStringLiteral("Move"), toy);
    ASSERT_TRUE(settle());
    EXPECT_TRUE(
        whole().toy().picture_words().contains(QStringLiteral("Safety eyes of Head hidden by Flipper")))
        << whole().toy().picture_words().toStdString();
}

TEST_F(WholeToyTest, LooksAsItShould) {
    show_toy();
    whole().state().pick(copy(2));
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    for (const auto& [appearance, name] :
         {std::pair{Appearance::light, "light"}, std::pair{Appearance::dark, "dark"}}) {
        session().preferences().set_appearance(appearance);
        QTest::qWait(1500);
        EXPECT_TRUE(maker.window->grab().save(
            QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/whole-toy-%1.png").arg(QLatin1String(name))));
    }
}

}  // namespace
}  // namespace roundwright::app
