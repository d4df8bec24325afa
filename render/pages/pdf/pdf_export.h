#pragma once

#include <optional>

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include "core/toy/toy.h"
#include "render/pages/pattern_options.h"
#include "render/pages/pattern_pages.h"

namespace roundwright::render {

struct PdfOptions : PatternOptions {
    std::optional<QDateTime>
        date;  ///< of the file; absent: now. With a date, the same toy gives the same bytes
};

/// The pattern as a PDF 1.4 file that keeps to PDF/A-1b: fonts embedded, text as text, drawings as vectors,
/// with outline, links, title, author and language. Nothing if stopped, or if it cannot be made (`error` says
/// why, in the program's language).
[[nodiscard]] std::optional<QByteArray> pdf_of(const PatternPages& pages,
                                               const std::optional<QDateTime>& date, QString* error = nullptr,
                                               const Progress& progress = {});

/// Composes the pattern and makes such a file of it. Nothing with `error` if it cannot be made, or with an
/// empty `error` if stopped.
[[nodiscard]] std::optional<QByteArray> pattern_pdf(const Toy& toy, const PdfOptions& options,
                                                    QString* error = nullptr, const Progress& progress = {});

}  // namespace roundwright::render
