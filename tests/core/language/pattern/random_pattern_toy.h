#pragma once

#include <random>
#include <string>
#include <vector>

#include "tests/core/language/pattern/random_piece.h"

namespace roundwright::testing {

/// Random toys of up to four random pieces, with everything a pattern says besides: names and texts such as
/// makers type, some of which look like other parts of a pattern.
class RandomPatternToy {
  public:
    explicit RandomPatternToy(unsigned seed) : engine_(seed), seed_(seed) {}

    Toy toy() {
        Toy toy;
        toy.title = pick(titles);
        toy.designer = chance(50) ? "Lantern Quay (invented)" : "";
        toy.hook_mm = 2.5 + 0.5 * between(0, 4);
        toy.yarns.resize(4);
        for (Yarn& yarn : toy.yarns) yarn.name = pick(yarn_names);
        const int pieces = between(1, 4);
        for (int i = 0; i < pieces; ++i) toy.pieces.push_back(piece(static_cast<unsigned>(i)));
        toy.notes = some(remarks, "\n");
        toy.text.introduction = some(remarks, "\n\n");
        toy.text.assembly = some(steps, "\n\n");
        toy.text.finishing = some(steps, "\n\n");
        toy.text.copyright = chance(50) ? "An invented example." : "";
        if (chance(50)) toy.text.level = Level::easy;
        return toy;
    }

  private:
    Piece piece(unsigned number) {
        Piece piece = RandomPiece(seed_ * 4 + number).piece();
        piece.name = pick(names) + " " + std::string(1, static_cast<char>('a' + number));
        piece.starts_at_top = chance(30);
        piece.area_stretch = pick<double>(
            {unstuffed_stretch, light_stuffing_stretch, medium_stuffing_stretch, firm_stuffing_stretch});
        for (Round& round : piece.rounds)
            if (!round.note.empty()) round.note = pick(remarks);
        return piece;
    }

    int between(int least, int most) { return std::uniform_int_distribution<int>(least, most)(engine_); }
    bool chance(int percent) { return between(1, 100) <= percent; }
    template <class T>
    T pick(const std::vector<T>& choices) {
        return choices[static_cast<std::size_t>(between(0, static_cast<int>(choices.size()) - 1))];
    }
    std::string some(const std::vector<std::string>& texts, const std::string& between_them) {
        std::string all;
        for (int i = between(0, 3); i > 0; --i) all += (all.empty() ? "" : between_them) + pick(texts);
        return all;
    }

    const std::vector<std::string> titles{"Otter",        "Seal pup",      "UK terms bunny",
                                          "Title: a cat", "Hook 4 mm",     "6 sc ball",
                                          "Assembly",     "Legs (make 2)", "Sea lion, small"};
    const std::vector<std::string> names{
        "Head", "Body", "Ring",     "Notes",    "Hook 4 mm", "Arm",   "Bobble",         "Short",
        "Yarn", "Sc",   "US terms", "Assembly", "left ear",  "Leg 2", "Same as a head", "Piece: wing"};
    const std::vector<std::string> yarn_names{"Foam", "Wet slate", "Night ink", "6 ply grey", "Buoy"};
    const std::vector<std::string> remarks{
        "Use 2 strands.",
        "Place a marker in the first st.",
        "Every number here is made up.",
        "Wanted: a head 60 mm wide. As drafted it comes out too big.",
        "Mind the rounds 3 to 5: work them as round 2.",
        "Have fun!",
    };
    const std::vector<std::string> steps{
        "Sew the 15 stitches of the beak's open edge to the face between rounds 19 and 22.",
        "Work a chain of 20 for the string.",
        "Set the head on the body, and sew the 30 stitches of the edge to it, so that it looks a little to "
        "one "
        "side and down, as seals do when they are tired.",
        "Do the same with the other four.",
        "Weave in all ends.",
    };

    std::mt19937 engine_;
    unsigned seed_;
};

}  // namespace roundwright::testing
