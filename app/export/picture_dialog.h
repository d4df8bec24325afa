#pragma once

#include <QDialog>

#include "app/export/picture_file.h"
#include "app/kit/save_bytes.h"
#include "app/session/document_session.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QSpinBox;

namespace roundwright::render {
class SceneView;
}

namespace roundwright::app {

/// Saves the current piece as a picture: from the side wanted, or just as the window shows it.
class PictureDialog : public QDialog {
    Q_OBJECT
  public:
    /// `scene` may be null; then there is nothing that the window shows.
    PictureDialog(DocumentSession& session, const render::SceneView* scene, QWidget* parent = nullptr);

    /// Writes the picture as chosen to a PNG file, or an SVG file by its ending. Why that failed, if it did.
    [[nodiscard]] SavedBytes save_to(const QString& path) const;

  private:
    void build();
    [[nodiscard]] QWidget* choices();
    [[nodiscard]] bool as_in_the_window() const;
    [[nodiscard]] PictureWanted wanted() const;
    [[nodiscard]] QImage image(const PictureWanted& wanted) const;
    [[nodiscard]] QImage image_without_line(const PictureWanted& wanted) const;
    void choose_background(int choice);
    void show_preview();
    void ask_and_save(const QString& filter, const QString& ending);

    DocumentSession& session_;
    const render::SceneView* scene_;
    ShownPiece shown_;
    QColor own_background_ = Qt::white;

    QComboBox* view_;
    QSpinBox* width_;
    QSpinBox* height_;
    QComboBox* background_;
    QCheckBox* line_;
    QLabel* preview_;
    QPushButton* svg_;
};

}  // namespace roundwright::app
