#pragma once

#include <QString>

namespace roundwright::render {

/// Text as it may stand in XML (1.0, 2.2 and 2.4): marks of its own escaped, control characters left out.
[[nodiscard]] QString xml_text(const QString& text);

}  // namespace roundwright::render
