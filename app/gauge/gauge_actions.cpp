#include "app/gauge/gauge_actions.h"

#include "app/gauge/finished_piece_dialog.h"
#include "app/kit/action_maker.h"

namespace roundwright::app {

GaugeActions::GaugeActions(DocumentSession& session, QWidget* window)
    : QObject(window),
      session_(session),
      measure_circle_(make_action(window, "shape.gauge-circle")),
      from_finished_piece_(make_action(window, "shape.gauge-from-piece")) {
    measure_circle_->setToolTip(tr("Five rounds and one length make the sizes yours"));
    from_finished_piece_->setToolTip(tr("Measure the finished piece, and the next one comes out right"));
    connect(from_finished_piece_, &QAction::triggered, this, [this, window] {
        auto* dialog = new FinishedPieceDialog(session_, window);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
    connect(&session_, &DocumentSession::toy_changed, this, &GaugeActions::update_state);
    connect(&session_, &DocumentSession::current_piece_changed, this, &GaugeActions::update_state);
    connect(&session_, &DocumentSession::file_changed, this, &GaugeActions::update_state);
    update_state();
}

void GaugeActions::fill_shape_menu(QMenu* menu) const {
    menu->addActions({measure_circle_, from_finished_piece_});
}

void GaugeActions::update_state() {
    const Piece* piece = session_.piece();
    measure_circle_->setEnabled(!session_.read_only());
    from_finished_piece_->setEnabled(piece != nullptr && !piece->rounds.empty() && !session_.read_only());
}

}  // namespace roundwright::app
