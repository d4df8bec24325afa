#pragma once

#include <memory>

#include <QTemporaryDir>
#include <QTranslator>
#include <QWidget>

namespace roundwright::test {

/// A text without what stands between the marks of the translation (tests/app/translation/found_texts.h),
/// marks within marks included, and without tags of rich text and names of keys.
[[nodiscard]] QString outside_marks(const QString& text);

/// Whether a maker who reads no English meets English in a text: words outside the marks that the trade's
/// language of rounds does not use.
[[nodiscard]] bool says_english(const QString& text);

/// What a window and all within it say in English, a line each with the widget that says it: on labels,
/// buttons, fields, menus, headers and cells, in tips and for screen readers.
[[nodiscard]] QStringList english_texts(const QWidget& window);

/// The application in the marked language while this is there: the program's texts from the file, Qt's own
/// marked as they are asked for.
class MarkedLanguage {
  public:
    MarkedLanguage();
    ~MarkedLanguage();
    MarkedLanguage(const MarkedLanguage&) = delete;
    MarkedLanguage& operator=(const MarkedLanguage&) = delete;

  private:
    QTemporaryDir folder_;
    QTranslator program_;
    std::unique_ptr<QTranslator> qt_;
};

}  // namespace roundwright::test
