#include "app/work_along/work_notes.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QRegularExpression>

#include "core/face/feature_fit.h"
#include "core/face/work_steps.h"
#include "render/wording/feature_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

struct WorkNotesText {
    Q_DECLARE_TR_FUNCTIONS(WorkNotes)
};

QString yarn_name(const Toy& toy, std::size_t yarn) {
    const QString name = yarn < toy.yarns.size() ? name_in_words(toy.yarns[yarn].name) : QString();
    return name.isEmpty() ? WorkNotesText::tr("yarn %1").arg(yarn + 1) : name;
}

void add_yarn_changes(const Toy& toy, const Piece& piece, std::vector<WorkNote>& notes) {
    for (std::size_t i = 0; i < piece.rounds.size(); ++i) {
        const std::size_t yarn = piece.rounds[i].yarn;
        if (i == 0) {
            if (toy.yarns.size() > 1)
                notes.push_back({-1, WorkNotesText::tr("Start with %1.").arg(yarn_name(toy, yarn))});
        } else if (yarn != piece.rounds[i - 1].yarn) {
            notes.push_back(
                {static_cast<int>(i) - 1, WorkNotesText::tr("Change to %1.").arg(yarn_name(toy, yarn))});
        }
    }
}

void add_steps(const Piece& piece, const PieceStudy& study, std::vector<WorkNote>& notes) {
    for (const WorkStep& step : work_steps(piece, study.problem().rest_loop_mm, study.fabric.mm)) {
        QString text = step_words(step, piece);
        if (step.kind == StepKind::fit_feature)
            text = WorkNotesText::tr("%1 Small parts are a choking hazard for small children.").arg(text);
        notes.push_back({step.after_round, text});
    }
}

void add_sewn_features(const Piece& piece, std::vector<WorkNote>& notes) {
    const int last = static_cast<int>(piece.rounds.size()) - 1;
    for (const Feature& feature : piece.features) {
        if (has_washer(feature.kind)) continue;
        const QString words = feature.kind == FeatureKind::felt_disc
                                  ? WorkNotesText::tr("Sew on the %1, %2.")
                                  : WorkNotesText::tr("Stitch the %1, %2.");
        notes.push_back({last, words.arg(feature_with_size(feature), feature_place(feature))});
    }
}

}  // namespace

std::vector<WorkNote> work_notes(const Toy& toy, const Piece& piece, const PieceStudy& study) {
    std::vector<WorkNote> notes;
    if (piece.rounds.empty()) return notes;
    add_yarn_changes(toy, piece, notes);
    add_steps(piece, study, notes);
    add_sewn_features(piece, notes);
    if (piece.end == End::drawn_closed)
        notes.push_back(
            {static_cast<int>(piece.rounds.size()) - 1, WorkNotesText::tr("Draw the last stitches closed.")});
    if (piece.end == End::sewn_straight)
        notes.push_back(
            {static_cast<int>(piece.rounds.size()) - 1,
             WorkNotesText::tr("Flatten the last round and sew straight across it, through both layers.")});
    std::stable_sort(notes.begin(), notes.end(),
                     [](const WorkNote& a, const WorkNote& b) { return a.after_round < b.after_round; });
    return notes;
}

Repeat repeat_of(const QString& words, int stitches) {
    static const QRegularExpression pattern(QStringLiteral("^\\[[^\\[\\]]*\\] x (\\d+)$"));
    const auto match = pattern.match(words);
    if (!match.hasMatch()) return {};
    const int times = match.captured(1).toInt();
    return times > 0 && stitches % times == 0 ? Repeat{times, stitches / times} : Repeat{};
}

QString time_text(double seconds) {
    const auto whole = static_cast<long long>(std::llround(std::max(seconds, 0.0)));
    const auto two = [](long long n) { return QStringLiteral("%1").arg(n, 2, 10, QLatin1Char('0')); };
    if (whole < 3600) return QStringLiteral("%1:%2").arg(whole / 60).arg(two(whole % 60));
    return QStringLiteral("%1:%2:%3").arg(whole / 3600).arg(two(whole / 60 % 60), two(whole % 60));
}

double seconds_left(const WorkedSoFar& worked, const std::vector<int>& stitches) {
    double seconds = 0;
    double measured = 0;
    for (std::size_t i = 0; i < std::min(worked.seconds_of_round.size(), stitches.size()); ++i) {
        if (worked.seconds_of_round[i] <= 0) continue;
        seconds += worked.seconds_of_round[i];
        measured += stitches[i];
    }
    if (measured <= 0) return 0;
    double left = -worked.stitches;
    for (std::size_t i = static_cast<std::size_t>(std::max(worked.rounds, 0)); i < stitches.size(); ++i)
        left += stitches[i];
    return std::max(left, 0.0) * seconds / measured;
}

}  // namespace roundwright::app
