#include "app/read_pattern/mend_outcome.h"

#include <algorithm>
#include <set>
#include <vector>

#include <QCoreApplication>

#include "render/wording/counted.h"

namespace roundwright::app {
namespace {

struct OutcomeText {
    Q_DECLARE_TR_FUNCTIONS(MendOutcome)
};

bool is_round(const ReadLine& line) { return line.first_round >= 0; }

/// Rounds that come out where something did not before.
std::vector<ReadLine> come_out_now(const ReadPattern& before, const ReadPattern& after) {
    std::set<int> wrong;
    for (const ReadLine& line : before.lines)
        if (!line.proved) wrong.insert(line.first_line);
    std::vector<ReadLine> now;
    for (const ReadLine& line : after.lines)
        if (is_round(line) && line.proved && wrong.count(line.first_line) > 0) now.push_back(line);
    return now;
}

bool is_still_wrong(const ReadPattern& after, const ReadDiagnostic& finding) {
    return std::any_of(after.lines.begin(), after.lines.end(), [&](const ReadLine& line) {
        return !line.proved && finding.where.line >= line.first_line && finding.where.line <= line.last_line;
    });
}

}  // namespace

QString mend_outcome_words(const ReadPattern& before, const ReadPattern& after,
                           const ReadDiagnostic& finding) {
    const std::vector<ReadLine> now = come_out_now(before, after);
    if (now.size() == 1)
        return OutcomeText::tr("Round %1 comes out now, with %2.")
            .arg(now.front().last_round + 1)
            .arg(stitches_words(now.front().stitches));
    if (now.size() > 1)
        return OutcomeText::tr("%n line(s) of rounds come out now.", nullptr, static_cast<int>(now.size()));
    return is_still_wrong(after, finding) ? OutcomeText::tr("The line still does not come out.") : QString();
}

}  // namespace roundwright::app
