#pragma once

#include <QStringList>

#include "render/wording/plurals.h"

namespace roundwright {

/// The window in the spelling of a maker in the United States: "color", "millimeters". The pages of a pattern
/// are left alone: they are spelt by the pattern's terms, whoever prints them, and so are names that go into
/// a toy.
class UsSpelling : public EnglishPlurals {
  public:
    using EnglishPlurals::EnglishPlurals;

    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int n) const override;
};

/// Whether a system with these languages, the first preferred ("en-US", "en-GB", ...), is to be spelt so.
[[nodiscard]] bool wants_us_spelling(const QStringList& languages);

}  // namespace roundwright
