#pragma once

#include <QString>
#include <QStringList>

#include "render/pages/text_export.h"

namespace roundwright::render {

/// Writes headings, paragraphs, lists and tables in one of the text forms.
class TextWriter {
  public:
    explicit TextWriter(TextForm form) : form_(form) {}

    void title(const QString& text);
    void section(const QString& text);
    void part(const QString& text);
    void paragraph(const QString& text);
    void items(const QStringList& texts);
    void steps(const QStringList& texts);
    /// Lines that belong together, such as rounds; `done` puts a box before each.
    void lines(const QStringList& texts);
    void table(const QStringList& head, const QList<QStringList>& rows);

    [[nodiscard]] QString text() const { return text_; }

  private:
    [[nodiscard]] bool plain() const { return form_ == TextForm::plain; }
    [[nodiscard]] QString set(const QString& text) const;
    void put(const QString& first, const QString& others, const QString& text);
    void plain_table(const QStringList& head, const QList<QStringList>& rows);
    void underlined(const QString& text, QChar line);

    TextForm form_;
    QString text_;
};

/// Words that read the same in CommonMark as they are typed: what it would take for markup is escaped.
[[nodiscard]] QString markdown_escaped(const QString& text);

}  // namespace roundwright::render
