#include "app/print/pattern_composer.h"

#include <utility>

namespace roundwright::app {

void PatternComposer::compose(Toy toy, render::PatternOptions options) {
    const std::uint64_t revision = ++revision_;
    busy_ = true;
    // Assigning stops and joins the thread before: composing looks at its stop token every few milliseconds.
    thread_ = std::jthread([this, revision, toy = std::move(toy), options](const std::stop_token& stop) {
        render::Progress progress;
        progress.stop = stop;
        progress.report = [this](int done, int of) {
            QMetaObject::invokeMethod(
                this, [this, done, of] { Q_EMIT progressed(done, of); }, Qt::QueuedConnection);
        };
        const auto pages = render::PatternPages::compose(toy, options, progress);
        if (!pages) return;
        QMetaObject::invokeMethod(
            this, [this, revision, pages = *pages] { deliver(revision, pages); }, Qt::QueuedConnection);
    });
}

void PatternComposer::deliver(std::uint64_t revision, const render::PatternPages& pages) {
    if (revision != revision_) return;
    busy_ = false;
    Q_EMIT composed(pages);
}

}  // namespace roundwright::app
