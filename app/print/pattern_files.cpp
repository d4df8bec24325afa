#include "app/print/pattern_files.h"

#include <QCoreApplication>
#include <QMessageBox>

#include "app/kit/run_with_progress.h"
#include "app/kit/save_bytes.h"
#include "app/kit/save_path.h"
#include "render/pages/pdf/pdf_export.h"
#include "render/pages/text_export.h"

namespace roundwright::app {

namespace {

struct PatternFilesText {
    Q_DECLARE_TR_FUNCTIONS(PatternFiles)
};

struct FormWords {
    QString title;
    QString filter;
    QString suffix;
};

FormWords words_of(PatternForm form) {
    switch (form) {
        case PatternForm::pdf:
            return {PatternFilesText::tr("Save the pattern as PDF"), PatternFilesText::tr("PDF (*.pdf)"),
                    QStringLiteral("pdf")};
        case PatternForm::plain_text:
            return {PatternFilesText::tr("Save the pattern as text"),
                    PatternFilesText::tr("Plain text (*.txt)"), QStringLiteral("txt")};
        case PatternForm::markdown:
            return {PatternFilesText::tr("Save the pattern as Markdown"),
                    PatternFilesText::tr("Markdown (*.md)"), QStringLiteral("md")};
        case PatternForm::rounds_table:
            return {PatternFilesText::tr("Save the rounds as a table"),
                    PatternFilesText::tr("Comma-separated values (*.csv)"), QStringLiteral("csv")};
    }
    return {};
}

bool write_bytes(const QString& path, const QByteArray& bytes, QString& message) {
    const SavedBytes saved = save_bytes(path, bytes);
    message = saved.problem.value_or(saved.remarks);
    return !saved.problem;
}

bool write_text(const QString& path, const QString& text, QString& message) {
    return write_bytes(path, text.toUtf8(), message);
}

}  // namespace

bool write_pattern(PatternForm form, const Toy& toy, const render::PatternOptions& options,
                   const QString& path, QString& message, const render::Progress& progress) {
    switch (form) {
        case PatternForm::pdf: {
            render::PdfOptions pdf;
            static_cast<render::PatternOptions&>(pdf) = options;
            const auto bytes = render::pattern_pdf(toy, pdf, &message, progress);
            return bytes && write_bytes(path, *bytes, message);
        }
        case PatternForm::plain_text:
            return write_text(path, render::pattern_text(toy, options, render::TextForm::plain), message);
        case PatternForm::markdown:
            return write_text(path, render::pattern_text(toy, options, render::TextForm::markdown), message);
        case PatternForm::rounds_table:
            return write_text(path, render::rounds_csv(toy, options), message);
    }
    return false;
}

bool save_pattern(QWidget* parent, PatternForm form, DocumentSession& session,
                  const render::PatternOptions& options, const QString& suggested_name) {
    const FormWords words = words_of(form);
    const QString path = ask_save_path(parent, words.title, suggested_name + QLatin1Char('.') + words.suffix,
                                       words.filter, words.suffix);
    if (path.isEmpty()) return false;
    QString message;
    const bool written = run_with_progress(
        parent, PatternFilesText::tr("Writing the pattern…"), [&](const render::Progress& progress) {
            return write_pattern(form, session.toy(), options, path, message, progress);
        });
    if (written) session.remark(path, message);
    if (!written && !message.isEmpty()) {
        QMessageBox::warning(parent, words.title,
                             PatternFilesText::tr("%1 could not be written: %2").arg(path, message));
    }
    return written;
}

}  // namespace roundwright::app
