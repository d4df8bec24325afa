#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <QFile>
#include <QTemporaryDir>

#include "core/base/limits.h"
#include "core/document/json_document.h"
#include "core/gauge/hook.h"
#include "tests/app/cli/run_program.h"

namespace roundwright {
namespace {

using namespace test;
using nlohmann::json;

struct Extreme {
    const char* what;
    Toy toy;
    int exit_code = 0;  ///< of `shape`
    const char* words = "";
};

Toy toy_of(const std::vector<int>& counts, Start start = MagicRing{}, End end = End::left_open,
           double stretch = medium_stuffing_stretch) {
    Toy toy;
    Piece& piece = toy.pieces.emplace_back();
    piece.name = "Fin";
    piece.start = start;
    piece.end = end;
    piece.area_stretch = stretch;
    for (const int count : counts) piece.rounds.emplace_back().working = WorkedEvenly{count};
    return toy;
}

Toy with_hook(Toy toy, double mm) {
    toy.hook_mm = mm;
    return toy;
}

Toy with_gauge(Toy toy, double width_mm, double height_mm) {
    toy.gauge = GivenGauge{{width_mm, height_mm, 0, 0}};
    return toy;
}

const std::vector<int> ball{6, 12, 18, 24, 24, 24, 18, 12, 6};

std::vector<Extreme> extremes() {
    const int most = static_cast<int>(max_stitches_per_piece);
    std::vector<Extreme> all{
        {"one stitch", toy_of({1})},
        {"one stitch, drawn closed", toy_of({1}, MagicRing{}, End::drawn_closed)},
        {"a round of one stitch after many", toy_of({6, 12, 24, 1})},
        {"one round", toy_of({6})},
        {"one round, sewn straight, not stuffed", toy_of({6}, MagicRing{}, End::sewn_straight, 0)},
        {"every round there may be", toy_of(std::vector<int>(max_rounds_per_piece, 100))},
        {"every stitch in one round", toy_of({most})},
        {"more stitches than there may be", toy_of({most, 1}), 1, "and the limit is 200,000"},
        {"the least stuffing", toy_of(ball, MagicRing{}, End::drawn_closed, 1e-9)},
        {"the most stuffing", toy_of(ball, MagicRing{}, End::drawn_closed, 0.5)},
        {"the thinnest hook", with_hook(toy_of(ball, MagicRing{}, End::drawn_closed), least_hook_mm)},
        {"a thick hook", with_hook(toy_of(ball, MagicRing{}, End::drawn_closed), 25)},
        {"the thickest hook", with_hook(toy_of(ball, MagicRing{}, End::drawn_closed), most_hook_mm)},
        {"a tiny gauge", with_gauge(toy_of(ball, MagicRing{}, End::drawn_closed), 1e-3, 1e-3)},
        {"no gauge at all", with_gauge(toy_of(ball), 1e-9, 1e-9), 1, "No settled shape was found"},
        {"a vast gauge", with_gauge(toy_of(ball, MagicRing{}, End::drawn_closed), 1e5, 1e5)},
        {"a longest chain", toy_of({2 * most / 5}, OvalChain{most / 5}, End::left_open, 0)},
        {"no rounds", toy_of({})},
    };
    return all;
}

/// No number is missing where one belongs: what is not finite is written as null.
bool holds_null(const json& value) {
    if (value.is_null()) return true;
    if (!value.is_structured()) return false;
    return std::any_of(value.begin(), value.end(), holds_null);
}

TEST(Extremes, HaveAShapeOrWords) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("toy.roundwright"));
    for (const Extreme& extreme : extremes()) {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(write_document(extreme.toy)));
        file.close();
        const ProgramRun shape = run_program({"shape", "--json", path});
        EXPECT_EQ(shape.exit_code, extreme.exit_code) << extreme.what << ": " << shape.err;
        EXPECT_THAT(shape.err, ::testing::HasSubstr(extreme.words)) << extreme.what;
        const json answer = json::parse(shape.out, nullptr, false);
        ASSERT_FALSE(answer.is_discarded()) << extreme.what;
        EXPECT_FALSE(holds_null(answer)) << extreme.what;
        EXPECT_GE(answer["pieces"][0]["volume_mm3"], 0) << extreme.what;
        for (const char* units : {"mm", "in"})
            EXPECT_THAT(run_program({"shape", "--units", units, path}).out, ::testing::HasSubstr("Fin"))
                << extreme.what;
        const json checks = json::parse(run_program({"check", "--json", path}).out, nullptr, false);
        EXPECT_FALSE(checks.is_discarded()) << extreme.what;
    }
}

}  // namespace
}  // namespace roundwright
