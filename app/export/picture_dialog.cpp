#include "app/export/picture_dialog.h"

#include <algorithm>

#include <QCheckBox>
#include <QColorDialog>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/kit/save_bytes.h"
#include "app/kit/save_path.h"
#include "render/raster/rim.h"
#include "render/scene/scene_view.h"
#include "render/wording/piece_name.h"
#include "render/wording/printable.h"

namespace roundwright::app {
namespace {

constexpr int preview_pixels = 320;
constexpr int least_pixels = 16;
constexpr int view_of_the_window = -1;
enum Background { none, white, own };

QString view_words(render::ViewDirection direction) {
    using render::ViewDirection;
    switch (direction) {
        case ViewDirection::front:
            return PictureDialog::tr("Front");
        case ViewDirection::side:
            return PictureDialog::tr("Side");
        case ViewDirection::back:
            return PictureDialog::tr("Back");
        case ViewDirection::top:
            return PictureDialog::tr("Top");
        case ViewDirection::bottom:
            return PictureDialog::tr("Bottom");
        case ViewDirection::three_quarter:
            return PictureDialog::tr("Three-quarter view");
    }
    return {};
}

QSpinBox* pixel_box(int pixels) {
    auto* box = new QSpinBox;
    box->setRange(least_pixels, most_picture_pixels);
    box->setSingleStep(100);
    box->setSuffix(PictureDialog::tr(" px"));
    box->setValue(pixels);
    return box;
}

}  // namespace

PictureDialog::PictureDialog(DocumentSession& session, const render::SceneView* scene, QWidget* parent)
    : QDialog(parent),
      session_(session),
      scene_(scene),
      shown_(shown_piece(session.toy(), static_cast<std::size_t>(session.current_piece()), for_pictures)) {
    setWindowTitle(tr("Save a picture of %1")
                       .arg(piece_name(session.toy(), static_cast<std::size_t>(session.current_piece()))));
    build();
    show_preview();
}

QWidget* PictureDialog::choices() {
    view_ = new QComboBox;
    if (scene_ != nullptr) view_->addItem(tr("Same as the window"), view_of_the_window);
    int index = 0;
    for (const PictureView& view : picture_views()) view_->addItem(view_words(view.direction), index++);
    width_ = pixel_box(PictureWanted{}.pixels.width());
    height_ = pixel_box(PictureWanted{}.pixels.height());
    background_ = new QComboBox;
    background_->addItems({tr("None"), tr("White"), tr("A colour…")});
    line_ = new QCheckBox(tr("&Line around the shape"));
    line_->setToolTip(tr("Where the yarn hardly stands out from the background"));
    auto* side = new QWidget;
    auto* form = new QFormLayout(side);
    form->setContentsMargins(0, 0, 0, 0);
    form->addRow(tr("Seen &from"), view_);
    form->addRow(tr("&Width"), width_);
    form->addRow(tr("&Height"), height_);
    form->addRow(tr("&Background"), background_);
    form->addRow(line_);
    connect(view_, &QComboBox::currentIndexChanged, this, &PictureDialog::show_preview);
    connect(width_, &QSpinBox::valueChanged, this, &PictureDialog::show_preview);
    connect(height_, &QSpinBox::valueChanged, this, &PictureDialog::show_preview);
    connect(line_, &QCheckBox::toggled, this, &PictureDialog::show_preview);
    connect(background_, &QComboBox::activated, this, &PictureDialog::choose_background);
    return side;
}

void PictureDialog::build() {
    preview_ = new QLabel;
    preview_->setFixedSize(preview_pixels, preview_pixels);
    preview_->setAlignment(Qt::AlignCenter);
    preview_->setAccessibleName(tr("How the picture will look"));
    auto* upper = new QHBoxLayout;
    upper->setSpacing(20);
    upper->addWidget(preview_);
    upper->addWidget(choices(), 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    auto* png = buttons->addButton(tr("Save as &PNG…"), QDialogButtonBox::ActionRole);
    svg_ = buttons->addButton(tr("Save as &SVG…"), QDialogButtonBox::ActionRole);
    png->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(upper);
    layout->addWidget(buttons);
    connect(png, &QPushButton::clicked, this,
            [this] { ask_and_save(tr("Picture (*.png)"), QStringLiteral("png")); });
    connect(svg_, &QPushButton::clicked, this,
            [this] { ask_and_save(tr("Vector drawing (*.svg)"), QStringLiteral("svg")); });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

bool PictureDialog::as_in_the_window() const { return view_->currentData().toInt() == view_of_the_window; }

PictureWanted PictureDialog::wanted() const {
    PictureWanted wanted;
    if (!as_in_the_window()) {
        wanted.view = picture_views()[static_cast<std::size_t>(view_->currentData().toInt())];
    }
    wanted.pixels = {width_->value(), height_->value()};
    const QColor backgrounds[] = {Qt::transparent, Qt::white, own_background_};
    wanted.background = backgrounds[background_->currentIndex()];
    return wanted;
}

/// The line is as wide as on the screen, where the shape is as large as that.
QImage PictureDialog::image(const PictureWanted& wanted) const {
    if (!line_->isChecked()) return image_without_line(wanted);
    constexpr double side_on_the_screen = 600;
    PictureWanted clear = wanted;
    clear.background = Qt::transparent;
    const double width =
        render::rim_width_px *
        std::max(1.0, std::min(wanted.pixels.width(), wanted.pixels.height()) / side_on_the_screen);
    const bool on_nothing = wanted.background.alpha() == 0;
    const QColor line = render::rim_on(on_nothing ? QColor(Qt::white) : wanted.background);
    return render::with_rim(image_without_line(clear), line, width, wanted.background);
}

QImage PictureDialog::image_without_line(const PictureWanted& wanted) const {
    if (as_in_the_window()) return scene_->picture(wanted.pixels, wanted.background);
    return picture_of(shown_, wanted);
}

void PictureDialog::choose_background(int choice) {
    if (choice == own) {
        const QColor chosen = QColorDialog::getColor(own_background_, this, tr("Background"));
        if (chosen.isValid()) own_background_ = chosen;
    }
    show_preview();
}

void PictureDialog::show_preview() {
    PictureWanted small = wanted();
    small.pixels = small.pixels.scaled(preview_->size(), Qt::KeepAspectRatio).expandedTo({1, 1});
    preview_->setPixmap(QPixmap::fromImage(image(small)));
    svg_->setEnabled(!as_in_the_window());
    svg_->setToolTip(as_in_the_window() ? tr("Choose a side to save a drawing.") : QString());
}

SavedBytes PictureDialog::save_to(const QString& path) const {
    if (shown_.empty()) return {tr("the piece has no shape yet."), {}};
    if (QFileInfo(path).suffix().toLower() != QLatin1String("svg"))
        return save_bytes(path, png_bytes(image(wanted())));
    const auto piece = static_cast<std::size_t>(session_.current_piece());
    return save_bytes(path,
                      picture_svg(shown_, wanted(), printable_name(own_piece_name(session_.toy(), piece))));
}

void PictureDialog::ask_and_save(const QString& filter, const QString& ending) {
    const auto piece = static_cast<std::size_t>(session_.current_piece());
    const QString name = printable_name(own_piece_name(session_.toy(), piece)) + QLatin1Char('.') + ending;
    const QString path = ask_save_path(this, windowTitle(), name, filter, ending);
    if (path.isEmpty()) return;
    QGuiApplication::setOverrideCursor(Qt::WaitCursor);
    const SavedBytes saved = save_to(path);
    QGuiApplication::restoreOverrideCursor();
    if (saved.problem) {
        QMessageBox::warning(this, windowTitle(),
                             tr("%1 could not be written: %2").arg(path, *saved.problem));
        return;
    }
    session_.remark(path, saved.remarks);
    accept();
}

}  // namespace roundwright::app
