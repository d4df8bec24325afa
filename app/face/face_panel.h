#pragma once

#include <QWidget>

#include "app/face/feature_fields.h"
#include "app/session/document_session.h"

class QCheckBox;
class QDoubleSpinBox;
class QLabel;
class QListView;
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

    void add(FeatureKind kind);
    /// Turns the current feature into an embroidered one of the same size.
    void embroider_instead();
    void nudge(int rounds, int stitches);

  private:
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
    void show_fitting_time(const Feature& feature, const ShapeProblem& problem);
    [[nodiscard]] const Feature* feature() const;
    [[nodiscard]] std::vector<int> counts() const;

    DocumentSession& session_;
    FaceScene* scene_ = nullptr;
    FeaturesModel* model_;
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
