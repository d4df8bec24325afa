#include "render/pages/text_export.h"

#include <algorithm>

#include "core/language/pattern/write_pattern.h"
#include "core/language/pattern/written_rounds.h"
#include "core/language/round/write.h"
#include "render/pages/text_writer.h"
#include "render/pages/used_stitches.h"
#include "render/wording/pattern/assembly_words.h"
#include "render/wording/pattern/feature_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/round_remarks.h"
#include "render/wording/pattern/section_words.h"
#include "render/wording/pattern/technique_words.h"
#include "render/wording/printable.h"

namespace roundwright::render {
namespace {

QString letter_of(std::size_t yarn) { return QString::fromStdString(yarn_letter(static_cast<int>(yarn))); }

QString amount_line(const Yarn& yarn, const YarnUse& use, LengthUnit units) {
    return Pattern::tr("%1, %2").arg(
        yarn_length_range_words(use, units),
        yarn_amount_words(yarn, use, units).replace(QLatin1Char('\n'), QStringLiteral(", ")));
}

/// One pattern being written.
class PatternText {
  public:
    PatternText(const PatternStudy& study, const PatternOptions& options, TextForm form)
        : study_(study), toy_(study.toy), options_(options), out_(form) {}

    QString write() {
        head();
        const PatternContents& contents = options_.contents;
        if (contents.materials) materials();
        if (contents.materials) gauge();
        if (contents.abbreviations) abbreviations();
        if (contents.rounds) rounds();
        if (contents.making)
            made(Pattern::tr("Assembly"), assembly_words(toy_, study_.sewing, options_.terms));
        if (contents.making) made(Pattern::tr("Finishing"), finishing_words(toy_, options_.terms));
        told(Pattern::tr("Safety"), safety_words(toy_));
        if (contents.notes) told(Pattern::tr("Notes"), paragraphs_of(toy_.notes));
        for (const QString& line : paragraphs_of(toy_.text.copyright)) out_.paragraph(line);
        return out_.text();
    }

  private:
    void head() {
        const QString title = printable_line(toy_.title);
        out_.title(title.isEmpty() ? Pattern::tr("Untitled toy") : title);
        const QString designer = printable_line(toy_.designer);
        if (!designer.isEmpty()) out_.paragraph(Pattern::tr("by %1").arg(designer));
        for (const QString& line : paragraphs_of(toy_.text.introduction)) out_.paragraph(line);
        const QString whole = whole_size_words(study_, options_.units);
        if (!whole.isEmpty()) out_.paragraph(Pattern::tr("Finished size: %1").arg(whole));
        if (toy_.text.level) out_.paragraph(Pattern::tr("Level: %1").arg(level_words(*toy_.text.level)));
    }

    void materials() {
        out_.section(Pattern::tr("Materials"));
        QStringList lines;
        for (std::size_t i = 0; i < toy_.yarns.size(); ++i) {
            const YarnUse& use = study_.materials.yarns[i];
            if (use.metres.high <= 0) continue;
            lines += Pattern::tr("%1: %2, %3, %4")
                         .arg(letter_of(i), yarn_name_words(toy_.yarns[i]),
                              yarn_weight_words(toy_.yarns[i].weight, options_.terms),
                              amount_line(toy_.yarns[i], use, options_.units));
        }
        lines += Pattern::tr("Hook: %1").arg(hook_with_names(toy_.hook_mm));
        const QString stuffing = stuffing_words(study_, options_.terms, options_.units);
        if (!stuffing.isEmpty())
            lines += by_terms(options_.terms, Pattern::tr("Stuffing: %1"), Pattern::tr("Toy filling: %1"))
                         .arg(stuffing);
        const QString pellets = pellets_words(study_, options_.units);
        if (!pellets.isEmpty()) lines += Pattern::tr("Pellets: %1").arg(pellets);
        lines += bought_feature_words(toy_);
        lines += notions_words(toy_);
        out_.items(lines);
        if (!toy_.yarns.empty()) out_.paragraph(yarn_estimate_words(toy_));
    }

    void gauge() {
        out_.section(gauge_heading_words(options_.terms));
        out_.paragraph(gauge_words(study_, options_.terms, options_.units));
        out_.paragraph(gauge_source_words(study_, options_.terms));
        out_.paragraph(gauge_circle_words(study_, options_.terms, options_.units));
        out_.paragraph(size_range_words(study_, options_.terms));
        if (!study_.at_gauges.empty()) gauge_table();
    }

    void gauge_table() {
        out_.part(other_gauges_heading_words(options_.terms));
        QStringList head{Pattern::tr("Stitches in %1").arg(swatch_words(options_.units))};
        for (std::size_t i = 0; i < toy_.pieces.size(); ++i) head += piece_name_words(toy_, i);
        QList<QStringList> rows;
        for (const SizeAtGauge& at : study_.at_gauges) {
            QStringList row{number_words(at.stitches)};
            for (const auto& size : at.pieces) {
                row += size ? piece_size_words(*size, options_.units) : QString();
            }
            rows += row;
        }
        out_.table(head, rows);
    }

    void abbreviations() {
        out_.section(Pattern::tr("Abbreviations and stitches"));
        out_.paragraph(terms_words(options_.terms) + QLatin1Char(' ') + reading_words(options_.terms));
        QList<QStringList> rows;
        for (const TechniqueWords& told : place_words(options_.terms))
            rows += QStringList{told.short_name, told.name, told.working};
        std::vector<const PieceGraph*> graphs;
        for (const PieceStudy& study : study_.pieces) graphs.push_back(&study.graph());
        for (const UsedTechnique& used : used_techniques(toy_, graphs)) {
            const TechniqueWords told = technique_words(used.technique, options_.terms);
            rows += QStringList{told.short_name, told.name, told.working};
        }
        out_.table({Pattern::tr("Abbr."), Pattern::tr("Meaning"), Pattern::tr("How to work it")}, rows);
    }

    void rounds() {
        if (toy_.pieces.empty()) return;
        out_.section(Pattern::tr("Rounds"));
        out_.paragraph(working_order_words(toy_));
        for (const std::size_t i : working_order(toy_)) piece(i);
    }

    void piece(std::size_t i) {
        const Piece& piece = toy_.pieces[i];
        const PieceStudy& study = study_.pieces[i];
        out_.part(piece_name_words(toy_, i));
        out_.paragraph(piece_fact_words(study_, i, options_.terms, options_.units).join(QLatin1Char(' ')));
        QStringList lines;
        const QString start = start_line_words(toy_, i, options_.terms);
        if (!start.isEmpty()) lines += start;
        const std::vector<RoundRemark> remarks = round_remarks(piece, study, options_.terms);
        for (const WrittenRounds& line :
             written_rounds(piece, study.graph(), options_.terms, remarked_rounds(remarks))) {
            lines += told_rounds(piece, line);
            for (const RoundRemark& due : remarks) {
                if (due.after == line.last) lines += due.text;
            }
        }
        lines += end_words(toy_, i);
        out_.lines(lines);
    }

    [[nodiscard]] QStringList told_rounds(const Piece& piece, const WrittenRounds& rounds) const {
        QStringList lines;
        const QString change = change_words(toy_, rounds);
        if (!change.isEmpty()) lines += change;
        lines += QString::fromStdString(written_line(rounds, piece.joining, "", options_.terms));
        for (const QString& note : paragraphs_of(rounds.note))
            lines += QString::fromStdString(note_line(note.toStdString(), options_.terms));
        if (rounds.does_not_fit) lines += does_not_fit_words();
        return lines;
    }

    void made(const QString& heading, const QStringList& steps) {
        if (steps.isEmpty()) return;
        out_.section(heading);
        out_.steps(steps);
    }

    void told(const QString& heading, const QStringList& paragraphs) {
        if (paragraphs.isEmpty()) return;
        out_.section(heading);
        for (const QString& paragraph : paragraphs) out_.paragraph(paragraph);
    }

    const PatternStudy& study_;
    const Toy& toy_;
    const PatternOptions& options_;
    TextWriter out_;
};

QString csv_field(const std::string& utf8) {
    QString text = QString::fromStdString(utf8);
    static const QString formula = QStringLiteral("=+-@\t\r");
    if (!text.isEmpty() && formula.contains(text[0])) text.prepend(QLatin1Char('\''));
    text.replace(QLatin1Char('"'), QStringLiteral("\"\""));
    return QLatin1Char('"') + text + QLatin1Char('"');
}

QString csv_round(const Toy& toy, const Piece& piece, const PieceGraph& graph, int i, Terms terms) {
    const auto index = static_cast<std::size_t>(i);
    const Round& round = piece.rounds[index];
    const int stitches = graph.graph.rounds[index].loops_left;
    const int below = i > 0 ? graph.graph.rounds[index - 1].loops_left : graph.graph.foundation_loops;
    const std::string yarn = round.yarn < toy.yarns.size() ? toy.yarns[round.yarn].name : std::string();
    return QStringList{csv_field(piece.name),
                       QString::number(i + 1),
                       csv_field(round_words(graph.graph, i, terms, piece)),
                       QString::number(stitches),
                       QString::number(stitches - below),
                       csv_field(yarn_letter(static_cast<int>(round.yarn))),
                       csv_field(yarn),
                       csv_field(round.note)}
               .join(QLatin1Char(',')) +
           QStringLiteral("\r\n");
}

}  // namespace

QString pattern_text(const PatternStudy& study, const PatternOptions& options, TextForm form) {
    return PatternText(study, options, form).write();
}

QString pattern_text(const Toy& toy, const PatternOptions& options, TextForm form) {
    const std::optional<PatternStudy> study = study_pattern(toy, options);
    return study ? pattern_text(*study, options, form) : QString();
}

QString rounds_csv(const Toy& toy, const PatternOptions& options) {
    QString text = QStringLiteral("piece,round,instruction,stitches,change,yarn,yarn_name,note\r\n");
    for (const Piece& piece : toy.pieces) {
        const PieceGraph graph = piece_graph(piece);
        const int rounds = static_cast<int>(std::min(graph.graph.rounds.size(), piece.rounds.size()));
        for (int i = 0; i < rounds; ++i) text += csv_round(toy, piece, graph, i, options.terms);
    }
    return text;
}

}  // namespace roundwright::render
