#include "render/pages/chart_words.h"

#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/technique_words.h"

namespace roundwright::render {
namespace {

Technique technique_of(ChartSymbol symbol) {
    switch (symbol) {
        case ChartSymbol::magic_ring:
            return Technique::magic_ring;
        case ChartSymbol::chain:
            return Technique::chain;
        case ChartSymbol::slip_stitch:
            return Technique::slip_stitch;
        case ChartSymbol::single_crochet:
            return Technique::single_crochet;
        case ChartSymbol::half_double_crochet:
            return Technique::half_double_crochet;
        case ChartSymbol::double_crochet:
            return Technique::double_crochet;
        case ChartSymbol::treble_crochet:
            return Technique::treble_crochet;
        case ChartSymbol::bobble:
            return Technique::bobble;
        case ChartSymbol::increase:
            return Technique::increase;
        case ChartSymbol::decrease:
            return Technique::decrease;
        case ChartSymbol::front_loop:
            return Technique::front_loop;
        case ChartSymbol::back_loop:
            return Technique::back_loop;
    }
    return Technique::single_crochet;
}

}  // namespace

QString chart_symbol_words(ChartSymbol symbol, Terms terms) {
    const TechniqueWords told = technique_words(technique_of(symbol), terms);
    return told.short_name.isEmpty() ? told.name : Pattern::tr("%1, %2").arg(told.short_name, told.name);
}

}  // namespace roundwright::render
