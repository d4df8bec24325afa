#pragma once

#include "render/pages/layout/block.h"
#include "render/pages/layout/page_style.h"
#include "render/pages/pattern_options.h"
#include "render/pages/pattern_study.h"

namespace roundwright::render {

/// What every section of the pattern is made from. The study outlives the blocks.
struct PageContext {
    const PatternStudy& study;
    PatternOptions options;
    PageFrame frame;

    [[nodiscard]] const Toy& toy() const { return study.toy; }
};

/// The cover fills a page; it lists the headings of the body.
[[nodiscard]] Block cover_block(const Blocks& body, const PageContext& context);
/// Whether all that the maker says of the toy finds room on the cover.
[[nodiscard]] bool introduction_fits_cover(const PageContext& context);

/// The sections, each adding its blocks in reading order; one with nothing to say adds none.
void add_introduction(Blocks& blocks, const PageContext& context);
void add_materials(Blocks& blocks, const PageContext& context);
void add_gauge(Blocks& blocks, const PageContext& context);
void add_abbreviations(Blocks& blocks, const PageContext& context);
void add_rounds(Blocks& blocks, const PageContext& context);
void add_charts(Blocks& blocks, const PageContext& context);
void add_faces(Blocks& blocks, const PageContext& context);
void add_assembly(Blocks& blocks, const PageContext& context);
void add_making(Blocks& blocks, const PageContext& context);
void add_silhouettes(Blocks& blocks, const PageContext& context);
void add_teaching_sheet(Blocks& blocks, const PageContext& context);
void add_safety(Blocks& blocks, const PageContext& context);
void add_notes(Blocks& blocks, const PageContext& context);

}  // namespace roundwright::render
