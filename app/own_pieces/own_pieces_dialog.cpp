#include "app/own_pieces/own_pieces_dialog.h"

#include <utility>

#include <QDialogButtonBox>
#include <QDir>
#include <QFileInfo>
#include <QImage>
#include <QInputDialog>
#include <QLabel>
#include <QMessageBox>
#include <QShortcut>
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

/// With room for two lines of a name under the picture.
QSize cell_size(const QFontMetrics& font) {
    constexpr int around = 12;
    return {picture_side + 32, picture_side + 2 * font.lineSpacing() + 2 * around};
}

/// A chosen one is framed, and keeps the colours of its yarn.
QIcon icon_of(const QImage& picture) {
    if (picture.isNull()) return {};
    const QPixmap pixmap = QPixmap::fromImage(picture);
    QIcon icon(pixmap);
    icon.addPixmap(pixmap, QIcon::Selected);
    return icon;
}

}  // namespace

OwnPiecesDialog::OwnPiecesDialog(OwnPiecesFolder folder, QWidget* parent)
    : QDialog(parent),
      folder_(std::move(folder)),
      list_(new TrueFocus<QListView>),
      words_(words_label(tr("Own pieces"))),
      add_(new QPushButton(tr("&Add to the toy"))),
      rename_(new QPushButton(tr("Re&name…"))),
      remove_(new QPushButton(tr("&Remove…"))),
      bring_back_(new QPushButton(tr("&Bring back"))) {
    setWindowTitle(tr("Own pieces"));
    build();
    start_reading(folder_.files());
}

QString OwnPiecesDialog::words() const { return words_->text(); }

void OwnPiecesDialog::build() {
    list_->setModel(&model_);
    list_->setViewMode(QListView::IconMode);
    list_->setMovement(QListView::Static);
    list_->setResizeMode(QListView::Adjust);
    list_->setIconSize({picture_side, picture_side});
    list_->setGridSize(cell_size(list_->fontMetrics()));
    list_->setWordWrap(true);
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list_->setAccessibleName(tr("Pieces that you have kept"));
    words_->setTextFormat(Qt::PlainText);
    words_->setText(tr("Piece ▸ Keep as an own piece puts a piece here. They lie in %1.")
                        .arg(QDir::toNativeSeparators(folder_.path())));
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(list_, 1);
    layout->addWidget(words_);
    layout->addWidget(build_buttons());
    connect(list_, &QListView::activated, this, &OwnPiecesDialog::take);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &OwnPiecesDialog::show_choice);
    resize(room_on_screen(*this, {4 * (picture_side + 32) + 60, 480}));
    list_->setFocus();
    show_choice();
}

QWidget* OwnPiecesDialog::build_buttons() {
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->addButton(add_, QDialogButtonBox::AcceptRole);
    add_->setDefault(true);
    const auto also = [&](QPushButton* button, const QKeySequence& keys, auto act) {
        buttons->addButton(button, QDialogButtonBox::ActionRole);
        button->setAutoDefault(false);
        button->setToolTip(keys.toString(QKeySequence::NativeText));
        connect(button, &QPushButton::clicked, this, act);
        connect(new QShortcut(keys, this), &QShortcut::activated, button, &QPushButton::click);
    };
    also(rename_, Qt::Key_F2, &OwnPiecesDialog::rename);
    also(remove_, QKeySequence::Delete, &OwnPiecesDialog::remove);
    also(bring_back_, QKeySequence::Undo, &OwnPiecesDialog::bring_back);
    connect(buttons, &QDialogButtonBox::accepted, this, &OwnPiecesDialog::take);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    return buttons;
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
    append({file, toy}, icon_of(picture));
    if (!list_->currentIndex().isValid()) list_->setCurrentIndex(model_.index(0, 0));
}

void OwnPiecesDialog::append(const Kept& kept, const QIcon& picture) {
    auto* item = new QStandardItem(picture, name_in_words(QFileInfo(kept.file).completeBaseName()));
    item->setToolTip(piece_name(kept.toy, 0));
    item->setSizeHint(cell_size(list_->fontMetrics()) - QSize(8, 4));
    kept_.push_back(kept);
    model_.appendRow(item);
}

void OwnPiecesDialog::show_choice() {
    for (QPushButton* button : {add_, rename_, remove_}) button->setEnabled(list_->currentIndex().isValid());
    bring_back_->setEnabled(!removed_.empty());
}

void OwnPiecesDialog::take() {
    const int row = list_->currentIndex().row();
    if (row < 0) return;
    chosen_ = kept_[static_cast<std::size_t>(row)].toy;
    if (chosen_->title.empty()) chosen_->title = std::as_const(*chosen_).pieces.front().name;
    accept();
}

QString OwnPiecesDialog::name_of(int row) const { return model_.index(row, 0).data().toString(); }

void OwnPiecesDialog::rename() {
    const int row = list_->currentIndex().row();
    if (row < 0) return;
    bool accepted = false;
    const QString name = QInputDialog::getText(this, tr("Rename"), tr("Name of the piece:"),
                                               QLineEdit::Normal, name_of(row), &accepted)
                             .trimmed();
    list_->setFocus();
    if (!accepted || name.isEmpty() || name == name_of(row)) return;
    Kept& kept = kept_[static_cast<std::size_t>(row)];
    const auto renamed = folder_.rename(kept.file, name);
    kept.file = renamed.path;
    if (renamed.problem) return words_->setText(renamed.problem->message);
    kept.toy.title = kept.toy.pieces[0].name = name.toStdString();
    model_.item(row)->setText(name_in_words(QFileInfo(renamed.path).completeBaseName()));
    model_.item(row)->setToolTip(piece_name(kept.toy, 0));
    words_->setText(tr("It is called “%1” now.").arg(name_of(row)));
}

void OwnPiecesDialog::remove() {
    const int row = list_->currentIndex().row();
    if (row < 0 || !may_remove(name_of(row))) return;
    list_->setFocus();
    const auto at = kept_.begin() + row;
    const auto moved = folder_.remove(at->file);
    if (moved.problem) return words_->setText(moved.problem->message);
    words_->setText(tr("“%1” is removed. Ctrl+Z brings it back; it lies in %2.")
                        .arg(name_of(row), QDir::toNativeSeparators(folder_.removed_path())));
    removed_.push_back({moved.path, *at, model_.item(row)->icon()});
    kept_.erase(at);
    model_.removeRow(row);
    show_choice();
}

bool OwnPiecesDialog::may_remove(const QString& name) {
    QMessageBox box(QMessageBox::Question, tr("Remove an own piece"), QString(), QMessageBox::NoButton, this);
    box.setTextFormat(Qt::PlainText);
    box.setText(tr("Remove “%1” from your own pieces?").arg(name));
    box.setInformativeText(tr("Toys that it was added to keep it. You can bring it back."));
    auto* remove = box.addButton(tr("&Remove"), QMessageBox::AcceptRole);
    box.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    box.exec();
    return box.clickedButton() == remove;
}

void OwnPiecesDialog::bring_back() {
    if (removed_.empty()) return;
    const auto back = folder_.bring_back(removed_.back().file);
    if (back.problem) return words_->setText(back.problem->message);
    Removed removed = std::move(removed_.back());
    removed_.pop_back();
    removed.kept.file = back.path;
    append(removed.kept, removed.picture);
    const int row = model_.rowCount() - 1;
    list_->setCurrentIndex(model_.index(row, 0));
    list_->setFocus();
    words_->setText(tr("“%1” is here again.").arg(name_of(row)));
    show_choice();
}

}  // namespace roundwright::app
