#pragma once

#include <QDialog>

#include "app/export/mesh_file.h"
#include "app/kit/save_bytes.h"
#include "app/session/document_session.h"
#include "render/pages/pattern_options.h"

class QComboBox;

namespace roundwright::app {

/// Saves the stuffed shape as a 3D file, of the current piece or of all in a row.
class MeshDialog : public QDialog {
    Q_OBJECT
  public:
    explicit MeshDialog(DocumentSession& session, QWidget* parent = nullptr);

    /// Writes the file as chosen. Why that failed, if it did; empty if it was stopped.
    [[nodiscard]] SavedBytes save_to(const QString& path, const render::Progress& progress = {}) const;

  private:
    void build();
    [[nodiscard]] MeshForm form() const;
    [[nodiscard]] std::vector<std::size_t> pieces() const;
    void ask_and_save();

    DocumentSession& session_;
    QComboBox* pieces_;
    QComboBox* surface_;
    QComboBox* form_;
};

}  // namespace roundwright::app
