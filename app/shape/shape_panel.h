#pragma once

#include <QHBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QTimer>
#include <QWidget>

#include "app/kit/still_label.h"
#include "app/session/document_session.h"
#include "app/shape/scale_bar.h"
#include "app/shape/shape_arrival.h"
#include "app/shape/shape_sign.h"
#include "render/scene/scene_view.h"

namespace roundwright::app {

struct ShapeActions;

/// The stuffed shape, live, with its size, a scale and the views under it. The words under the picture say
/// the same as the picture.
class ShapePanel : public QWidget {
    Q_OBJECT
  public:
    ShapePanel(DocumentSession& session, const ShapeActions& actions, QWidget* parent = nullptr);

    /// A button beside the size, for what can be done about it.
    void offer(QAction* action);
    /// The picture takes a while to set up, so it is made once the window is up.
    void make_scene();
    [[nodiscard]] render::SceneView* scene() { return scene_; }
    /// Turns the shape once around, slowly, until it is touched.
    void turn_once();
    /// To the picture, or to the first button while there is none.
    bool take_keyboard();
    void set_scene_colour(const QColor& colour);
    [[nodiscard]] QString size_text() const { return size_text_; }
    /// Folded: the picture and its size, where the views and the words do not fit; the menu has what they do.
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// The least width that shows all of it.
    [[nodiscard]] int unfolded_width() const;
    /// What the picture shows, in words.
    [[nodiscard]] QString words() const;
    [[nodiscard]] QString picture_words() const;

  Q_SIGNALS:
    void round_clicked(int round);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void build_controls(const ShapeActions& actions);
    void follow_session();
    void fit_lines();
    void fold_or_unfold();
    void show_surface(int piece);
    void show_words();
    void show_hover(int round, int stitch);
    void show_selection();
    void light_selection();
    void turn_a_little();

    DocumentSession& session_;
    QStackedWidget* stack_;
    QLabel* message_;
    StillLabel* size_;
    StillLabel* detail_;
    ShapeSign* sign_;
    ShapeArrival* arrival_;
    ScaleBar* scale_bar_;
    QWidget* bar_;  ///< views and tools
    QBoxLayout* controls_;
    QHBoxLayout* views_;
    QHBoxLayout* tools_;
    render::SceneView* scene_ = nullptr;
    QTimer turning_;
    QTimer light_later_;
    double turned_degrees_ = 0;
    QString size_text_;
    QString hover_;
};

}  // namespace roundwright::app
