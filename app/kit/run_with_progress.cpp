#include "app/kit/run_with_progress.h"

#include <algorithm>

#include <QCoreApplication>
#include <QEventLoop>
#include <QMessageBox>
#include <QProgressBar>
#include <QProgressDialog>

#include "render/background/background.h"

namespace roundwright::app {

// The work may use what its caller holds, so the loop goes on until it has ended, cancelled or not.
bool run_with_progress(QWidget* parent, const QString& title,
                       const std::function<bool(const render::Progress&)>& work) {
    QProgressDialog dialog(title, QCoreApplication::translate("RunWithProgress", "Cancel"), 0, 0, parent);
    dialog.setWindowModality(Qt::WindowModal);
    dialog.setMinimumDuration(400);
    dialog.findChild<QProgressBar*>()->setAccessibleName(title);
    // Stays when it is cancelled, so that nothing else is done in the window until the work has ended.
    QObject::disconnect(&dialog, &QProgressDialog::canceled, &dialog, &QProgressDialog::cancel);
    render::Background background;
    std::stop_source cancelled;
    bool done_well = false;
    QString failure;
    background.start(render::Lane::longer, [&](const render::TaskRun& run) -> render::Delivery {
        const std::stop_callback stop_with_the_program(run.stop, [&] { cancelled.request_stop(); });
        const bool well = work({run.report, cancelled.get_token()});
        return [&done_well, well] { done_well = well; };
    });
    QObject::connect(&background, &render::Background::progressed, &dialog, [&dialog](int done, int of) {
        dialog.setMaximum(of);
        dialog.setValue(std::min(done, of - 1));
    });
    QObject::connect(&background, &render::Background::failed,
                     [&](render::Background::Ticket, const QString& why) { failure = why; });
    QObject::connect(&dialog, &QProgressDialog::canceled, &dialog, [&] {
        cancelled.request_stop();
        dialog.setLabelText(QCoreApplication::translate("RunWithProgress", "Stopping…"));
    });
    while (background.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    dialog.close();
    if (!failure.isEmpty()) QMessageBox::warning(parent, title, failure);
    return done_well;
}

}  // namespace roundwright::app
