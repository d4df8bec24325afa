#include "tests/torture/random_toys/random_toy.h"

#include <algorithm>
#include <string>

#include "core/gauge/hook.h"
#include "tests/torture/random_toys/dice.h"

namespace roundwright::torture {
namespace {

/// How a toy is drawn: most as toys are, a few as far out as a file may hold.
enum class Temper { ordinary, careless, extreme, huge };

Temper temper(Dice& dice) {
    const double drawn = dice.share();
    if (drawn < 0.6) return Temper::ordinary;
    if (drawn < 0.9) return Temper::careless;
    return drawn < 0.999 ? Temper::extreme : Temper::huge;
}

Start start(Dice& dice, Temper temper) {
    const double drawn = dice.share();
    const int chains =
        temper == Temper::extreme ? static_cast<int>(dice.magnitude(1, 300)) : dice.whole(2, 40);
    if (drawn < 0.6) return MagicRing{};
    if (drawn < 0.7) return ChainRing{temper == Temper::ordinary ? dice.whole(3, 10) : chains};
    if (drawn < 0.85) return OpenTube{chains};
    return OvalChain{temper == Temper::ordinary ? dice.whole(2, 16) : chains};
}

int first_count(Dice& dice, const Start& begun) {
    if (const auto* ring = std::get_if<ChainRing>(&begun)) return ring->chains;
    if (const auto* tube = std::get_if<OpenTube>(&begun)) return tube->chains;
    if (const auto* oval = std::get_if<OvalChain>(&begun)) return 2 * oval->chains + 2;
    return dice.one_of({6, 6, 6, 5, 7, 8, 4, 3});
}

int rounds_wanted(Dice& dice, Temper temper) {
    switch (temper) {
        case Temper::ordinary:
        case Temper::careless:
            return static_cast<int>(dice.magnitude(1, 60));
        case Temper::extreme:
            return static_cast<int>(dice.magnitude(1, 250));
        case Temper::huge:
            break;
    }
    return static_cast<int>(dice.magnitude(1, 2'000));
}

/// The next count in one of the ways makers work.
int next_count(Dice& dice, int below, int each_round, int way) {
    switch (way) {
        case 0:
            return below;
        case 1:
            return below + each_round;
        case 2:
            return below - each_round;
        case 3:
            return below + dice.whole(-6, 6);
        case 4:
            return below + dice.whole(-below / 2, below);
        default:
            return dice.whole(1, 3 * below);  // what cannot always be worked
    }
}

std::vector<int> counts(Dice& dice, Temper temper, int first) {
    const int most = temper == Temper::huge ? 20'000 : 400;
    const int ways = temper == Temper::ordinary ? 3 : temper == Temper::careless ? 4 : 5;
    std::vector<int> made{std::max(1, first)};
    int stay = 0;
    int way = 1;
    for (int rounds = rounds_wanted(dice, temper); static_cast<int>(made.size()) < rounds;) {
        if (stay-- == 0) {
            way = dice.whole(0, ways);
            stay = dice.whole(0, 9);
        }
        const int below = made.back();
        int next = next_count(dice, below, first, way);
        if (way < 5) next = std::clamp(next, (below + 1) / 2, 2 * below);
        made.push_back(std::clamp(next, 1, most));
    }
    return made;
}

std::string words(Dice& dice, int count) {
    switch (dice.whole(0, 9)) {
        case 0:
            return "ch " + std::to_string(count);
        case 1:
            return "sc, ch 2, skip 2";
        case 2:
            return "dc in each st around";
        case 3:
            return "*sl st, hdc, tr* repeat " + std::to_string(std::max(1, count / 3)) + " times";
        case 4:
            return "[sc, inc] around";
        case 5:
            return "inc in each st around";
        case 6:
            return "*sc, dec* repeat " + std::to_string(std::max(1, count / 3)) + " times";
        case 7:
            return "sc " + std::to_string(std::max(1, count / 2)) + ", leave the rest";
        case 8:
            return "what the maker meant " + std::to_string(count);
        default:
            return "sc in each st around";
    }
}

Round round(Dice& dice, Temper temper, int count, std::size_t yarns) {
    Round made;
    const double written = temper == Temper::ordinary ? 0.02 : 0.1;
    if (dice.chance(written)) {
        made.working = AsWritten{words(dice, count)};
    } else {
        WorkedEvenly even{count};
        if (dice.chance(0.1)) even.spacing = Spacing::staggered;
        if (dice.chance(0.04)) even.part = dice.one_of({LoopPart::back, LoopPart::front});
        if (dice.chance(temper == Temper::ordinary ? 0.01 : 0.1))
            even.kind =
                dice.one_of({StitchKind::chain, StitchKind::slip_stitch, StitchKind::half_double_crochet,
                             StitchKind::double_crochet, StitchKind::treble_crochet, StitchKind::bobble});
        made.working = even;
    }
    if (yarns > 0 && dice.chance(0.15))
        made.yarn = static_cast<std::size_t>(dice.whole(0, static_cast<int>(yarns) - 1));
    made.lies_flat = dice.chance(0.03);
    if (dice.chance(0.03)) made.note = "Stuff firmly here.";
    return made;
}

Feature feature(Dice& dice, int rounds) {
    Feature made;
    made.kind = dice.one_of({FeatureKind::safety_eye, FeatureKind::safety_nose, FeatureKind::embroidered_eye,
                             FeatureKind::felt_disc, FeatureKind::stitched_line});
    made.pair = dice.chance(0.7);
    made.round = dice.whole(0, rounds);
    made.stitches_apart = dice.whole(0, 12);
    made.stitches_right = made.pair ? 0 : dice.whole(-20, 20) / 2.0;
    made.width_mm = dice.magnitude(2, 40);
    made.height_mm = dice.chance(0.7) ? made.width_mm : dice.magnitude(2, 40);
    made.lids = dice.chance(0.2);
    made.end_round = dice.whole(0, rounds);
    made.end_stitches_right = dice.whole(-20, 20) / 2.0;
    return made;
}

double stuffing(Dice& dice, Temper temper) {
    if (dice.chance(0.3)) return unstuffed_stretch;
    if (temper == Temper::ordinary || dice.chance(0.7))
        return dice.one_of({light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch});
    return dice.chance(0.5) ? dice.real(0, 0.5) : dice.magnitude(1e-6, 0.5);
}

Piece piece(Dice& dice, Temper temper, std::size_t yarns) {
    Piece made;
    made.name = "Piece";
    made.start = start(dice, temper);
    made.end = dice.one_of({End::drawn_closed, End::drawn_closed, End::left_open, End::sewn_straight});
    made.joining = dice.one_of(
        {Joining::spiral, Joining::spiral, Joining::spiral, Joining::spiral, Joining::joined, Joining::rows});
    made.area_stretch = stuffing(dice, temper);
    made.starts_at_top = dice.chance(0.3);
    made.make = dice.chance(0.3) ? 2 : 1;
    const int first = first_count(dice, made.start);
    for (const int count : counts(dice, temper, first))
        made.rounds.push_back(round(dice, temper, count, yarns));
    const int rounds = static_cast<int>(made.rounds.size());
    if (temper != Temper::huge)
        for (int features = dice.chance(0.3) ? dice.whole(1, 3) : 0; features > 0; --features)
            made.features.push_back(feature(dice, rounds));
    made.face_degrees = dice.chance(0.2) ? dice.real(-180, 180) : 0;
    made.worked.rounds = dice.chance(0.1) ? dice.whole(0, rounds) : 0;
    return made;
}

GaugeMeasurement measurement(Dice& dice, double least, double most) {
    GaugeMeasurement made{CircleGauge{5, 6, 10 * dice.magnitude(least, most)}, {}, {}, dice.chance(0.8)};
    if (dice.chance(0.4))
        made.what = SwatchGauge{20, 20 * dice.magnitude(least, most), 20, 20 * dice.magnitude(least, most)};
    if (dice.chance(0.3))
        made.what = FinishedPieceGauge{
            "Head",
            {{MeasuredOf::width, 80}},
            {{dice.real(-1, 1), dice.real(-1, 1), dice.real(-3, 3), dice.magnitude(1e-3, 1)}}};
    return made;
}

GaugeSource gauge(Dice& dice, Temper temper) {
    const bool far_out = temper == Temper::extreme;
    const double least = far_out ? 1e-3 : 3;
    const double most = far_out ? 1e3 : 8;
    switch (dice.whole(0, 5)) {
        case 0: {
            const double width = dice.magnitude(least, most);
            const double height = far_out ? dice.magnitude(least, most) : width * dice.real(0.7, 1.2);
            return GivenGauge{{width, height, 0.2, 0.2}};
        }
        case 1:
            return SwatchGauge{20, 20 * dice.magnitude(least, most), 20, 20 * dice.magnitude(least, most)};
        case 2:
            return CircleGauge{5, 6, 10 * dice.magnitude(least, most)};
        case 3:
            return EstimatedGauge{dice.one_of({YarnWeight::fine, YarnWeight::light, YarnWeight::medium})};
        case 4: {
            SeveralGauge several;
            for (int i = dice.whole(1, 4); i > 0; --i)
                several.measurements.push_back(measurement(dice, least, most));
            return several;
        }
        default:
            return {};
    }
}

Yarn yarn(Dice& dice, int number) {
    const auto channel = [&dice] { return static_cast<std::uint8_t>(dice.whole(0, 255)); };
    Yarn made;
    made.name = "Yarn " + std::to_string(number);
    made.colour.red = channel();
    made.colour.green = channel();
    made.colour.blue = channel();
    made.brushed = dice.chance(0.2);
    if (dice.chance(0.5)) made.metres_per_100_g = dice.magnitude(50, 800);
    if (dice.chance(0.5)) made.ball_grams = 50;
    return made;
}

}  // namespace

Toy random_toy(std::uint64_t number) {
    Dice dice(number);
    const Temper drawn = temper(dice);
    Toy toy;
    toy.title = "Toy " + std::to_string(number);
    toy.hook_mm = drawn == Temper::extreme ? dice.magnitude(least_hook_mm, most_hook_mm)
                                           : dice.one_of({2.0, 2.5, 3.5, 4.0, 5.0});
    toy.gauge = gauge(dice, drawn);
    for (int k = dice.whole(0, 3); k > 0; --k) toy.yarns.push_back(yarn(dice, k));
    for (int k = dice.one_of({1, 1, 1, 2, 3}); k > 0; --k)
        toy.pieces.push_back(piece(dice, drawn, toy.yarns.size()));
    return toy;
}

}  // namespace roundwright::torture
