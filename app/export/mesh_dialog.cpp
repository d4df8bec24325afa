#include "app/export/mesh_dialog.h"

#include <numeric>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/kit/run_with_progress.h"
#include "app/kit/save_bytes.h"
#include "app/kit/save_path.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {
namespace {

constexpr const char* endings[] = {"glb", "obj", "stl"};

}  // namespace

MeshDialog::MeshDialog(DocumentSession& session, QWidget* parent) : QDialog(parent), session_(session) {
    setWindowTitle(tr("Save a 3D file"));
    build();
}

void MeshDialog::build() {
    pieces_ = new QComboBox;
    pieces_->addItem(piece_name(session_.toy(), static_cast<std::size_t>(session_.current_piece())));
    if (session_.toy().pieces.size() > 1) pieces_->addItem(tr("All pieces in a row"));
    surface_ = new QComboBox;
    surface_->addItems({tr("With stitches"), tr("Smooth")});
    form_ = new QComboBox;
    form_->addItems({tr("GLB, with colours"), tr("OBJ, with colours"), tr("STL, for 3D printing")});
    auto* about = new QLabel(tr("The stuffed shape at actual size, in mm (GLB: in m)."));
    about->setWordWrap(true);
    auto* form = new QFormLayout;
    form->addRow(tr("&Pieces"), pieces_);
    form->addRow(tr("&Surface"), surface_);
    form->addRow(tr("&Kind of file"), form_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    auto* save = buttons->addButton(tr("Sa&ve…"), QDialogButtonBox::ActionRole);
    save->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(about);
    layout->addStretch(1);
    layout->addWidget(buttons);
    resize(380, sizeHint().height());
    connect(save, &QPushButton::clicked, this, &MeshDialog::ask_and_save);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
}

MeshForm MeshDialog::form() const { return *mesh_form_of(QLatin1String(endings[form_->currentIndex()])); }

std::vector<std::size_t> MeshDialog::pieces() const {
    if (pieces_->currentIndex() == 0) return {static_cast<std::size_t>(session_.current_piece())};
    std::vector<std::size_t> all(session_.toy().pieces.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

SavedBytes MeshDialog::save_to(const QString& path, const render::Progress& progress) const {
    // An ending that was typed says more than the choice does.
    const MeshForm written = mesh_form_of(QFileInfo(path).suffix().toLower()).value_or(form());
    MeshWanted wanted{written, pieces(), {}};
    wanted.options.relief = surface_->currentIndex() == 0 ? Relief::solid : Relief::none;
    const MeshFile file = mesh_file(session_.toy(), wanted, progress);
    if (file.piece_without)
        return {tr("%1 has no shape yet.").arg(piece_name(session_.toy(), *file.piece_without)), {}};
    if (progress.stop.stop_requested()) return {QString(), {}};
    return save_bytes(path, bytes_of(file));
}

void MeshDialog::ask_and_save() {
    const QString ending = QLatin1String(endings[form_->currentIndex()]);
    const QString path =
        ask_save_path(this, windowTitle(), pieces_->currentText() + QLatin1Char('.') + ending,
                      tr("3D file (*.%1)").arg(ending), ending);
    if (path.isEmpty()) return;
    SavedBytes saved;
    const bool written =
        run_with_progress(this, tr("Writing the 3D file…"), [&](const render::Progress& progress) {
            saved = save_to(path, progress);
            return !saved.problem;
        });
    if (written) {
        session_.remark(path, saved.remarks);
        return accept();
    }
    if (!saved.problem->isEmpty())
        QMessageBox::warning(this, windowTitle(),
                             tr("%1 could not be written: %2").arg(path, *saved.problem));
}

}  // namespace roundwright::app
