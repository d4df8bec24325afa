#include "tests/core/recorded/varied_pieces.h"

#include <cctype>
#include <stdexcept>

#include "core/checks/run_checks.h"

namespace roundwright::test {
namespace {

StitchKind kind_of(char sign) {
    switch (sign) {
        case 'h':
            return StitchKind::half_double_crochet;
        case 'd':
            return StitchKind::double_crochet;
        case 't':
            return StitchKind::treble_crochet;
        case 'b':
            return StitchKind::bobble;
        case 's':
            return StitchKind::slip_stitch;
        default:
            return StitchKind::single_crochet;
    }
}

int number_at(const std::string& text, std::size_t& at) {
    int number = 0;
    while (at < text.size() && std::isdigit(static_cast<unsigned char>(text[at])) != 0)
        number = 10 * number + (text[at++] - '0');
    return number;
}

/// One item of the short hand, and how often it is worked.
int read_item(const std::string& text, std::size_t& at, Round& round) {
    WorkedEvenly working;
    if (std::isdigit(static_cast<unsigned char>(text[at])) == 0) working.kind = kind_of(text[at++]);
    working.stitches = number_at(text, at);
    int times = 1;
    while (at < text.size() && text[at] != ' ') {
        const char sign = text[at++];
        if (sign == 'x') times = number_at(text, at);
        if (sign == ':') round.yarn = static_cast<std::size_t>(number_at(text, at));
        if (sign == '^') working.part = LoopPart::back;
        if (sign == 'v') working.part = LoopPart::front;
        if (sign == '/') working.spacing = Spacing::staggered;
        if (sign == '_') round.lies_flat = true;
    }
    round.working = working;
    return times;
}

struct Stuffed {
    double area_stretch;
};
constexpr Stuffed empty{unstuffed_stretch}, lightly{light_stuffing_stretch}, medium{medium_stuffing_stretch},
    firmly{firm_stuffing_stretch};

Toy toy_of(const Start& start, const std::string& rounds, End end, Stuffed stuffed, Joining joining,
           Gauge gauge) {
    Toy toy;
    toy.gauge = GivenGauge{gauge};
    toy.yarns = {{"grey", {0x9A, 0xA4, 0xAE}, YarnWeight::light, 200.0, false, 50.0, 4.5},
                 {"sand", {0xD8, 0xC0, 0x90}, YarnWeight::medium, std::nullopt, true, 100.0, std::nullopt},
                 {"ink", {0x20, 0x28, 0x40}, YarnWeight::fine, 350.0, false, std::nullopt, std::nullopt}};
    Piece& piece = toy.pieces.emplace_back();
    piece.name = "piece";
    piece.start = start;
    piece.rounds = rounds_of(rounds);
    piece.end = end;
    piece.joining = joining;
    piece.area_stretch = stuffed.area_stretch;
    return toy;
}

constexpr Gauge usual{5, 5, 0.2, 0.3, 0.4};
constexpr Gauge fine{3.2, 2.9, 0.1, 0.1, 1};
constexpr Gauge bulky{8.5, 9, 0.6, 0.5, 0};

struct Table {
    std::vector<VariedPiece> all;

    Piece& add(const std::string& name, const Start& start, const std::string& rounds,
               End end = End::left_open, Stuffed stuffed = medium, Joining joining = Joining::spiral,
               const Gauge& gauge = usual) {
        all.push_back({name, toy_of(start, rounds, end, stuffed, joining, gauge)});
        return all.back().toy.pieces[0];
    }
};

Feature feature(FeatureKind kind, int round, int apart, double width, double height) {
    Feature made;
    made.kind = kind;
    made.round = round;
    made.stitches_apart = apart;
    made.width_mm = width;
    made.height_mm = height;
    return made;
}

Feature single(FeatureKind kind, int round, double right, double width, double height) {
    Feature made = feature(kind, round, 0, width, height);
    made.pair = false;
    made.stitches_right = right;
    return made;
}

Feature line(int round, double right, int end_round, double end_right, bool pair) {
    Feature made = single(FeatureKind::stitched_line, round, right, 1.5, 1.5);
    made.pair = pair;
    if (pair) made.stitches_apart = 4;
    made.end_round = end_round;
    made.end_stitches_right = end_right;
    return made;
}

void add_balls_and_forms(Table& t) {
    const End closed = End::drawn_closed;
    t.add("smallest ball", MagicRing{}, "6 12 18 24x4 18 12 6", closed);
    t.add("ball, firm", MagicRing{}, "6 12 18 24 30x5 24 18 12 6", closed, firmly);
    t.add("ball, light, fine yarn", MagicRing{}, "6 12 18 24 30 36x6 30 24 18 12 6", closed, lightly,
          Joining::joined, fine);
    t.add("ball from a ring of eight, bulky", MagicRing{}, "8 16 24 32x4 24 16 8", closed, medium,
          Joining::spiral, bulky);
    t.add("egg", MagicRing{}, "6 12 18 24 30 36x4 33x2 30 27 24 21 18 12 6", closed);
    t.add("pear", MagicRing{}, "6 12 18 24 30 36x5 30 24x3 20 18x3 12 6", closed);
    t.add("gourd with a neck", MagicRing{}, "6 12 18 24 30x4 24 18 12x2 18 24x3 18 12 6", closed);
    t.add("cone, open", MagicRing{}, "4 6 8 10 12 14 16 18 20 22 24");
    t.add("cone closed flat", MagicRing{}, "3 6 9 12 15 18 21 24 27 18^ 9", closed);
    t.add("cylinder on a flat base", MagicRing{}, "6_ 12_ 18_ 24_ 24^x8");
    t.add("bowl", MagicRing{}, "6 12 18 24 30 33 36x2", End::left_open, empty);
    t.add("disc", MagicRing{}, "6 12 18 24 30 36 42", End::left_open, empty);
    t.add("disc of staggered increases", MagicRing{}, "6_ 12/_ 18/_ 24/_ 30/_ 36/_ 42/_ 48/_", End::left_open,
          empty);
    t.add("half doubles lie flat with eight", MagicRing{}, "h8_ h16_ h24_ h32_", End::left_open, empty);
    t.add("double crochets lie flat with twelve", MagicRing{}, "d12 d24 d36", End::left_open, empty);
}

void add_limp_and_flat(Table& t) {
    t.add("ear, limp", MagicRing{}, "4 6 8 10 12 14x3 12 10", End::left_open, empty);
    t.add("ear sewn straight", MagicRing{}, "6 9 12 15 18x4 14 12", End::sewn_straight, empty);
    t.add("two discs", MagicRing{}, "6 12 18 24 30 24 18 12 6", End::drawn_closed, empty);
    t.add("two discs with a low wall", MagicRing{}, "6 12 18 24 30x2 24 18 12 6", End::drawn_closed, empty);
    t.add("tube, limp", OpenTube{16}, "16x9", End::left_open, empty);
    t.add("tube sewn straight", OpenTube{14}, "14x6", End::sewn_straight, empty);
    t.add("ball, not stuffed", MagicRing{}, "6 12 18 24x5 18 12 6", End::drawn_closed, empty);
    t.add("tube, one round of chains", OpenTube{20}, "20", End::left_open, empty);
    t.add("cushion sewn straight", MagicRing{}, "6 12 18 24 30x6", End::sewn_straight, medium);
    t.add("arm sewn over an odd number", MagicRing{}, "5 10 15x6 13 11", End::sewn_straight, lightly);
    t.add("limp cone of growth one half", MagicRing{},
          "3 6 9 12 15 18 21 24 27 30 30 30 30 30 30 30 30 30 30", End::left_open, empty);
}

void add_starts_and_stitches(Table& t) {
    t.add("ring of chains", ChainRing{5}, "10 16 22x4 16 10");
    t.add("leg from a chain", OpenTube{18}, "18x4 21x2 24x3 18 12 6", End::drawn_closed);
    t.add("oval, not stuffed", OvalChain{7}, "16 22 28 34", End::left_open, empty);
    t.add("oval sole with sides", OvalChain{6}, "14_ 20_ 26_ 26^x3 22", End::left_open, medium);
    t.add("oval that lies limp", OvalChain{5}, "12 12x8", End::left_open, empty);
    t.add("oval that narrows", OvalChain{8}, "18 24 24 18 12", End::drawn_closed);
    t.add("flat in rows", OpenTube{15}, "15x8", End::left_open, empty, Joining::rows);
    t.add("rows sewn straight", OpenTube{11}, "11x4 9 7", End::sewn_straight, empty, Joining::rows);
    t.add("tall stitches", MagicRing{}, "h8 d16 t24 d24 h24 24 h16 8", End::drawn_closed);
    t.add("bobbles and bars", MagicRing{}, "6 12 18 b18 18^ 18v b18:1 24 s24", End::left_open, firmly);
    t.add("joined rounds with stripes", MagicRing{}, "6:1 12:1 18 24:2 24 24:2 24:1 18:1 12 6",
          End::drawn_closed, medium, Joining::joined);
    t.add("written rounds", MagicRing{},
          "6 [2 sc in each st around] [(sc, inc) x 6] [sc in each st around] 18 [sc 3, ch 2, skip 2, sc in "
          "next 13] "
          "18 [(sc, dec) x 6] 6",
          End::drawn_closed);
    t.add("partial round", MagicRing{}, "6 12 18 24 [sc in next 9] 24 [hdc in next 6, dc in next 4] 24",
          End::left_open);
    t.add("eights and corners", MagicRing{}, "8 16 24 32 40 48 56 64 72 72", End::left_open, empty);
}

void add_faults(Table& t) {
    t.add("ruffled rim", MagicRing{}, "6 12 18 24 36 56 84", End::left_open, empty);
    t.add("ruffles though it should lie flat", MagicRing{}, "8_ 16_ 24_ 32_ 40_", End::left_open, empty);
    t.add("cups though it should lie flat", MagicRing{}, "4_ 8_ 12_ 16_ 20_", End::left_open, empty);
    t.add("gathers", MagicRing{}, "6 12 18 24 30 36x4 18 9", End::drawn_closed);
    t.add("too many increases", MagicRing{}, "6 14 20 50 50", End::left_open);
    t.add("too many decreases", MagicRing{}, "6 12 18 24x3 10 5", End::drawn_closed);
    t.add("words that do not fit", MagicRing{}, "6 [2 sc in each of next 7 sts] 12 [sc in next 10] 12",
          End::left_open);
    t.add("words that cannot be read", MagicRing{}, "6 12 [work with joy] 12", End::left_open);
    t.add("gaps", MagicRing{}, "6 9 12 24 12 9 6", End::drawn_closed, Stuffed{0.3});
    t.add("shelf and foot", MagicRing{}, "6 12 18 18x3 36 36x3 18 18", End::left_open, firmly);
    t.add("double in one round", MagicRing{}, "6 12 18 24 48 48x4 24 24x2 12 6", End::drawn_closed);
    t.add("no gauge said", MagicRing{}, "6 12 18x3 12 6", End::drawn_closed);
    t.all.back().toy.gauge = {};
    t.all.back().toy.hook_mm = 2.75;
    t.add("no rounds", MagicRing{}, "");
    t.add("one round", MagicRing{}, "6");
}

void add_faces(Table& t) {
    const std::string head = "6 12 18 24 30 36 42x8 36 30 24 18 12 6";
    Piece& seal = t.add("head with a face", MagicRing{}, head, End::drawn_closed);
    seal.features = {feature(FeatureKind::safety_eye, 9, 8, 8, 8),
                     single(FeatureKind::safety_nose, 7, 0, 10, 7), line(6, 0, 4, 2.5, false),
                     line(8, 0, 7, 3, true), feature(FeatureKind::embroidered_eye, 12, 14, 4, 6)};
    seal.features[0].lids = true;
    seal.features[0].washer_mm = 11;
    Piece& turned = t.add("head worked from the top, looking aside", MagicRing{}, head, End::drawn_closed,
                          lightly, Joining::spiral, fine);
    turned.starts_at_top = true;
    turned.face_degrees = 75;
    turned.features = {feature(FeatureKind::felt_disc, 8, 9, 9, 12),
                       single(FeatureKind::safety_nose, 10, 1.5, 8, 6), line(12, -2, 12, 2, false)};
    Piece& flat =
        t.add("flat fish with eyes", MagicRing{}, "4 8 12 16 20 24x4 20 16 12", End::sewn_straight, empty);
    flat.features = {feature(FeatureKind::felt_disc, 4, 6, 5, 5), line(6, -3, 6, 3, false)};
    Piece& late = t.add("washer too late, rocking, touching", MagicRing{}, "6 12x4 6", End::drawn_closed);
    late.features = {feature(FeatureKind::safety_eye, 2, 2, 9, 9),
                     single(FeatureKind::safety_nose, 2, 0.5, 8, 5),
                     feature(FeatureKind::felt_disc, 9, 4, 5, 5)};
    Piece& crowded = t.add("eye too large for its place", MagicRing{}, "6 12 18x8 12 6", End::drawn_closed);
    crowded.features = {feature(FeatureKind::safety_eye, 5, 5, 24, 24),
                        single(FeatureKind::felt_disc, 1, 0, 30, 30)};
    Piece& open = t.add("snout left open with a nose", OpenTube{24}, "24x3 20 16 12 8", End::drawn_closed);
    open.features = {single(FeatureKind::safety_nose, 4, 0, 12, 9),
                     feature(FeatureKind::safety_eye, 1, 10, 6, 6)};
    Piece& body = t.add("body with notes, made twice", MagicRing{}, "6 12 18 24 30x6 24 18", End::left_open);
    body.make = 2;
    body.rounds[3].note = "change colour";
    body.worked = {5, 7, {40, 80, 0, 130, 170}};
}

/// What comes up seldom, but comes up.
void add_rare_ones(Table& t) {
    const End closed = End::drawn_closed;
    t.add("bag that doubles, sewn straight", MagicRing{}, "6 12 24 48 48x5 40 30", End::sewn_straight, empty);
    t.add("bag that doubles, drawn closed", MagicRing{}, "6 12 24 48 48x10 24 12 6", closed, empty);
    t.add("two discs that double", MagicRing{}, "6 12 24 48 24 12 6", closed, empty);
    t.add("two discs around a chain", OvalChain{6}, "14 20 26 20 14", closed, empty);
    t.add("disc with a hole, doubled", ChainRing{12}, "18 24 30 30 24 18", closed, empty);
    t.add("ring of chains, limp", ChainRing{8}, "12 12x8 10", End::left_open, empty);
    t.add("cuff that widens downwards", OpenTube{30}, "27 24 21 18 15", End::left_open, empty);
    t.add("pulled shut over thirty", MagicRing{}, "6 12 18 24 30", closed, firmly);
    t.add("short turns", MagicRing{},
          "6 12 18 24 24 [sc in next 9 sts, leave rem sts unworked] [starting in 5th st, sc in next 7 sts, "
          "leave rem "
          "sts unworked] 24 24");
    t.add("lace", MagicRing{},
          "6 12 [(sc, ch 1, skip next st) x 6] [sc in each st around] [ch 3, sc in next 12 sts]");
    t.add("a yarn that is not there", MagicRing{}, "6:7 12:1 18:9 18");
    t.add("rows that grow", OpenTube{9}, "11 13 h15 15:1 13", End::left_open, empty, Joining::rows);
    t.add("rows stuffed and drawn closed", OpenTube{18}, "18x4 12 6", closed, medium, Joining::rows);
    t.add("seam after growing to an odd number", MagicRing{}, "6 12 18 21", End::sewn_straight, empty);
    t.add("seam in words", MagicRing{}, "6 12 18 [(sc in next 5 sts, inc) x 3] [sc in next 20 sts, inc]",
          End::sewn_straight, medium);
    t.add("seam on a stuffed disc", MagicRing{}, "6 12 18 24 30 36", End::sewn_straight, lightly);
    t.add("seven rounds of words too long", MagicRing{},
          "6 12 [sc in next 13 sts] [sc in next 14 sts] [sc in next 15 sts] [sc in next 16 sts] [sc in next "
          "17 sts] "
          "[sc in next 18 sts] [sc in next 19 sts]");
    t.add("words with a count that differs", MagicRing{}, "6 12 [(sc, inc) x 6 (20)] [(sc 2, inc) x 5] 24");
    t.add("pleats that lie limp", OpenTube{20}, "40 20 40 20 30 15 30 60 30 20 20", End::left_open, empty);
    t.add("pleats in tall rounds", OpenTube{12}, "t24 12 t24 t12 t24 t48 t24 t12", End::sewn_straight, empty);
    t.add("twenty in the ring", MagicRing{}, "20 40 60", End::left_open, empty);
    t.add("hyperbolic", MagicRing{}, "12 24 48 96", End::left_open, empty);
    t.add("tall ruffle on a small ring", MagicRing{}, "t30 t60", End::left_open, empty);
    t.add("three, two and one", MagicRing{}, "3 2 1 2 3 6 12 9");
    t.add("two into the ring", MagicRing{}, "2 4 8:1 16 16", closed, firmly, Joining::joined);
    t.add("brushed all over", MagicRing{}, "6:1 12:1 18:1 24:1 b24:1 24:1 18:1 12:1 6:1", closed);
    t.add("three corners in words", MagicRing{},
          "6 [(3 sc in next st, sc in next st) x 3] [(sc in next st, 3 sc in next st, sc in next 2 sts) x 3] "
          "[(sc in next 2 sts, 3 sc in next st, sc in next 3 sts) x 3] "
          "[(sc in next 3 sts, 3 sc in next st, sc in next 4 sts) x 3]",
          End::left_open, empty);
    t.add("a repeat that does not come out", MagicRing{},
          "6 12 18 20 [*sc in next 5 sts, inc; rep from * around] 24");
    t.add("necks one above the other", MagicRing{},
          "6 12 18 24 30x3 20 16 16 20 30x3 22 14 14 22 30x3 24 18 12 6", closed, firmly);
    t.add("tall and slack", MagicRing{}, "d6 d12 t18 d24 h24 18 9", closed, lightly);
    Piece& cape =
        t.add("cape with a ruffle, from the top", OpenTube{24}, "24 30 36 60 90", End::left_open, empty);
    cape.starts_at_top = true;
    Piece& ear = t.add("ear from the top, limp", MagicRing{}, "4 8 12 16 16x6 12", End::left_open, empty);
    ear.starts_at_top = true;
    ear.face_degrees = 30;
    ear.features = {feature(FeatureKind::felt_disc, 4, 3, 4, 5)};
    Piece& oval = t.add("oval from the top", OvalChain{7}, "16 22 28 28x4 22 16", closed, lightly);
    oval.starts_at_top = true;
    Piece& late = t.add("washer that comes too late", MagicRing{}, "6 12 18x3 12 6", closed);
    late.features = {feature(FeatureKind::safety_eye, 5, 4, 14, 14),
                     single(FeatureKind::safety_nose, 5, -3, 6, 6)};
    t.add("gauge found on this piece", MagicRing{}, "6 12 18 24x4 18 12 6", closed);
    std::get<GivenGauge>(t.all.back().toy.gauge).found_on = "piece";
}

}  // namespace

std::vector<Round> rounds_of(const std::string& shorthand) {
    std::vector<Round> rounds;
    for (std::size_t at = 0; at < shorthand.size();) {
        if (shorthand[at] == ' ') {
            ++at;
            continue;
        }
        Round round;
        int times = 1;
        if (shorthand[at] == '[') {
            const std::size_t end = shorthand.find(']', at);
            round.working = AsWritten{shorthand.substr(at + 1, end - at - 1)};
            at = end + 1;
        } else {
            times = read_item(shorthand, at, round);
        }
        rounds.insert(rounds.end(), static_cast<std::size_t>(times), round);
    }
    return rounds;
}

const std::vector<VariedPiece>& varied_pieces() {
    static const std::vector<VariedPiece> all = [] {
        Table table;
        add_balls_and_forms(table);
        add_limp_and_flat(table);
        add_starts_and_stitches(table);
        add_faults(table);
        add_faces(table);
        add_rare_ones(table);
        return table.all;
    }();
    return all;
}

VariedStudy studied(const Toy& toy) {
    VariedStudy made;
    made.study = study_piece(toy, 0);
    const PieceStudy& study = made.study;
    made.graph = study.graph();
    made.gauge = study.gauge;
    made.gauge_known = study.gauge_known;
    made.problem = study.problem();
    made.shape = study.revolved();
    made.size = study.size();
    made.lies = study.lies();
    made.checks = study.checks();
    return made;
}

std::vector<Check> checks_with_all_cures(const Toy& toy, const VariedStudy& study) {
    const PieceStudy& made = study.study;
    return run_checks({toy.pieces[0], 0, made.graph(), made.gauge, made.gauge_known, made.problem(), made.measures(),
                       made.lies(), made.shape->signs, made.revolved()});
}

StitchSurface surface_of(const Toy& toy, const VariedStudy& study, const RevolveOptions& options) {
    return study_surface(toy, 0, study.study, options);
}

const std::vector<VariedStudy>& varied_studies() {
    static const std::vector<VariedStudy> all = [] {
        std::vector<VariedStudy> studies;
        for (const VariedPiece& varied : varied_pieces()) studies.push_back(studied(varied.toy));
        return studies;
    }();
    return all;
}

const VariedPiece& varied_piece(const std::string& name) {
    for (const VariedPiece& varied : varied_pieces())
        if (varied.name == name) return varied;
    throw std::out_of_range("no varied piece is called " + name);
}

}  // namespace roundwright::test
