#pragma once

#include <QString>

#include "core/language/words/terms.h"
#include "render/chart/chart_symbols.h"

namespace roundwright::render {

/// What a symbol of a chart stands for, as its key says it: "sc, single crochet".
[[nodiscard]] QString chart_symbol_words(ChartSymbol symbol, Terms terms);

}  // namespace roundwright::render
