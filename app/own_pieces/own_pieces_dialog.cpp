#include "app/own_pieces/own_pieces_dialog.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QFileInfo>
#include <QImage>
#include <QLabel>
#include <QVBoxLayout>

#include "app/export/picture_file.h"
#include "app/export/shown_piece.h"
#include "app/kit/field_widgets.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/true_focus.h"
#include "render/wording/piece_name.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr int picture_side = 128;
constexpr std::size_t three_quarter = 5;  // of picture_views()

QImage picture_of_file(const Toy& toy, qreal device_pixels) {
    const ShownPiece shown = shown_piece(toy, 0, for_pictures);
    if (shown.surface.stitches.empty()) return {};
    const int side = static_cast<int>(picture_side * device_pixels);
    QImage image = picture_of(shown, {picture_views()[three_quarter], {side, side}, Qt::transparent});
    image.setDevicePixelRatio(device_pixels);
    return image;
}

}  // namespace

OwnPiecesDialog::OwnPiecesDialog(const OwnPiecesFolder& folder, QWidget* parent)
    : QDialog(parent), list_(new TrueFocus<QListView>), words_(words_label(tr("Own pieces"))) {
    setWindowTitle(tr("Own pieces"));
    build(folder);
    start_reading(folder.files());
}

void OwnPiecesDialog::build(const OwnPiecesFolder& folder) {
    list_->setModel(&model_);
    list_->setViewMode(QListView::IconMode);
    list_->setMovement(QListView::Static);
    list_->setResizeMode(QListView::Adjust);
    list_->setIconSize({picture_side, picture_side});
    list_->setGridSize({picture_side + 32, picture_side + 2 * list_->fontMetrics().lineSpacing() + 8});
    list_->setWordWrap(true);
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list_->setAccessibleName(tr("Pieces that you have kept"));
    words_->setTextFormat(Qt::PlainText);
    words_->setText(tr("Piece ▸ Keep as an own piece puts a piece here. They lie in %1.")
                        .arg(QDir::toNativeSeparators(folder.path())));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    add_ = buttons->addButton(tr("&Add to the toy"), QDialogButtonBox::AcceptRole);
    add_->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(list_, 1);
    layout->addWidget(words_);
    layout->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnPiecesDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(list_, &QListView::activated, this, &OwnPiecesDialog::take);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &OwnPiecesDialog::show_choice);
    resize(room_on_screen(*this, {4 * (picture_side + 32) + 60, 480}));
    show_choice();
}

void OwnPiecesDialog::start_reading(std::vector<QString> files) {
    reading_.start(render::Lane::longer,
                   [this, files = std::move(files),
                    pixels = devicePixelRatioF()](const render::TaskRun& run) -> render::Delivery {
                       for (const QString& file : files) {
                           if (run.stop.stop_requested()) return {};
                           const LoadedFile loaded = load_document_file(file);
                           if (loaded.problem || loaded.document.toy.pieces.empty()) continue;
                           const Toy toy = loaded.document.toy;
                           const QImage picture = picture_of_file(toy, pixels);
                           run.deliver([this, file, toy, picture] { show_piece(file, toy, picture); });
                       }
                       return {};
                   });
}

void OwnPiecesDialog::show_piece(const QString& file, const Toy& toy, const QImage& picture) {
    auto* item = new QStandardItem(name_in_words(QFileInfo(file).completeBaseName()));
    if (!picture.isNull()) item->setIcon(QIcon(QPixmap::fromImage(picture)));
    item->setToolTip(piece_name(toy, 0));
    toys_.push_back(toy);
    model_.appendRow(item);
    if (!list_->currentIndex().isValid()) list_->setCurrentIndex(model_.index(0, 0));
}

void OwnPiecesDialog::show_choice() { add_->setEnabled(list_->currentIndex().isValid()); }

void OwnPiecesDialog::take() {
    const int row = list_->currentIndex().row();
    if (row < 0) return;
    chosen_ = toys_[static_cast<std::size_t>(row)];
    if (chosen_->title.empty()) chosen_->title = std::as_const(*chosen_).pieces.front().name;
    accept();
}

}  // namespace roundwright::app
