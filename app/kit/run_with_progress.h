#pragma once

#include <functional>

#include <QString>

#include "render/pages/pattern_pages.h"

class QWidget;

namespace roundwright::app {

/// Runs long work on a thread while the window stays alive; after a moment its progress shows, and can be
/// cancelled: then the work is asked to stop, and the window stays alive until it has. Gives what the work
/// gives; false where it threw, which is told.
[[nodiscard]] bool run_with_progress(QWidget* parent, const QString& title,
                                     const std::function<bool(const render::Progress&)>& work);

}  // namespace roundwright::app
