#pragma once

#include <QIcon>

#include "core/reshape/forms.h"

class QPalette;

namespace roundwright::app {

inline constexpr int form_icon_size = 28;

/// The form as a small picture, in the colours of the text of a list, selected and not.
[[nodiscard]] QIcon form_icon(FormKind kind, const QPalette& palette);

}  // namespace roundwright::app
