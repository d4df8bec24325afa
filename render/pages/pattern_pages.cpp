#include "render/pages/pattern_pages.h"

#include <algorithm>
#include <map>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/drawable_text.h"
#include "render/pages/page_context.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/printable.h"

namespace roundwright::render {

/// Held once and never moved: blocks keep references to the study and the context.
struct PatternPages::Content {
    explicit Content(PatternStudy&& studied, const PatternOptions& options)
        : study(std::move(studied)), context{study, options, PageFrame{options.paper}} {}

    PatternStudy study;
    PageContext context;
    Blocks blocks;
    std::vector<PlacedBlock> placed;
    int pages = 0;
    std::vector<Bookmark> outline;
    std::vector<PageLink> links;
    std::map<QString, PlacedBlock> anchors;
};

namespace {

Blocks body_of(const PageContext& context) {
    Blocks blocks;
    add_introduction(blocks, context);
    add_materials(blocks, context);
    add_gauge(blocks, context);
    add_abbreviations(blocks, context);
    add_rounds(blocks, context);
    add_faces(blocks, context);
    add_making(blocks, context);
    add_safety(blocks, context);
    add_notes(blocks, context);
    add_charts(blocks, context);
    add_silhouettes(blocks, context);
    add_teaching_sheet(blocks, context);
    return blocks;
}

Blocks blocks_of(const PageContext& context) {
    Blocks body = body_of(context);
    if (!context.options.contents.cover) return body;
    Blocks blocks{cover_block(body, context)};
    for (Block& block : body) {
        if (block.shape.header >= 0) ++block.shape.header;
        blocks.push_back(std::move(block));
    }
    if (blocks.size() > 1) blocks[1].shape.starts_page = true;
    return blocks;
}

std::vector<PlacedBlock> lay_out_blocks(const Blocks& blocks, double height) {
    std::vector<BlockShape> shapes;
    for (const Block& block : blocks) shapes.push_back(block.shape);
    return lay_out(shapes, height);
}

void paint_foot(QPainter& painter, const PageFrame& frame, const QString& title, int page, int pages) {
    const double base = frame.page().height() - mm(12);
    painter.setFont(body_font(7.5));
    painter.setPen(page_colour::soft_ink);
    const QFontMetricsF metrics(painter.font());
    const QString number = Pattern::tr("%1 of %2").arg(page + 1).arg(pages);
    const double number_width = metrics.horizontalAdvance(number);
    painter.drawText(QPointF(frame.left() + frame.width() - number_width, base), number);
    const QString running =
        metrics.elidedText(drawable(title), Qt::ElideRight, frame.width() - number_width - mm(20));
    painter.drawText(QPointF(frame.left(), base), running);
}

}  // namespace

PatternPages::PatternPages(std::shared_ptr<const Content> content) : content_(std::move(content)) {}

std::optional<PatternPages> PatternPages::compose(const Toy& toy, const PatternOptions& options,
                                                  const Progress& progress) {
    std::optional<PatternStudy> study = study_pattern(toy, options, progress);
    if (!study) return std::nullopt;
    auto content = std::make_shared<Content>(std::move(*study), options);
    const PageFrame& frame = content->context.frame;
    content->blocks = blocks_of(content->context);
    content->placed = lay_out_blocks(content->blocks, frame.height());
    content->pages = page_count(content->placed);
    std::vector<bool> seen(content->blocks.size(), false);
    for (const PlacedBlock& placed : content->placed) {
        const Block& block = content->blocks[placed.block];
        if (seen[placed.block]) continue;
        seen[placed.block] = true;
        if (!block.anchor.isEmpty()) content->anchors.emplace(block.anchor, placed);
        if (!block.heading.isEmpty()) {
            content->outline.push_back({block.heading, block.level, placed.page, frame.top() + placed.top});
        }
    }
    for (const PlacedBlock& placed : content->placed) {
        for (const BlockLink& link : content->blocks[placed.block].links) {
            const auto target = content->anchors.find(link.anchor);
            if (target == content->anchors.end()) continue;
            content->links.push_back({placed.page,
                                      link.area.translated(frame.left(), frame.top() + placed.top),
                                      target->second.page, frame.top() + target->second.top});
        }
    }
    return PatternPages(content);
}

int PatternPages::count() const { return content_->pages; }
QSizeF PatternPages::size() const { return content_->context.frame.page(); }
const PatternOptions& PatternPages::options() const { return content_->context.options; }
const std::vector<Bookmark>& PatternPages::outline() const { return content_->outline; }
const std::vector<PageLink>& PatternPages::links() const { return content_->links; }

QString PatternPages::title() const {
    const QString title = printable_line(content_->study.toy.title);
    return title.isEmpty() ? Pattern::tr("Untitled toy") : title;
}

QString PatternPages::author() const { return printable_line(content_->study.toy.designer); }

void PatternPages::paint(QPainter& painter, int page) const {
    const PageFrame& frame = content_->context.frame;
    const PageNumbers numbers{[this](const QString& anchor) {
        const auto place = content_->anchors.find(anchor);
        return place == content_->anchors.end() ? 0 : place->second.page + 1;
    }};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const PlacedBlock& placed : content_->placed) {
        if (placed.page != page) continue;
        const Block& block = content_->blocks[placed.block];
        painter.save();
        const QPointF at(frame.left(), frame.top() + placed.top);
        if (block.paint) block.paint(painter, at, numbers);
        if (placed.repeated && block.paint_repeated) block.paint_repeated(painter, at);
        painter.restore();
    }
    paint_foot(painter, frame, title(), page, count());
    painter.restore();
}

}  // namespace roundwright::render
