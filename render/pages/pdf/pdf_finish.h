#pragma once

#include <string>
#include <vector>

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include "render/pages/pattern_pages.h"

namespace roundwright::render {

/// What a PDF writer without outline, links and author leaves to add.
struct PdfProperties {
    QString title;
    QString author;
    QString creator;
    QString language;  ///< BCP 47: "en-US"
    QDateTime date;
    std::vector<Bookmark> outline;
    std::vector<PageLink> links;
};

/// Reads a PDF back, adds its properties, and writes it anew, every object in the order it is met, so that
/// the same pages give the same bytes. Throws std::exception if the file cannot be read.
[[nodiscard]] QByteArray finish_pdf(const QByteArray& pdf, const PdfProperties& properties);

}  // namespace roundwright::render
