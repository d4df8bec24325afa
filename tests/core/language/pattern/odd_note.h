#pragma once

#include <string>
#include <vector>

#include "tests/core/language/pattern/random_piece.h"

namespace roundwright::testing {

/// Notes that look like other parts of a pattern: rounds, counts, headings, brackets, rules.
inline const std::vector<std::string> odd_notes{"Rnd 5: odd note",
                                                "Rnds 2-4: sc around (18)",
                                                "Rnd 1: 6 sc in magic ring (6) Rnd 2: inc (12)",
                                                "1st round: inc",
                                                "Next rnd: sc",
                                                "3. Sew on.",
                                                "(3) sc",
                                                "6-10: dec",
                                                "Row 3 -",
                                                "R5. x",
                                                "(12)",
                                                "[6]",
                                                "(18 sts)",
                                                "Total: 24 sts",
                                                "= 24",
                                                "- 12 sts",
                                                "(",
                                                ")))",
                                                "[[",
                                                "*",
                                                "** sc **",
                                                "* inc, rep from *",
                                                "Head",
                                                "Legs (make 2)",
                                                "## Body",
                                                "Assembly",
                                                "Materials:",
                                                "Rounds",
                                                "Piece: Wing",
                                                "Title: Otter",
                                                "Designed by me",
                                                "US terms",
                                                "UK terms",
                                                "Yarn A: blue",
                                                "MC = red",
                                                "Hook: 4 mm",
                                                "with B, sc around",
                                                "change to white",
                                                "Note: twice",
                                                "Notes:",
                                                "Tip: sc",
                                                "same as Head",
                                                "Same as left ear",
                                                "Make 2.",
                                                "sc = single crochet",
                                                "inc: 2 sc in next st",
                                                "6 sc in magic ring",
                                                "ch 4, join with sl st",
                                                "sc in each st around (18)",
                                                "inc around",
                                                "6, 12, 18x4",
                                                "+6",
                                                "Stuff firmly.",
                                                "Stuff lightly.",
                                                "Do not stuff.",
                                                "Work in joined rounds.",
                                                "Work in rows and turn.",
                                                "Do not join; work in a spiral.",
                                                "Fasten off, leaving the end open.",
                                                "Fasten off and draw the last round closed.",
                                                "Flatten, sew straight across.",
                                                "-----",
                                                "=====",
                                                "~~~",
                                                "# 7",
                                                "> quoted",
                                                "mag-",
                                                "ic ring",
                                                "a,  b ;c",
                                                "\u2022 bullet",
                                                "\u201cquoted\u201d",
                                                "5 \u00d7 3 \u2013 2",
                                                "\u87f9",
                                                "100%",
                                                "\\n",
                                                "x",
                                                ":",
                                                ": sc",
                                                "Page 1 of 3",
                                                "1/2",
                                                "one, two, three"};
/// One of them, or several, some on lines of their own.
inline std::string odd_note(RandomPiece& random) {
    const auto pick = [&] {
        return odd_notes[static_cast<std::size_t>(random.between(0, static_cast<int>(odd_notes.size()) - 1))];
    };
    std::string note = pick();
    while (random.chance(30)) note += (random.chance(30) ? "\n" : " ") + pick();
    return note;
}

}  // namespace roundwright::testing
