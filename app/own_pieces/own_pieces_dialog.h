#pragma once

#include <optional>
#include <vector>

#include <QDialog>
#include <QListView>
#include <QPushButton>
#include <QStandardItemModel>

#include "app/own_pieces/own_pieces_folder.h"
#include "render/background/background.h"

class QLabel;

namespace roundwright::app {

/// The pieces that the maker has kept, as pictures to start from. Files are read and drawn in the background,
/// one after the other.
class OwnPiecesDialog : public QDialog {
    Q_OBJECT
  public:
    explicit OwnPiecesDialog(const OwnPiecesFolder& folder, QWidget* parent = nullptr);

    /// The piece that was chosen, in a toy of its own.
    [[nodiscard]] const std::optional<Toy>& chosen() const { return chosen_; }
    [[nodiscard]] QListView& list() { return *list_; }

  private:
    void build(const OwnPiecesFolder& folder);
    void start_reading(std::vector<QString> files);
    void show_piece(const QString& file, const Toy& toy, const QImage& picture);
    void show_choice();
    void take();

    QStandardItemModel model_;
    QListView* list_;
    QLabel* words_;
    QPushButton* add_ = nullptr;
    std::vector<Toy> toys_;  ///< one a row
    std::optional<Toy> chosen_;
    render::Background reading_;
};

}  // namespace roundwright::app
