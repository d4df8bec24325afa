#include "core/materials/working_time.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/table.h"
#include "render/pages/page_context.h"
#include "render/pages/sections/teaching_plan.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"
#include "render/wording/pattern/technique_words.h"

namespace roundwright::render {
namespace {

QString showing_words(Showing showing) {
    switch (showing) {
        case Showing::in_full:
            return Pattern::tr("Show in full");
        case Showing::begin:
            return Pattern::tr("Show one repeat");
        case Showing::skip:
            return Pattern::tr("Skip; say the count");
    }
    return {};
}

QString met_words(const TaughtLine& taught, Terms terms) {
    QStringList names;
    for (const Technique technique : taught.first_met) names += technique_words(technique, terms).name;
    if (taught.line.new_yarn && names.isEmpty()) names += Pattern::tr("next yarn");
    return names.join(QStringLiteral(", "));
}

QString rounds_words(const WrittenRounds& line) {
    if (line.rounds() == 1) return QString::number(line.first + 1);
    return QStringLiteral("%1–%2").arg(line.first + 1).arg(line.last + 1);
}

std::vector<TableColumn> columns(double width) {
    const double rounds = mm(17);
    const double count = mm(18);
    const double time = mm(22);
    const double rest = width - rounds - count - time;
    return {{Pattern::tr("ROUND"), rounds},
            {Pattern::tr("WHAT TO SHOW"), rest * 0.42},
            {Pattern::tr("NEW HERE"), rest * 0.58},
            {Pattern::tr("STITCHES"), count, Qt::AlignRight},
            {Pattern::tr("TIME SO FAR"), time, Qt::AlignRight}};
}

void add_piece(Blocks& blocks, const PageContext& context, const TaughtPiece& taught) {
    if (taught.lines.empty()) return;
    blocks.push_back(sub_heading(piece_name_words(context.toy(), taught.piece), context.frame.width()));
    Table table(blocks, columns(context.frame.width()));
    for (const TaughtLine& line : taught.lines) {
        ParagraphStyle style;
        if (line.showing == Showing::in_full) style.font = bold_font();
        if (line.showing == Showing::skip) style.colour = page_colour::soft_ink;
        table.add_row({table.text(0, rounds_words(line.line), style),
                       table.text(1, showing_words(line.showing), style),
                       table.text(2, met_words(line, context.options.terms)),
                       table.text(3, QStringLiteral("(%1)").arg(line.line.stitches)),
                       table.text(4, time_words(line.end_minutes))});
    }
    table.finish();
}

QString pace_words(const Making& making, Terms terms) {
    const double pace = making.stitches_per_minute.value_or(usual_stitches_per_minute.likely);
    const QString stitch = QString::fromUtf8(full_name(StitchKind::single_crochet, terms).data());
    const QString said =
        making.stitches_per_minute
            ? Pattern::tr("Times count crocheting only, at %1 stitches (%2) a minute. A class takes longer.")
            : Pattern::tr(
                  "Times count crocheting only, at a guess of %1 stitches (%2) a minute. A class takes "
                  "longer.");
    return said.arg(number_words(pace), stitch);
}

}  // namespace

void add_teaching_sheet(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.teaching_sheet) return;
    const double width = context.frame.width();
    blocks.push_back(section_heading(Pattern::tr("Teaching sheet"), QStringLiteral("teaching"), width));
    blocks.back().shape.starts_page = true;
    blocks.push_back(paragraph_block(Paragraph(
        Pattern::tr(
            "For teachers: where each technique first comes up, which rounds to show in full, and which to "
            "skip. %1")
            .arg(pace_words(context.toy().making, context.options.terms)),
        width)));
    for (const TaughtPiece& taught : teaching_plan(context.study, context.options.terms)) {
        add_piece(blocks, context, taught);
    }
}

}  // namespace roundwright::render
