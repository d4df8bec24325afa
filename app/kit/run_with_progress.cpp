#include "app/kit/run_with_progress.h"

#include <algorithm>
#include <thread>

#include <QCoreApplication>
#include <QEventLoop>
#include <QProgressDialog>

namespace roundwright::app {

bool run_with_progress(QWidget* parent, const QString& title,
                       const std::function<bool(const render::Progress&)>& work) {
    QProgressDialog dialog(title, QCoreApplication::translate("RunWithProgress", "Cancel"), 0, 0, parent);
    dialog.setWindowModality(Qt::WindowModal);
    dialog.setMinimumDuration(400);
    QEventLoop loop;
    bool done_well = false;
    std::jthread thread([&](const std::stop_token& stop) {
        render::Progress progress;
        progress.stop = stop;
        progress.report = [&dialog](int done, int of) {
            QMetaObject::invokeMethod(&dialog, [&dialog, done, of] {
                dialog.setMaximum(of);
                dialog.setValue(std::min(done, of - 1));
            });
        };
        done_well = work(progress);
        QMetaObject::invokeMethod(&loop, &QEventLoop::quit, Qt::QueuedConnection);
    });
    QObject::connect(&dialog, &QProgressDialog::canceled, &loop, [&thread] { thread.request_stop(); });
    loop.exec();
    thread.join();
    return done_well;
}

}  // namespace roundwright::app
