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

/// The pieces that the maker has kept, as pictures to start from, to be renamed and removed. Files are read
/// and drawn in the background, one after the other.
class OwnPiecesDialog : public QDialog {
    Q_OBJECT
  public:
    explicit OwnPiecesDialog(OwnPiecesFolder folder, QWidget* parent = nullptr);

    /// The piece that was chosen, in a toy of its own.
    [[nodiscard]] const std::optional<Toy>& chosen() const { return chosen_; }
    [[nodiscard]] QListView& list() { return *list_; }
    /// What was done last, or what this is for.
    [[nodiscard]] QString words() const;

  private:
    void build();
    [[nodiscard]] QWidget* build_buttons();
    void start_reading(std::vector<QString> files);
    void show_piece(const QString& file, const Toy& toy, const QImage& picture);
    void show_choice();
    void take();
    void rename();
    void remove();
    void bring_back();
    [[nodiscard]] bool may_remove(const QString& name);
    [[nodiscard]] QString name_of(int row) const;

    struct Kept {
        QString file;
        Toy toy;
    };
    struct Removed {
        QString file;  ///< where it lies now
        Kept kept;
        QIcon picture;
    };
    void append(const Kept& kept, const QIcon& picture);

    OwnPiecesFolder folder_;
    QStandardItemModel model_;
    QListView* list_;
    QLabel* words_;
    QPushButton* add_;
    QPushButton* rename_;
    QPushButton* remove_;
    QPushButton* bring_back_;
    std::vector<Kept> kept_;  ///< one a row
    std::vector<Removed> removed_;
    std::optional<Toy> chosen_;
    render::Background reading_;
};

}  // namespace roundwright::app
