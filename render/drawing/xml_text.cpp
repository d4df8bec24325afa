#include "render/drawing/xml_text.h"

namespace roundwright::render {

QString xml_text(const QString& text) {
    QString found = text.toHtmlEscaped();
    found.removeIf([](QChar letter) { return letter.unicode() < 0x20 || letter.unicode() >= 0xFFFE; });
    return found;
}

}  // namespace roundwright::render
