#pragma once

#include <cstdint>
#include <thread>

#include <QObject>

#include "core/toy/toy.h"
#include "render/pages/pattern_pages.h"

namespace roundwright::app {

/// Composes a pattern's pages on a thread of its own. A new call stops the one before; only the last one's
/// pages come.
class PatternComposer : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    void compose(Toy toy, render::PatternOptions options);
    [[nodiscard]] bool busy() const { return busy_; }

  Q_SIGNALS:
    /// In the thread this object lives in.
    void composed(const roundwright::render::PatternPages& pages);
    void progressed(int done, int of);

  private:
    void deliver(std::uint64_t revision, const render::PatternPages& pages);

    std::uint64_t revision_ = 0;
    bool busy_ = false;
    std::jthread thread_;  // last: it uses all of the above
};

}  // namespace roundwright::app
