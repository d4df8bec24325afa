#include "tests/core/document/random_toy.h"

#include <array>
#include <cstdint>

namespace roundwright::test {

namespace {

int whole(std::mt19937& random, int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
}

double number(std::mt19937& random, double least, double most) {
    return std::uniform_real_distribution<double>(least, most)(random);
}

bool flag(std::mt19937& random) { return whole(random, 0, 1) == 1; }

template <class Choice>
Choice choice(std::mt19937& random, int count) {
    return static_cast<Choice>(whole(random, 0, count - 1));
}

std::string text(std::mt19937& random) {
    static const std::array<std::string, 10> bits{
        "seal", " ", "\"", "\\", "\n", "\t", "\u00e9", "\u87f9", "\U0001f9ad", std::string("\0", 1)};
    std::string result;
    for (int i = whole(random, 0, 6); i > 0; --i)
        result += bits[static_cast<std::size_t>(whole(random, 0, 9))];
    return result;
}

SwatchGauge swatch(std::mt19937& random) {
    return {number(random, 0, 50), number(random, 0, 200), number(random, 0, 50), number(random, 0, 200),
            flag(random),          number(random, 0, 3),   number(random, 0, 10)};
}

CircleGauge circle(std::mt19937& random) {
    return {whole(random, 0, 9),          whole(random, 0, 9),  number(random, 0, 90),
            choice<CircleLie>(random, 3), number(random, 0, 3), number(random, 0, 10)};
}

GivenGauge given(std::mt19937& random) {
    return {{number(random, 0, 10), number(random, 0, 10), number(random, 0, 1), number(random, 0, 1),
             flag(random) ? number(random, -1, 1) : 0},
            text(random)};
}

FinishedPieceGauge finished_piece(std::mt19937& random) {
    FinishedPieceGauge finished{text(random), {}, {}, number(random, 0, 10)};
    for (int i = whole(random, 0, 3); i > 0; --i) {
        Measured measured{choice<MeasuredOf>(random, 4), number(random, 0, 300), number(random, 0, 5), 0};
        if (measured.of == MeasuredOf::circumference_of_round) measured.round = whole(random, 0, 60);
        finished.measured.push_back(measured);
    }
    for (int i = whole(random, 0, 2); i > 0; --i)
        finished.lines.push_back(
            {number(random, -1, 1), number(random, -1, 1), number(random, -5, 5), number(random, 0.01, 1)});
    return finished;
}

GaugeMeasurement measurement(std::mt19937& random) {
    GaugeMeasurement measurement{given(random), text(random), text(random), flag(random)};
    const int kind = whole(random, 0, 3);
    if (kind == 0) measurement.what = swatch(random);
    if (kind == 1) measurement.what = circle(random);
    if (kind == 2) measurement.what = finished_piece(random);
    return measurement;
}

SeveralGauge several(std::mt19937& random) {
    SeveralGauge several;
    for (int i = whole(random, 0, 4); i > 0; --i) several.measurements.push_back(measurement(random));
    return several;
}

GaugeSource gauge(std::mt19937& random) {
    switch (whole(random, 0, 5)) {
        case 0:
            return swatch(random);
        case 1:
            return circle(random);
        case 2:
            return EstimatedGauge{choice<YarnWeight>(random, 8)};
        case 3:
            return given(random);
        case 4:
            return several(random);
        default:
            return std::monostate{};
    }
}

std::optional<double> amount(std::mt19937& random) {
    return flag(random) ? std::optional<double>(number(random, 0, 900)) : std::nullopt;
}

Yarn yarn(std::mt19937& random) {
    const auto channel = [&random] { return static_cast<std::uint8_t>(whole(random, 0, 255)); };
    Yarn yarn;
    yarn.name = text(random);
    yarn.colour = {channel(), channel(), channel()};
    yarn.weight = choice<YarnWeight>(random, 8);
    yarn.brushed = flag(random);
    yarn.metres_per_100_g = amount(random);
    yarn.ball_grams = amount(random);
    yarn.ball_price = amount(random);
    return yarn;
}

WorkedEvenly worked_evenly(std::mt19937& random) {
    return {whole(random, 1, 200), choice<StitchKind>(random, 8), choice<LoopPart>(random, 3),
            choice<Spacing>(random, 2)};
}

Round round(std::mt19937& random, std::size_t yarns) {
    Round round;
    if (flag(random))
        round.working = worked_evenly(random);
    else
        round.working = AsWritten{text(random)};
    if (yarns > 0) round.yarn = static_cast<std::size_t>(whole(random, 0, static_cast<int>(yarns) - 1));
    round.lies_flat = flag(random);
    round.note = text(random);
    return round;
}

Start start(std::mt19937& random) {
    const int chains = whole(random, 1, 60);
    switch (whole(random, 0, 4)) {
        case 4:
            return WorkedOn{chains, whole(random, 0, 9)};
        case 0:
            return MagicRing{};
        case 1:
            return ChainRing{chains};
        case 2:
            return OpenTube{chains};
        default:
            return OvalChain{chains};
    }
}

Feature feature(std::mt19937& random) {
    const auto channel = [&random] { return static_cast<std::uint8_t>(whole(random, 0, 255)); };
    Feature feature;
    feature.kind = choice<FeatureKind>(random, 5);
    feature.name = text(random);
    feature.pair = flag(random);
    feature.round = whole(random, 0, 40);
    if (feature.pair)
        feature.stitches_apart = whole(random, 0, 40);
    else
        feature.stitches_right = number(random, -20, 20);
    feature.width_mm = number(random, 1, 30);
    feature.height_mm = number(random, 1, 30);
    feature.washer_mm = number(random, 0, 30);
    feature.colour = {channel(), channel(), channel()};
    feature.lids = flag(random);
    if (feature.kind == FeatureKind::stitched_line) {
        feature.end_round = whole(random, 0, 40);
        feature.end_stitches_right = number(random, -20, 20);
    }
    return feature;
}

Piece piece(std::mt19937& random, std::size_t yarns) {
    Piece piece;
    piece.name = text(random);
    piece.start = start(random);
    for (int i = whole(random, 0, 20); i > 0; --i) piece.rounds.push_back(round(random, yarns));
    piece.end = choice<End>(random, 3);
    piece.joining = choice<Joining>(random, 3);
    piece.area_stretch = number(random, 0, 0.5);
    if (flag(random)) piece.stuffed_rounds = RoundSpan{whole(random, 0, 9), whole(random, 0, 20)};
    piece.weight_grams = flag(random) ? number(random, 0, 200) : 0;
    piece.starts_at_top = flag(random);
    piece.make = whole(random, 1, 9);
    if (flag(random))
        piece.worked = {whole(random, 0, 20), whole(random, 0, 99), {0, number(random, 0, 900)}};
    for (int i = whole(random, 0, 4); i > 0; --i) piece.features.push_back(feature(random));
    piece.face_degrees = number(random, -180, 180);
    return piece;
}

PieceCopy piece_copy(std::mt19937& random) {
    return {PieceId{static_cast<std::uint32_t>(whole(random, 1, 9))}, whole(random, 0, 8)};
}

Join join(std::mt19937& random) {
    Join made;
    made.piece = piece_copy(random);
    made.onto = piece_copy(random);
    made.pair = flag(random);
    made.end = choice<JoinedEnd>(random, 2);
    made.seam = choice<Seam>(random, 6);
    made.at = {whole(random, -1, 20), number(random, -20, 20), flag(random)};
    made.turn_degrees = number(random, -180, 180);
    made.lean_degrees = number(random, -90, 90);
    made.lean_right_degrees = number(random, -90, 90);
    made.sink_mm = number(random, -5, 20);
    return made;
}

PatternText pattern_text(std::mt19937& random) {
    PatternText written;
    if (flag(random)) written.level = choice<Level>(random, 4);
    for (std::string* part : {&written.introduction, &written.notions, &written.assembly, &written.finishing,
                              &written.copyright}) {
        *part = text(random);
    }
    for (int i = whole(random, 0, 3); i > 0; --i) {
        PieceThen& then = written.written_for.emplace_back(
            PieceThen{PieceId{static_cast<std::uint32_t>(whole(random, 1, 9))}, {}});
        for (int rounds = whole(random, 0, 8); rounds > 0; --rounds)
            then.stitches.push_back(whole(random, 1, 60));
    }
    for (int i = whole(random, 0, 2); i > 0; --i) written.assembly_then.push_back(join(random));
    return written;
}

Making making(std::mt19937& random) {
    Making making;
    for (std::optional<double>* part :
         {&making.stitches_per_minute, &making.yarn_per_ten_stitches_mm, &making.stuffing_density_kg_per_m3,
          &making.stuffing_density_error_kg_per_m3, &making.hourly_rate, &making.stuffing_price_per_kg,
          &making.finishing_minutes, &making.spare_yarn_percent, &making.price, &making.wholesale_price,
          &making.fees_percent}) {
        *part = amount(random);
    }
    making.currency = text(random);
    making.other_cost = number(random, 0, 99);
    return making;
}

/// Does not compile once a field is added to a type of the document: random_toy must then set it too.
void every_field_is_set(const Toy& a, const Yarn& b, const Piece& c, const Round& d, const WorkedEvenly& e) {
    [[maybe_unused]] const auto& [a1, a2, a3, a4, a5, a6, a7, a8, a9, a10, a11, a12, a13] = a;
    [[maybe_unused]] const auto& [b1, b2, b3, b4, b5, b6, b7, b8] = b;
    [[maybe_unused]] const auto& [c1, c2, c3, c4, c5, c6, c7, c8, c9, c10, c11, c12, c13, c14] = c;
    [[maybe_unused]] const auto& [d1, d2, d3, d4, d5] = d;
    [[maybe_unused]] const auto& [e1, e2, e3, e4] = e;
    [[maybe_unused]] const auto& [f1, f2, f3, f4, f5, f6, f7, f8] = a.text;
    [[maybe_unused]] const auto& [g1, g2, g3, g4, g5, g6, g7, g8, g9, g10, g11, g12, g13] = a.making;
    [[maybe_unused]] const auto& [h1, h2, h3] = c.worked;
    [[maybe_unused]] const auto& [j1, j2, j3, j4, j5] = GaugeMeasurement{};
    [[maybe_unused]] const auto& [k1, k2, k3, k4] = FinishedPieceGauge{};
    [[maybe_unused]] const auto& [l1, l2, l3, l4] = GaugeLine{};
    [[maybe_unused]] const auto& [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10, n11] = Join{};
    [[maybe_unused]] const auto& [m1, m2, m3, m4] = Measured{};
    [[maybe_unused]] const auto& [i1, i2, i3, i4, i5, i6, i7, i8, i9, i10, i11, i12, i13, i14] = Feature{};
}

}  // namespace

Toy random_toy(std::mt19937& random) {
    Toy toy;
    toy.title = text(random);
    toy.designer = text(random);
    toy.notes = text(random);
    toy.private_notes = text(random);
    toy.hook_mm = number(random, 0.5, 50);
    toy.gauge = gauge(random);
    for (int i = whole(random, 0, 4); i > 0; --i) toy.yarns.push_back(yarn(random));
    for (int i = whole(random, 0, 5); i > 0; --i) toy.pieces.push_back(piece(random, toy.yarns.size()));
    for (int i = whole(random, 0, 5); i > 0; --i) toy.joins.push_back(join(random));
    toy.stance = choice<Stance>(random, 3);
    toy.text = pattern_text(random);
    toy.making = making(random);
    every_field_is_set(toy, Yarn{}, Piece{}, Round{}, WorkedEvenly{});
    return toy;
}

namespace {

/// Members that no version of the format has had so far.
std::string unknown_members(std::mt19937& random) {
    static const std::array<std::string, 6> values{"true",
                                                   "null",
                                                   "12345678901234567890123",
                                                   R"([1,{"a":[]},2.50])",
                                                   R"({"high":[1e999,"a b"],"low":{}})",
                                                   R"("\u87f9 \" , : {")"};
    static const std::array<std::string, 5> keys{R"("tides")", R"("glow")", R"("a/b~c")", R"("\u0000")",
                                                 R"("two words")"};
    std::string members;
    for (const std::string& key : keys) {
        if (flag(random)) continue;
        if (!members.empty()) members += ',';
        members += key + ':' + values[static_cast<std::size_t>(whole(random, 0, 5))];
    }
    return members;
}

/// What an object and those inside it keep.
KeptKeys kept(std::mt19937& random, std::initializer_list<std::string_view> inside = {}) {
    if (whole(random, 0, 2) == 0) return {};
    std::string members = unknown_members(random);
    for (const std::string_view key : inside) {
        const std::string of_it = unknown_members(random);
        if (of_it.empty() || flag(random)) continue;
        if (!members.empty()) members += ',';
        members += '"' + std::string(key) + "\":{" + of_it + '}';
    }
    return members.empty() ? KeptKeys() : KeptKeys('{' + members + '}');
}

}  // namespace

Toy with_unknown_keys(Toy toy, std::mt19937& random) {
    const bool no_gauge = std::holds_alternative<std::monostate>(toy.gauge);
    toy.kept = no_gauge ? kept(random, {"text", "making"}) : kept(random, {"gauge", "text", "making"});
    if (auto* several_gauge = std::get_if<SeveralGauge>(&toy.gauge))
        for (GaugeMeasurement& one : several_gauge->measurements) one.kept = kept(random);
    for (Yarn& yarn : toy.yarns) yarn.kept = kept(random);
    for (Piece& piece : toy.pieces) {
        piece.kept = kept(random, {"start", "worked"});
        for (Round& round : piece.rounds) round.kept = kept(random);
        for (Feature& feature : piece.features) feature.kept = kept(random);
    }
    for (Join& join : toy.joins) join.kept = kept(random);
    for (Join& join : toy.text.assembly_then) join.kept = kept(random);
    for (PieceThen& then : toy.text.written_for) then.kept = kept(random);
    return toy;
}

}  // namespace roundwright::test
