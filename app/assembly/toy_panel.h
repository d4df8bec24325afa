#pragma once

#include <optional>

#include <QComboBox>
#include <QLabel>
#include <QSlider>
#include <QStackedWidget>
#include <QWidget>

#include "app/assembly/toy_scene.h"
#include "app/kit/still_label.h"
#include "app/shape/scale_bar.h"

class QScrollArea;

namespace roundwright::app {

struct ShapeActions;

/// The whole toy, live, with its size and how it stands under it. The words under the picture say the same as
/// the picture.
class ToyPanel : public QWidget {
    Q_OBJECT
  public:
    ToyPanel(DocumentSession& session, ToyState& state, const ShapeActions& actions,
             QWidget* parent = nullptr);

    /// The picture takes a while to set up, so it is made when it is first shown.
    void make_scene();
    [[nodiscard]] render::SceneView* scene() { return scene_; }
    bool take_keyboard();
    /// Turns the picture to where two pieces run into each other, `AssembledToy::overlaps`.
    void look_at_overlap(std::size_t overlap);
    void set_scene_colour(const QColor& colour);
    /// "120 mm wide (110–130), 180 mm tall ...": empty while nothing is together.
    [[nodiscard]] QString size_text() const { return size_text_; }
    /// What the picture shows, in words.
    [[nodiscard]] QString picture_words() const;
    [[nodiscard]] QSize minimumSizeHint() const override;

  protected:
    void resizeEvent(QResizeEvent* event) override;

  Q_SIGNALS:
    void opened();
    void feature_picked(int feature);

  private:
    void build(const ShapeActions& actions);
    [[nodiscard]] QWidget* controls_for(const ShapeActions& actions);
    void share_height();
    [[nodiscard]] int least_controls() const;
    void follow_session();
    void show_words();
    void show_hover(const std::optional<ToyScene::Pointed>& at);
    [[nodiscard]] QString message() const;
    [[nodiscard]] QString detail_words() const;
    [[nodiscard]] QString joins_in_words() const;

    DocumentSession& session_;
    ToyState& state_;
    QStackedWidget* stack_;
    QScrollArea* controls_;  ///< what there is no room for under the picture is scrolled to
    QLabel* message_;
    StillLabel* size_;
    StillLabel* detail_;
    ScaleBar* scale_bar_;
    QSlider* apart_;
    QComboBox* stance_;
    render::SceneView* scene_ = nullptr;
    ToyScene* pictured_ = nullptr;
    QString size_text_;
    QString hover_;
};

}  // namespace roundwright::app
