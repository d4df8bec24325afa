#include "app/rounds/lie_glyph.h"

namespace roundwright::app {

QString lie_glyph(Lie lie) {
    switch (lie) {
        case Lie::lies_flat:
            return QStringLiteral("lie-flat");
        case Lie::cups:
            return QStringLiteral("lie-cups");
        case Lie::even:
            return QStringLiteral("lie-even");
        case Lie::closes:
            return QStringLiteral("lie-closes");
        case Lie::gathers:
            return QStringLiteral("lie-gathers");
        case Lie::ruffles:
            return QStringLiteral("lie-ruffles");
    }
    return {};
}

}  // namespace roundwright::app
