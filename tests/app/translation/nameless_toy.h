#pragma once

#include "tests/app/app_testing.h"

namespace roundwright::app {

/// A toy whose names have no letters, so that every word in the window is the program's: with eyes, a join to
/// be, and rounds that ruffle, gather and do not work out.
inline Toy nameless_toy() {
    Toy toy = toy_of({6, 12, 18, 24, 60, 24, 18});
    toy.title = "1";
    toy.yarns[0].name = "2";
    toy.yarns[1].name = "3";
    toy.pieces[0].name = "4";
    toy.pieces[0].area_stretch = 0.04;
    Feature eyes;
    eyes.kind = FeatureKind::safety_eye;
    eyes.pair = true;
    eyes.round = 2;
    eyes.stitches_apart = 4;
    toy.pieces[0].features.push_back(eyes);
    toy.pieces[0].rounds[6].working = AsWritten{"6 sc"};
    toy.pieces.push_back(piece_of({6, 12, 12, 12}, "5"));
    toy.pieces[1].start = OvalChain{5};
    return toy;
}

}  // namespace roundwright::app
