#include <gtest/gtest.h>

#include "core/gauge/gauge_source.h"
#include "core/gauge/hook.h"
#include "core/gauge/usual_gauge.h"
#include "core/materials/materials.h"
#include "core/materials/stuffing.h"
#include "core/materials/working_time.h"
#include "core/materials/yarn_use.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

void tell(RecordedText& text, const Estimate& estimate) {
    text << estimate.likely << estimate.low << estimate.high;
}

void tell(RecordedText& text, const std::optional<Estimate>& estimate) {
    if (estimate)
        tell(text, *estimate);
    else
        text << "-";
}

void tell_materials(RecordedText& text, const Toy& toy, const VariedStudy& study) {
    const WorkedPiece worked{&toy.pieces[0], &study.graph.graph, study.gauge, study.shape.volume_mm3};
    const Materials all = materials(toy, {worked});
    for (std::size_t yarn = 0; yarn < all.yarns.size(); ++yarn) {
        tell(text.line("yarn"), all.yarns[yarn].metres);
        tell(text, all.yarns[yarn].grams);
        text << (all.yarns[yarn].balls ? *all.yarns[yarn].balls : -1);
        if (yarn < all.cost.yarn.size()) tell(text, all.cost.yarn[yarn]);
    }
    tell(text.line("stuffing"), all.stuffing_g);
    tell(text, all.cost.stuffing);
    tell(text.line("time"), all.minutes);
    tell(text, all.cost.work);
    text << all.stitches;
    tell(text.line("total"), all.cost.total);
    text << all.cost.complete;
    text.line("ends").each(yarn_ends(toy.pieces[0], study.graph.graph, 3));
    text.line("single_crochets").each(single_crochets_of_yarn(toy.pieces[0], study.graph.graph, 2));
    const TimedWork timed = timed_work(toy.pieces[0], study.graph.graph);
    text.line("timed") << timed.single_crochets << timed.minutes << timed.rounds;
}

TEST(RecordedMaterials, AreAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        Toy toy = varied_pieces()[i].toy;
        text.heading(varied_pieces()[i].name);
        tell_materials(text, toy, varied_studies()[i]);
        toy.making = {12.5, 330.0, 21.0, 1.5, "EUR", 18.0, 9.5, 2.4, {}, {}, {}, {}, {}};
        if (i % 5 == 0) tell_materials(text, toy, varied_studies()[i]);
    }
    testing::expect_as_recorded("materials.txt", text);
}

TEST(RecordedMaterials, StuffingFollowsTheStretch) {
    RecordedText text;
    for (const double stretch : {-0.1, 0.0, 0.005, 0.01, 0.02, 0.03, 0.04, 0.06, 0.08, 0.2}) {
        text.line("stretch") << stretch << fill_over_medium(stretch);
        tell(text, stuffing_grams(250e3, stretch, {}));
        tell(text, medium_density({6, 5, 7.5}, 250e3, stretch));
    }
    tell(text.line("weighed"), stuffing_weighed({31, 22.0, 1}, {20, 15, 26}));
    tell(text.line("not_weighed_empty"), stuffing_weighed({31, std::nullopt, 0.5}, {20, 15, 26}));
    const Making making = with_stuffing_density({}, {24, 20, 29});
    text.line("density") << *making.stuffing_density_kg_per_m3 << *making.stuffing_density_error_kg_per_m3;
    testing::expect_as_recorded("stuffing.txt", text);
}

void tell(RecordedText& text, const char* name, const std::optional<Gauge>& gauge) {
    text.line(name);
    if (!gauge) {
        text << "-";
        return;
    }
    text << gauge->stitch_width_mm << gauge->round_height_mm << gauge->stitch_width_error_mm
         << gauge->round_height_error_mm << gauge->error_correlation;
}

TEST(RecordedGauges, AreAsBefore) {
    RecordedText text;
    text.heading("swatches");
    for (const bool rows : {false, true})
        for (const double hook : {0.0, 3.0, 4.0})
            tell(text, "swatch", gauge_from(SwatchGauge{22, 100, 24, 100, rows, 1.5, hook}, 3.5));
    text.heading("circles");
    for (const auto lie : {CircleLie::flat, CircleLie::cups, CircleLie::ruffles})
        for (const int increases : {5, 6, 8})
            tell(text, "circle", gauge_from(CircleGauge{7, increases, 71, lie, 1, 4.5}, 3.5));
    text.heading("estimates");
    for (int weight = 0; weight < 8; ++weight)
        for (const double hook : {2.0, 3.5, 9.0})
            tell(text, "estimate", gauge_from(EstimatedGauge{static_cast<YarnWeight>(weight)}, hook));
    text.heading("usual");
    for (double hook = 0.25; hook < 22; hook += 0.25) {
        text.line("hook") << hook << static_cast<int>(usual_weight(hook));
        tell(text, "usual", usual_gauge(hook));
    }
    for (int weight = 0; weight < 8; ++weight)
        text.line("usual_hook") << weight << usual_hook_mm(static_cast<YarnWeight>(weight));
    testing::expect_as_recorded("gauges.txt", text);
}

TEST(RecordedGauges, ThePublishedTablesStandAsPrinted) {
    RecordedText text;
    for (const Hook& hook : hooks())
        text.line("hook") << hook.mm << "us" << (hook.us.empty() ? "-" : hook.us) << "uk"
                          << (hook.uk.empty() ? "-" : hook.uk);
    for (const YarnStandard& standard : yarn_standards()) {
        text.line(standard.name) << standard.number << standard.hook_mm.low << standard.hook_mm.high
                                 << standard.wraps_per_inch.low << standard.wraps_per_inch.high
                                 << standard.metres_per_100_g.low << standard.metres_per_100_g.high;
        if (standard.single_crochets_per_4_inches)
            text << standard.single_crochets_per_4_inches->low << standard.single_crochets_per_4_inches->high;
    }
    testing::expect_as_recorded("published_tables.txt", text, {0, 0});
}

}  // namespace
}  // namespace roundwright::test
