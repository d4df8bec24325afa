#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include <QObject>

#include "app/assembly/join_handles.h"
#include "app/assembly/toy_state.h"
#include "app/session/live_preview.h"
#include "core/assembly/placed_surface.h"
#include "render/scene/scene_view.h"

namespace roundwright {
struct ToyMeasures;
}

namespace roundwright::app {

/// Shows the toy together in a 3D view: all pieces that are not hidden, with what is on their faces, as far
/// apart as is wished. Pieces are picked by a click there, and the picked one is dragged over the others.
class ToyScene : public QObject {
    Q_OBJECT
  public:
    ToyScene(DocumentSession& session, ToyState& state, render::SceneView& scene, QObject* parent = nullptr);
    ~ToyScene() override;

    /// What the pointer is over: a placed piece and its round; nothing beside the toy.
    struct Pointed {
        PieceCopy copy;
        int round = 0;
        int stitch = 0;
    };

    /// Draws handles and signs again, in the colours of another theme.
    void recolour();
    /// Turns to where two pieces run into each other, `AssembledToy::overlaps`.
    void look_at_overlap(std::size_t overlap);

  Q_SIGNALS:
    void hovered(const std::optional<roundwright::app::ToyScene::Pointed>& at);
    void opened();  ///< a piece was double clicked, and is picked now
    void feature_picked(int feature);

  private:
    /// A placed piece as it is drawn.
    struct Drawn {
        std::size_t placed = 0;
        Vec3 shift = Vec3::Zero();
    };
    /// A part of the picture: on a face, what the picked piece is turned and leant by, or where it runs into
    /// another.
    enum class PartKind { face, hoop, knob, overlap };
    struct Part {
        PartKind kind = PartKind::face;
        std::size_t drawn = 0;
        int feature = 0;  ///< of a face
    };

    void follow();
    void show();
    void show_parts();
    void light();
    void shift_apart();
    void show_surface();
    void show_overlaps(std::vector<render::ScenePart>& parts);
    /// Whether something is under the hand.
    [[nodiscard]] bool is_dragging() const { return preview_ != nullptr || grip_ || pull_; }
    /// From the toy's frame to the picture's, where a drawn piece is shown.
    [[nodiscard]] Pose in_picture(std::size_t drawn) const;
    [[nodiscard]] std::optional<std::size_t> drawn_of(std::size_t placed) const;
    [[nodiscard]] std::optional<Pointed> pointed(int round, int stitch) const;
    void click(int round);
    void open(int round);
    void pick_part(int part);
    void drag_part(int part, QPointF position);
    void drop_part(int part, QPointF position);
    void drag_fabric(QPointF position);
    void drop_fabric(QPointF position);
    void give_up();
    [[nodiscard]] std::optional<std::size_t> picked() const;
    [[nodiscard]] std::optional<Vec3> place_of(std::size_t drawn) const;
    [[nodiscard]] bool is_as_shown(std::size_t join) const;
    [[nodiscard]] std::optional<Toy> sewn_at(QPointF position) const;
    [[nodiscard]] std::optional<Toy> feature_at(const Part& part, QPointF position) const;
    [[nodiscard]] std::optional<Toy> turned_at(const Part& part, QPointF position) const;
    [[nodiscard]] QString step_of(PartKind kind) const;
    void add_handles(std::vector<render::ScenePart>& parts);
    void repick();
    /// Where a point of the view meets one of the pieces drawn, in that one's own frame.
    struct Met {
        std::size_t drawn = 0;
        Vec3 point;
    };
    [[nodiscard]] std::optional<Met> met(QPointF position,
                                         const std::function<bool(std::size_t)>& counts) const;
    [[nodiscard]] const PlacedPiece& placed(std::size_t drawn) const;

    DocumentSession& session_;
    ToyState& state_;
    render::SceneView& scene_;
    std::shared_ptr<const AssembledToy> shown_;
    std::shared_ptr<const roundwright::AssembledToy> drawn_whole_;  ///< what the picture was made of
    std::shared_ptr<const ToyMeasures> drawn_measures_;
    Pose on_table_ = Pose::Identity();  ///< as it is drawn: it holds still under the hand
    std::optional<Stance> drawn_stance_;
    std::vector<Drawn> drawn_;
    std::vector<int> first_round_;  ///< of each drawn piece in the picture's surface, and their number
    std::vector<Part> parts_;
    std::unique_ptr<LivePreview> preview_;
    std::optional<QPointF> grip_;  ///< from the pointer to the place that is dragged
    PieceCopy dragged_;
    /// What a handle is pulled from: where it was taken, and the join as it was then.
    struct Pull {
        JoinHandles handles;
        Ray from;
        Join join;
    };
    std::optional<Pull> pull_;
};

}  // namespace roundwright::app
