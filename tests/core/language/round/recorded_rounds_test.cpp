#include <gtest/gtest.h>
#include <sstream>

#include "core/language/round/completion.h"
#include "core/language/round/round_entry.h"
#include "tests/core/language/round/asked_again.h"
#include "tests/core/language/round/told_round.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

/// "12 us", "ring uk", "oval 5", "12 us hdc" (the stitch of the round below): where a round stands.
RoundSetting setting_of(const std::string& heading) {
    RoundSetting setting;
    setting.work.into_ring = false;
    std::istringstream words(heading);
    for (std::string word; words >> word;) {
        if (word == "ring") setting.work.into_ring = true;
        if (word == "uk") setting.terms = Terms::uk;
        if (word == "hdc") setting.even = StitchKind::half_double_crochet;
        if (word == "oval") {
            words >> setting.work.oval_chains;
            setting.work.loops_below = 2 * setting.work.oval_chains;
        }
        if (word == "yarn") words >> setting.work.yarn;
        if (word == "room") words >> setting.work.most_stitches;
        if (std::isdigit(static_cast<unsigned char>(word[0])) != 0)
            setting.work.loops_below = std::stoi(word);
    }
    return setting;
}

void answer_round(const Question& question, RecordedText& text) {
    YarnTable yarns;
    const RoundSetting setting = setting_of(question.heading);
    const ReadRound read = read_round(question.text, setting, yarns);
    tell(text, read, question.text);
    if (!yarns.names.empty()) text.line("  yarns:").each(yarns.names);
}

void answer_completion(const Question& question, RecordedText& text) {
    YarnTable yarns;
    for (const Completion& offered : completions(question.text, setting_of(question.heading), yarns, 12))
        text.line("  ") << "'" + shown(offered.words) + "'" << offered.replaced
                        << (offered.ends_round ? "ends" : "goes on");
}

// The sources of each form of words are named in written_rounds_table_test and faulty_rounds_table_test; the
// slips among these are those rounds with a number, a word or a sign changed. What is recorded is what was
// understood, word by word: read it as a maker would.
TEST(RecordedRounds, AreUnderstoodAsBefore) {
    expect_answers_as_recorded("written_rounds.txt", answer_round);
}

TEST(RecordedRounds, AreCompletedAsBefore) {
    expect_answers_as_recorded("completions.txt", answer_completion);
}

}  // namespace
}  // namespace roundwright::test
