#pragma once

#include <QTranslator>

namespace roundwright {

/// A source text said of so many: "%n stitch(es)" is "%n stitch" of one and "%n stitches" of none or more;
/// "(is/are)" holds both words where they differ. A text without such endings stays as it is.
[[nodiscard]] QString english_plural(QString text, int count);

/// English itself, as a translation of the source texts that count something (`tr("%n stitch(es)", nullptr,
/// n)`). Every application of this program has it from the start, below any other translation.
class EnglishPlurals : public QTranslator {
  public:
    using QTranslator::QTranslator;

    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int n) const override;
    [[nodiscard]] bool isEmpty() const override { return false; }
};

}  // namespace roundwright
