#pragma once

#include <QStringList>

namespace roundwright {

/// The file with the program's translation for a maker who reads these languages, the first preferred
/// ("de-AT", "de", "en-GB"): FOLDER/roundwright_de_AT.qm or roundwright_de.qm. Empty if English comes first,
/// in which the program is written, or if there is none. The folders are searched in their order.
[[nodiscard]] QString translation_file(const QStringList& languages, const QStringList& folders);

/// Makes the application speak the maker's language, with Qt's own texts, if there is a translation: from the
/// folder that ROUNDWRIGHT_TRANSLATIONS names, so that one can be tried out, or from the program itself.
void speak_language_of_system();

}  // namespace roundwright
