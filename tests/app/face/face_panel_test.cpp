#include "app/face/face_panel.h"

#include <gtest/gtest.h>
#include <memory>

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QListView>
#include <QPushButton>

#include "app/face/face_scene.h"
#include "app/face/features_model.h"
#include "core/document/json_document.h"
#include "core/face/face_surface.h"
#include "core/face/place_feature.h"
#include "core/rounds/piece_graph.h"
#include "render/scene/scene_view.h"
#include "render/wording/feature_words.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy head_toy() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
    toy.pieces[0].end = End::drawn_closed;
    toy.pieces[0].starts_at_top = true;
    return toy;
}

class Face : public ::testing::Test {
  protected:
    Face() {
        session.start(head_toy());
        EXPECT_TRUE(wait_for_shape(session));
    }
    [[nodiscard]] const Feature& feature() const { return session.piece()->features.front(); }
    [[nodiscard]] static QString all_words(const QWidget& panel) {
        QString words;
        for (const QLabel* label : panel.findChildren<QLabel*>()) words += label->text() + QLatin1Char('\n');
        return words;
    }
    DocumentSession session;
};

TEST_F(Face, AddingEyesPlacesAPairAndSaysHowAndWhen) {
    FacePanel panel(session);
    panel.show();
    panel.add(FeatureKind::safety_eye);
    ASSERT_EQ(session.piece()->features.size(), 1u);
    EXPECT_TRUE(feature().pair);
    ASSERT_TRUE(wait_for_shape(session));
    const QString words = all_words(panel);
    EXPECT_TRUE(words.contains(QStringLiteral("stitches between them"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Insert after round"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("choking hazard"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("16 CFR 1501.4"))) << words.toStdString();
    session.undo_stack().undo();
    EXPECT_TRUE(session.piece()->features.empty());
}

TEST_F(Face, ArrowsWithCtrlNudgeByOneStitchOrOneRound) {
    FacePanel panel(session);
    panel.show();
    panel.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
    panel.add(FeatureKind::safety_eye);
    const int round = feature().round;
    const int apart = feature().stitches_apart;
    auto* list = panel.findChild<QListView*>();
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(feature().round, round - 1);
    QTest::keyClick(list, Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(feature().stitches_apart, apart + 1);
    session.undo_stack().undo();  // both nudges are one step
    EXPECT_EQ(feature().round, round);
    EXPECT_EQ(feature().stitches_apart, apart);
}

TEST_F(Face, UpIsUpOnTheShapeWhereverItBegins) {
    FacePanel panel(session);
    panel.show();
    panel.add(FeatureKind::safety_eye);
    for (const bool starts_at_top : {true, false}) {
        session.edit_piece(QStringLiteral("Turn over"),
                           [&](Piece& piece) { piece.starts_at_top = starts_at_top; });
        ASSERT_TRUE(wait_for_shape(session));
        const auto height = [&] {
            const FaceSurface surface(*session.piece(), session.study(0)->revolved());
            const auto counts = stitch_counts(session.study(0)->graph().graph);
            return measure_feature(place_feature(feature(), surface, counts), surface).height_mm;
        };
        const double before = height();
        QTest::keyClick(&panel, Qt::Key_Up, Qt::ControlModifier);
        EXPECT_GT(height(), before) << starts_at_top;
        QTest::keyClick(&panel, Qt::Key_Down, Qt::ControlModifier);
        QTest::keyClick(&panel, Qt::Key_Down, Qt::ControlModifier);
        EXPECT_LT(height(), before) << starts_at_top;
    }
}

TEST_F(Face, EmbroideredInsteadIsOneKeyAway) {
    FacePanel panel(session);
    panel.show();
    panel.add(FeatureKind::safety_eye);
    panel.embroider_instead();
    EXPECT_EQ(feature().kind, FeatureKind::embroidered_eye);
    EXPECT_TRUE(all_words(panel).contains(QStringLiteral("no loose parts")));
}

TEST_F(Face, TheFeaturesModelIsOne) {
    FeaturesModel model(session);
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    FacePanel panel(session);
    panel.add(FeatureKind::safety_eye);
    panel.add(FeatureKind::safety_nose);
    EXPECT_EQ(model.rowCount(), 2);
    session.undo_stack().undo();
    EXPECT_EQ(model.rowCount(), 1);
}

/// A window with the shape, its face and the panel, seen from the front, with a pair of eyes.
class FaceOnShow : public Face {
  protected:
    FaceOnShow() : panel(session) {
        view = render::make_scene_view(&window);
        view->widget()->resize(500, 500);
        window.resize(500, 500);
        window.show();
        panel.show();
        scene = std::make_unique<FaceScene>(session, *view);
        panel.set_scene(scene.get());
        view->set_surface(*session.surface(0));
        panel.add(FeatureKind::safety_eye);
        EXPECT_TRUE(wait_for_shape(session));
        view->look_from(render::ViewDirection::front);
        view->fit();
        QCoreApplication::processEvents();
    }
    /// Where an eye is seen.
    [[nodiscard]] std::optional<QPoint> eye() const {
        for (int y = 0; y < 500; y += 4) {
            for (int x = 250; x < 500; x += 4) {
                if (view->part_at(QPointF(x, y)).has_value()) return QPoint(x + 4, y + 4);
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] QWidget* canvas(QPoint at) { return window.childAt(at); }

    QWidget window;
    FacePanel panel;
    render::SceneView* view;
    std::unique_ptr<FaceScene> scene;
};

// An eye is dragged over the fabric with the mouse: the words follow, the drag is one step, undo puts it
// back.
TEST_F(FaceOnShow, DraggingAnEyeAcrossTheShapeIsOneStep) {
    const auto from = eye();
    ASSERT_TRUE(from) << "no eye seen from the front";
    const Feature before = feature();
    const std::string document = write_document(session.toy());
    const int steps = session.undo_stack().count();
    QWidget* fabric = canvas(*from);
    QTest::mousePress(fabric, Qt::LeftButton, {}, fabric->mapFrom(&window, *from));
    for (int k = 1; k <= 6; ++k)
        QTest::mouseMove(fabric, fabric->mapFrom(&window, *from + QPoint(6 * k, 12 * k)));
    EXPECT_NE(feature(), before);
    EXPECT_EQ(session.undo_stack().count(), steps);
    QTest::mouseRelease(fabric, Qt::LeftButton, {}, fabric->mapFrom(&window, *from + QPoint(36, 72)));
    EXPECT_EQ(session.undo_stack().count(), steps + 1);
    EXPECT_NE(feature().round, before.round);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(all_words(panel).contains(feature_place(feature()).mid(1)));
    session.undo_stack().undo();
    EXPECT_EQ(write_document(session.toy()), document);
}

TEST_F(FaceOnShow, TheFaceTurnsToTheViewerWhenEyesArePlaced) {
    session.edit_piece(QStringLiteral("turn"), [](Piece& piece) { piece.face_degrees = 140; });
    ASSERT_TRUE(wait_for_shape(session));
    panel.add(FeatureKind::safety_nose);
    EXPECT_NEAR(view->yaw_degrees(), 140, 1e-6);
    view->turn(-20, 0);
    auto* place = panel.findChild<QPushButton*>(QStringLiteral("place"));
    ASSERT_NE(place, nullptr);
    place->click();
    EXPECT_NEAR(view->yaw_degrees(), 120, 1e-6) << "it can be placed from here";
    place->click();
    view->turn(-100, 0);
    place->click();
    EXPECT_NEAR(view->yaw_degrees(), 140, 1e-6);
}

TEST_F(FaceOnShow, ADragUnderWayIsTakenBackWhenTheShapeGoes) {
    const auto from = eye();
    ASSERT_TRUE(from);
    const std::string document = write_document(session.toy());
    Q_EMIT view->part_dragged(*view->part_at(QPointF(*from)), QPointF(*from) + QPointF(20, 40));
    ASSERT_NE(write_document(session.toy()), document);
    delete view;
    scene.reset();
    EXPECT_EQ(write_document(session.toy()), document);
}

TEST_F(Face, AClickOnAStitchPlacesTheFeatureInTheGapAboveIt) {
    QWidget window;
    render::SceneView* view = render::make_scene_view(&window);
    FacePanel panel(session);
    FaceScene scene(session, *view);
    panel.set_scene(&scene);
    panel.add(FeatureKind::safety_eye);
    ASSERT_TRUE(wait_for_shape(session));
    scene.place_by_click(0);
    Q_EMIT view->clicked(6, 20);
    EXPECT_EQ(feature().round, 6);
    EXPECT_EQ(scene.placing(), -1);
}

TEST_F(Face, SaysWhereInTheTradesWords) {
    Feature eyes;
    eyes.round = 8;
    eyes.stitches_apart = 7;
    EXPECT_EQ(feature_place(eyes), QStringLiteral("between rounds 9 and 10, with 7 stitches between them"));
    eyes.pair = false;
    eyes.stitches_right = -1.5;
    EXPECT_EQ(feature_place(eyes), QStringLiteral("between rounds 9 and 10, 1½ stitches left of the middle"));
    eyes.stitches_right = 1;
    EXPECT_EQ(feature_place(eyes), QStringLiteral("between rounds 9 and 10, 1 stitch right of the middle"));
}

}  // namespace
}  // namespace roundwright::app
