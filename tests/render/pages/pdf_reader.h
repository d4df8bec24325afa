#pragma once

#include <memory>
#include <poppler-qt6.h>

#include <QByteArray>
#include <QDateTime>
#include <QTimeZone>

#include "core/toy/toy.h"
#include "render/pages/pdf/pdf_export.h"

namespace roundwright::render::testing {

inline QDateTime fixed_date() { return {QDate(2026, 3, 14), QTime(9, 26, 53), Qt::UTC}; }

inline QByteArray pdf_bytes(const Toy& toy, const PatternOptions& options = {}) {
    const auto pages = PatternPages::compose(toy, options);
    return pages ? pdf_of(*pages, fixed_date()).value_or(QByteArray()) : QByteArray();
}

/// A pattern as an independent reader sees it.
class PdfReader {
  public:
    explicit PdfReader(const QByteArray& bytes) : document_(Poppler::Document::loadFromData(bytes)) {}
    explicit PdfReader(const Toy& toy, const PatternOptions& options = {})
        : PdfReader(pdf_bytes(toy, options)) {}

    [[nodiscard]] bool opened() const { return document_ != nullptr && !document_->isLocked(); }
    [[nodiscard]] Poppler::Document& document() const { return *document_; }
    [[nodiscard]] int pages() const { return document_->numPages(); }
    [[nodiscard]] QString text(int page) const {
        return std::unique_ptr<Poppler::Page>(document_->page(page))->text(QRectF());
    }
    [[nodiscard]] QString text() const {
        QString all;
        for (int i = 0; i < pages(); ++i) all += text(i) + QLatin1Char('\n');
        return all;
    }
    /// All text, every run of white space one space: as one reads across line ends.
    [[nodiscard]] QString flowing_text() const { return text().simplified(); }

  private:
    std::unique_ptr<Poppler::Document> document_;
};

}  // namespace roundwright::render::testing
