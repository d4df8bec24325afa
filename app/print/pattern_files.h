#pragma once

#include <QString>

#include "app/session/document_session.h"
#include "core/toy/toy.h"
#include "render/pages/pattern_options.h"

class QWidget;

namespace roundwright::app {

/// The forms a pattern is written in besides the printed one.
enum class PatternForm { pdf, plain_text, markdown, rounds_table };

/// Asks for a file and writes the pattern there, with progress that can be cancelled. Says what went wrong.
/// True if a file was written.
bool save_pattern(QWidget* parent, PatternForm form, DocumentSession& session,
                  const render::PatternOptions& options, const QString& suggested_name);

/// The same to a file already named. The message says why it was not written, and is empty if it was
/// cancelled; of a file that was written it says what is to be known of it, mostly nothing.
[[nodiscard]] bool write_pattern(PatternForm form, const Toy& toy, const render::PatternOptions& options,
                                 const QString& path, QString& message,
                                 const render::Progress& progress = {});

}  // namespace roundwright::app
