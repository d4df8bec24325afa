#pragma once

#include <functional>

#include <QWidget>

#include "app/session/document_session.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QListView;
class QPushButton;
class QSpinBox;

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
    QWidget* place_part();
    void add_shortcuts();
    void connect_all();
    void connect_place();
    void connect_looks();
    void change(const QString& step, const std::function<void(Feature&)>& edit,
                const QString& merge_key = {});
    void remove();
    void choose_colour();
    void space(int spacing);
    void show_features();
    void show_fields();
    void show_words();
    [[nodiscard]] const Feature* feature() const;
    [[nodiscard]] std::vector<int> counts() const;

    DocumentSession& session_;
    FaceScene* scene_ = nullptr;
    FeaturesModel* model_;
    QListView* list_;
    QPushButton* add_;
    QPushButton* remove_;
    QPushButton* place_;
    QWidget* fields_;
    QFormLayout* form_;
    QSpinBox* round_;
    QCheckBox* pair_;
    QSpinBox* apart_;
    QDoubleSpinBox* right_;
    QComboBox* width_;
    QDoubleSpinBox* height_;
    QSpinBox* end_round_;
    QDoubleSpinBox* end_right_;
    QPushButton* colour_;
    QCheckBox* lids_;
    QWidget* spacings_;
    QDoubleSpinBox* direction_;
    QCheckBox* guides_;
    QPushButton* embroider_;
    QLabel* place_words_;
    QLabel* time_words_;
    QLabel* safety_words_;
};

}  // namespace roundwright::app
