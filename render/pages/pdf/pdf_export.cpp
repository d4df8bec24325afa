#include "render/pages/pdf/pdf_export.h"

#include <exception>

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>

#include "render/pages/pdf/pdf_finish.h"
#include "render/wording/pattern/pattern_words.h"

namespace roundwright::render {
namespace {

void set_up(QPdfWriter& writer, const PatternPages& pages) {
    writer.setResolution(units_per_inch);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    const bool a4 = pages.options().paper == Paper::a4;
    writer.setPageLayout(QPageLayout(QPageSize(a4 ? QPageSize::A4 : QPageSize::Letter), QPageLayout::Portrait,
                                     QMarginsF(0, 0, 0, 0)));
}

bool paint_pages(QPdfWriter& writer, const PatternPages& pages, const Progress& progress) {
    QPainter painter(&writer);
    if (!painter.isActive()) return false;
    for (int page = 0; page < pages.count(); ++page) {
        if (progress.stop.stop_requested()) return false;
        if (page > 0) writer.newPage();
        pages.paint(painter, page);
        if (progress.report) progress.report(page + 1, pages.count());
    }
    return true;
}

PdfProperties properties_of(const PatternPages& pages, const std::optional<QDateTime>& date) {
    const bool us = english_behind(pages.options().terms) == Terms::us;
    return {pages.title(),
            pages.author(),
            QStringLiteral("Roundwright"),
            us ? QStringLiteral("en-US") : QStringLiteral("en-GB"),
            date.value_or(QDateTime::currentDateTimeUtc()),
            pages.outline(),
            pages.links()};
}

}  // namespace

std::optional<QByteArray> pdf_of(const PatternPages& pages, const std::optional<QDateTime>& date,
                                 QString* error, const Progress& progress) {
    QByteArray drawn;
    QBuffer buffer(&drawn);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        set_up(writer, pages);
        if (!paint_pages(writer, pages, progress)) return std::nullopt;
    }
    try {
        return finish_pdf(drawn, properties_of(pages, date));
    } catch (const std::exception& failure) {
        if (error != nullptr)
            *error = Pattern::tr("The PDF could not be made: %1").arg(QString::fromUtf8(failure.what()));
        return std::nullopt;
    }
}

std::optional<QByteArray> pattern_pdf(const Toy& toy, const PdfOptions& options, QString* error,
                                      const Progress& progress) {
    if (error != nullptr) error->clear();
    const std::optional<PatternPages> pages = PatternPages::compose(toy, options, progress);
    return pages ? pdf_of(*pages, options.date, error, progress) : std::nullopt;
}

}  // namespace roundwright::render
