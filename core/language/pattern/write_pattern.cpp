#include "core/language/pattern/write_pattern.h"

#include <algorithm>

#include "core/language/pattern/find_terms.h"
#include "core/language/pattern/headings.h"
#include "core/language/pattern/likeness.h"
#include "core/language/pattern/pattern_lines.h"
#include "core/language/pattern/pattern_notes.h"
#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/written_rounds.h"
#include "core/language/round/write.h"
#include "core/language/words/in_language.h"
#include "core/language/words/lexer.h"
#include "core/language/words/one_line.h"
#include "core/language/words/phrasebook.h"
#include "core/toy/stuffed_part.h"

namespace roundwright {
namespace {

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string line = on_one_line(text.substr(0, end));
        if (!line.empty()) lines.push_back(line);
        text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
    }
    return lines;
}

bool plain_heading(const std::string& name, Terms terms) {
    LexedText text(name);
    read_as_english(text, terms);
    const auto& tokens = text.lines().front().tokens;
    const auto read = heading_of(tokens);
    return read && read->section == Section::none && !read->says_make && read->name == name &&
           !is_terms_line(tokens) && !yarn_line(tokens) && !hook_line(tokens) && !likeness_of(tokens) &&
           !looks_like_work(tokens, Terms::us) && !looks_like_work(tokens, Terms::uk);
}

// Words that would not be taken for a heading are marked as one.
std::string heading(const Piece& piece, Terms terms) {
    const std::string name = on_one_line(piece.name);
    const std::string make =
        piece.make > 1 ? " (" + said_in("make " + std::to_string(piece.make), terms) + ")" : "";
    return (plain_heading(name, terms) ? name : said_in("Piece:", terms) + " " + name) + make;
}

std::string marked_note(const std::string& note, Terms terms) { return said_in("Note:", terms) + " " + note; }

bool can_be_written(const Feature& feature, int rounds) {
    return feature.kind == FeatureKind::safety_eye && feature.pair && feature.round >= 0 &&
           feature.round + 1 < rounds;
}

class PieceWriter {
  public:
    PieceWriter(const Piece& piece, Terms terms, bool names_its_yarn)
        : piece_(piece), terms_(terms), graph_(piece_graph(piece)), yarn_(names_its_yarn ? -1 : 0) {}

    std::string write() {
        line(heading(piece_, terms_));
        line(joining_words(piece_.joining, terms_));
        if (piece_.starts_at_top) line_in_terms(top_down_words());
        line(start_words(piece_, terms_));
        hear_notes();
        for (const WrittenRounds& rounds : written_rounds(piece_, graph_, terms_)) {
            write(rounds);
            say_eyes(rounds);
        }
        say_the_rest();
        return std::move(text_);
    }

  private:
    // What the maker's notes have said already is not said again.
    void hear_notes() {
        for (const Round& round : piece_.rounds)
            for (const std::string& note : lines_of(round.note)) take_in(note);
    }

    void say_the_rest() {
        const auto part = stuffed_part(piece_);
        if (said_.area_stretch != piece_.area_stretch || said_.stuffed_rounds != part)
            line_in_terms(stuffing_words(piece_.area_stretch, part));
        if (piece_.weight_grams > 0 && said_.weight_grams != piece_.weight_grams)
            line_in_terms(pellets_words(piece_.weight_grams));
        if (said_.end != piece_.end) line_in_terms(end_words(piece_.end));
        if (said_.joining.value_or(piece_.joining) == piece_.joining) return;
        const bool spiral = piece_.joining == Joining::spiral;
        line(spiral ? said_in(spiral_words, terms_) : joining_words(piece_.joining, terms_));
    }

    // Eyes are named when the round above them has been worked.
    void say_eyes(const WrittenRounds& rounds) {
        for (const Feature& feature : piece_.features) {
            const bool here = feature.round + 1 >= rounds.first && feature.round + 1 <= rounds.last;
            const bool known = std::find(eyes_said_.begin(), eyes_said_.end(), feature) != eyes_said_.end();
            if (here && !known && can_be_written(feature, static_cast<int>(piece_.rounds.size())))
                line_in_terms(eyes_words(feature));
        }
    }

    void take_in(const std::string& note) {
        LexedText text(note);
        read_as_english(text, terms_);
        for (const NoteMeaning& meaning : meanings_of_notes(text.lines().front().tokens)) {
            const bool how_firmly = meaning.area_stretch && !(meaning.any_stuffing && said_.area_stretch);
            if (how_firmly) said_.area_stretch = meaning.area_stretch;
            if (meaning.stuffed_rounds) said_.stuffed_rounds = meaning.stuffed_rounds;
            if (meaning.weight_grams) said_.weight_grams = meaning.weight_grams;
            if (meaning.end) said_.end = meaning.end;
            if (meaning.joining) said_.joining = meaning.joining;
            if (meaning.eyes) eyes_said_.push_back(*meaning.eyes);
        }
    }

    void line(const std::string& words) {
        if (!words.empty()) text_ += words + "\n";
    }

    void line_in_terms(const std::string& english) { line(said_in(english, terms_)); }

    // The yarn is named where it changes; a round that changes yarn itself names them all.
    void write(const WrittenRounds& rounds) {
        const bool named = rounds.several_yarns || rounds.yarn == yarn_;
        const std::string yarn = named ? "" : said_in("with " + yarn_letter(rounds.yarn), terms_) + ", ";
        line(written_line(rounds, piece_.joining, yarn, terms_));
        yarn_ = rounds.several_yarns ? -1 : rounds.yarn;
        for (const std::string& note : lines_of(rounds.note)) line(marked_note(note, terms_));
    }

    const Piece& piece_;
    Terms terms_;
    PieceGraph graph_;
    std::string text_;
    NoteMeaning said_;
    std::vector<Feature> eyes_said_;
    int yarn_;  ///< on the hook; -1: none that was named
};

// Smallest number of stitches after which the round repeats itself, feet aside; the whole round when it does
// not.
bool repeats(const GraphRound& round) {
    const auto same = [&](std::size_t a, std::size_t b) {
        return round.stitches[a].stitch == round.stitches[b].stitch;
    };
    const std::size_t n = round.stitches.size();
    std::vector<std::size_t> fail(n, 0);
    for (std::size_t i = 1, k = 0; i < n; ++i) {
        while (k > 0 && !same(i, k)) k = fail[k - 1];
        if (same(i, k)) ++k;
        fail[i] = k;
    }
    const std::size_t period = n == 0 ? 0 : n - fail[n - 1];
    return n > 0 && period < n && n % period == 0;
}

}  // namespace

std::string write_piece(const Piece& piece, Terms terms, bool names_its_yarn) {
    return PieceWriter(piece, terms, names_its_yarn).write();
}

namespace {

/// Whether a note between two rounds, with this line behind it, is read as a note and changes nothing else.
bool reads_as_note(const std::string& note, const std::string& line_behind, Terms terms) {
    const std::string sc(abbreviation(StitchKind::single_crochet, terms));
    const ReadPattern read = read_pattern("Rnd 1: 6 " + sc + " in magic ring (6)\n" + note + "\n" +
                                              line_behind + "Rnd 2: " + sc + " in each st around (6)\n",
                                          {terms, {}});
    if (!read.diagnostics.empty() || read.pieces.size() != 1) return false;
    const Piece& piece = read.pieces[0];
    return piece.rounds.size() == 2 && piece.rounds[0].note == note && piece.rounds[1].note.empty() &&
           piece.start == Start(MagicRing{}) && piece.joining == Joining::spiral && piece.make == 1;
}

}  // namespace

std::string note_line(const std::string& note, Terms terms) {
    // A number at its beginning may be that of the round to come.
    const bool begins_with_number = !note.empty() && note.front() >= '0' && note.front() <= '9';
    const bool plain = !begins_with_number && reads_as_note(note, "", terms) &&
                       reads_as_note(note, "Change to yarn B, Night ink.\n", terms);
    return plain ? note : marked_note(note, terms);
}

std::string terms_line(Terms terms) {
    if (!is_english(terms)) return std::string(language_of(terms).names_itself);
    return terms == Terms::us ? "US terms" : "UK terms";
}

std::string write_toy(const Toy& toy, Terms terms) {
    std::string text;
    const auto line = [&](const std::string& words) { text += words + "\n"; };
    if (!toy.title.empty())
        line((plain_heading(on_one_line(toy.title), terms) ? "" : said_in("Title:", terms) + " ") +
             on_one_line(toy.title));
    if (!toy.designer.empty()) line(said_in("Designed by", terms) + " " + on_one_line(toy.designer));
    line(terms_line(terms));
    if (toy.hook_mm > 0) line(said_in(hook_words(toy.hook_mm), terms));
    for (std::size_t i = 0; i < toy.yarns.size() && i < 1'000; ++i) {
        const std::string letter = yarn_letter(static_cast<int>(i));
        if (!toy.yarns[i].name.empty())
            line(said_in(letter.size() == 1 ? "Yarn " + letter : letter, terms) + ": " +
                 on_one_line(toy.yarns[i].name));
    }
    for (const std::string& note : lines_of(toy.notes)) line(marked_note(note, terms));
    for (const Piece& piece : toy.pieces) text += "\n" + write_piece(piece, terms, toy.yarns.size() > 1);
    return text;
}

std::vector<int> rounds_not_repeatable(const StitchGraph& graph) {
    std::vector<int> rounds;
    for (std::size_t i = 0; i < graph.rounds.size(); ++i) {
        const GraphRound& round = graph.rounds[i];
        const bool whole = round.loops_below > 0 && round.first_below == 0 && round.stitches.size() > 1;
        if (whole && !repeats(round)) rounds.push_back(static_cast<int>(i));
    }
    return rounds;
}

}  // namespace roundwright
