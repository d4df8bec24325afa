#pragma once

#include <vector>

#include <QString>
#include <QStringList>

namespace roundwright::test {

/// A text to translate, as lupdate finds it in the sources.
struct FoundText {
    QString context;
    QString source;
    QString comment;
    bool counted = false;  ///< it has a form for each number of things
};

struct FoundTexts {
    std::vector<FoundText> texts;
    QStringList warnings;  ///< what lupdate could not make out, a line each
};

/// Runs lupdate over the program's sources, as a translator would.
[[nodiscard]] FoundTexts find_texts();

/// The mark that the translation below sets around every text: "«Round %1»".
inline constexpr QChar opening_mark{u'\u00AB'};
inline constexpr QChar closing_mark{u'\u00BB'};

/// Writes FOLDER/roundwright_de.qm, a translation that is English with every text between marks.
void write_marked_translation(const QString& folder);

}  // namespace roundwright::test
