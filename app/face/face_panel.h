#pragma once

#include <functional>

#include <QWidget>

#include "app/face/feature_fields.h"
#include "app/session/document_session.h"

class QCheckBox;
class QDoubleSpinBox;
class QLabel;
class QListView;
class QMenu;
class QPushButton;

namespace roundwright::app {

class FaceScene;
class FeaturesModel;

/// Eyes and other features of the current piece: add, place, measure, and when to fit them.
class FacePanel : public QWidget {
    Q_OBJECT
  public:
    explicit FacePanel(DocumentSession& session, QWidget* parent = nullptr);

    /// The 3D view is there some time after the window.
    void set_scene(FaceScene* scene);
    [[nodiscard]] int current() const;
    void select(int feature);
    /// The keys that move a feature, for the window's menu.
    void fill_menu(QMenu* menu) const;

    void add(FeatureKind kind);
    /// Turns the current feature into an embroidered one of the same size.
    void embroider_instead();
    /// Moves the current feature up the shape by so many rounds and to the right, as the viewer sees the
    /// face, by so many stitches; of a pair the one that was picked, the other mirrors it.
    void nudge(int up, int right);

    /// Something else that the same keys move while it can be moved, unless the keyboard is in this panel.
    struct Other {
        std::function<bool()> can_be_moved;
        std::function<void(int up, int right)> move;
    };
    void set_other(Other other);
    void update_nudges();

  Q_SIGNALS:
    void picked_on_the_shape();

  protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    void pick(int feature, int side);
    [[nodiscard]] bool moves_other() const;
    void build();
    QWidget* list_part();
    void add_shortcuts();
    void connect_all();
    void change(const QString& step, const FeatureFields::Edit& edit, const QString& merge_key = {});
    void remove();
    void space(EyeSpacing spacing);
    void show_features();
    void show_fields();
    void show_words();
    void show_fitting_time(const Feature& feature, const PieceStudy& study);
    [[nodiscard]] const Feature* feature() const;
    [[nodiscard]] std::vector<int> counts() const;

    DocumentSession& session_;
    FaceScene* scene_ = nullptr;
    FeaturesModel* model_;
    QList<QAction*> nudges_;
    Other other_;
    bool picked_ = false;  ///< on the shape, with the panel folded perhaps
    int side_ = 1;         ///< of a pair: the one that was picked, -1 left or 1 right
    QListView* list_;
    QPushButton* add_;
    QPushButton* remove_;
    QPushButton* place_;
    FeatureFields* fields_;
    QDoubleSpinBox* direction_;
    QCheckBox* guides_;
    QPushButton* embroider_;
    QLabel* place_words_;
    QLabel* time_words_;
    QLabel* safety_words_;
};

}  // namespace roundwright::app
