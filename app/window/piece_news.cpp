#include "app/window/piece_news.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <QCoreApplication>

#include "core/rounds/piece_graph.h"
#include "render/wording/as_sentence.h"
#include "render/wording/counted.h"
#include "render/wording/feature_name.h"
#include "render/wording/feature_words.h"
#include "render/wording/round_phrases.h"

namespace roundwright::app {
namespace {

constexpr int most_counts = 6;  // that are read out one by one

struct PieceNewsText {
    Q_DECLARE_TR_FUNCTIONS(PieceNews)
};

/// The rounds that differ: those below `first` are the same, and so are the last `same_after`.
struct Stretch {
    int first = 0;
    int same_after = 0;
};

int size_of(const std::vector<int>& counts) { return static_cast<int>(counts.size()); }

Stretch differing(const std::vector<int>& before, const std::vector<int>& now) {
    const auto [a, b] = std::ranges::mismatch(before, now);
    const int first = static_cast<int>(a - before.begin());
    const int most = std::min(size_of(before), size_of(now)) - first;
    int after = 0;
    while (after < most && before[before.size() - 1 - static_cast<std::size_t>(after)] ==
                               now[now.size() - 1 - static_cast<std::size_t>(after)])
        ++after;
    return {first, after};
}

std::vector<int> numbers(int first, int end) {
    std::vector<int> all(static_cast<std::size_t>(std::max(end - first, 0)));
    std::iota(all.begin(), all.end(), first);
    return all;
}

QString counts_text(const std::vector<int>& counts, int first, int end) {
    const int count = counts[static_cast<std::size_t>(first)];
    if (end - first > 1) {
        QStringList each;
        for (int at = first; at < std::min(end, first + most_counts); ++at)
            each << QString::number(counts[static_cast<std::size_t>(at)]);
        if (end - first > most_counts) each << QStringLiteral("…");
        return each.join(QStringLiteral(", "));
    }
    if (first == 0) return stitches_words(count);
    const int change = count - counts[static_cast<std::size_t>(first) - 1];
    if (change == 0) return PieceNewsText::tr("%1, even").arg(stitches_words(count));
    return change > 0 ? PieceNewsText::tr("%1, %2 more").arg(stitches_words(count)).arg(change)
                      : PieceNewsText::tr("%1, %2 fewer").arg(stitches_words(count)).arg(-change);
}

QString count_news(const std::vector<int>& before, const std::vector<int>& now) {
    if (before == now) return {};
    const auto [first, after] = differing(before, now);
    const int end = size_of(now) - after;
    const int removed = size_of(before) - size_of(now);
    if (end <= first)
        return as_sentence(
            PieceNewsText::tr("%1 removed; %2 now")
                .arg(rounds_phrase(numbers(first, first + removed)), rounds_words(size_of(now))));
    return as_sentence(
        PieceNewsText::tr("%1: %2").arg(rounds_phrase(numbers(first, end)), counts_text(now, first, end)));
}

/// How round `round` of now lay before; as a new one does where it was not there.
Lie lie_before(const PieceAsHeard& before, const PieceAsHeard& now, const Stretch& stretch, int round) {
    const int added = size_of(now.counts) - size_of(before.counts);
    const bool after = round >= size_of(now.counts) - stretch.same_after;
    const int at = added == 0 || round < stretch.first ? round : after ? round - added : -1;
    return at >= 0 && at < static_cast<int>(before.lies.size()) ? before.lies[static_cast<std::size_t>(at)]
                                                                : Lie::even;
}

QString begins(Lie lie, const std::vector<int>& rounds) {
    const bool one = rounds.size() == 1;
    const QString which = rounds_phrase(rounds);
    switch (lie) {
        case Lie::ruffles:
            return one ? PieceNewsText::tr("%1 begins to ruffle").arg(which)
                       : PieceNewsText::tr("%1 begin to ruffle").arg(which);
        case Lie::cups:
            return one ? PieceNewsText::tr("%1 begins to cup").arg(which)
                       : PieceNewsText::tr("%1 begin to cup").arg(which);
        default:
            return {};
    }
}

void add_lies(const PieceAsHeard& before, const PieceAsHeard& now, PieceNews& news) {
    if (now.lies.size() != now.counts.size()) return;
    const Stretch stretch = differing(before.counts, now.counts);
    QStringList sentences;
    for (const Lie lie : {Lie::ruffles, Lie::cups}) {
        std::vector<int> rounds;
        for (int round = 0; round < size_of(now.counts); ++round) {
            if (now.lies[static_cast<std::size_t>(round)] == lie &&
                lie_before(before, now, stretch, round) != lie)
                rounds.push_back(round);
        }
        if (rounds.empty()) continue;
        sentences << as_sentence(begins(lie, rounds));
        news.rounds_of_lie.insert(news.rounds_of_lie.end(), rounds.begin(), rounds.end());
    }
    news.lie = sentences.join(QStringLiteral(". "));
}

bool another_size(const PieceAsHeard& before, const PieceAsHeard& now) {
    const auto differs = [](double a, double b) { return std::abs(a - b) >= 1; };
    return now.has_size && (!before.has_size || differs(before.width_mm, now.width_mm) ||
                            differs(before.height_mm, now.height_mm));
}

QString feature_news(const std::vector<Feature>& before, const std::vector<Feature>& now) {
    QStringList places;
    for (std::size_t at = 0; at < now.size(); ++at) {
        const QString place = feature_place(now[at]);
        if (before.size() == now.size() && place == feature_place(before[at])) continue;
        if (before.size() < now.size() && at < before.size()) continue;
        if (before.size() > now.size()) break;
        places << as_sentence(PieceNewsText::tr("%1: %2").arg(feature_name(now[at]), place));
    }
    return places.join(QStringLiteral(". "));
}

}  // namespace

PieceAsHeard PieceAsHeard::of(const Piece& piece, const PieceStudy& study) {
    PieceAsHeard heard{
        stitch_counts(study.graph().graph), {}, study.measures().usable(), 0, 0, piece.features};
    for (const RoundLie& lie : study.lies()) heard.lies.push_back(lie.lie);
    if (!heard.has_size) return heard;
    heard.width_mm = study.measures().width_mm;
    heard.height_mm = study.measures().height_mm;
    return heard;
}

PieceNews piece_news(const PieceAsHeard& before, const PieceAsHeard& now) {
    PieceNews news;
    news.count = count_news(before.counts, now.counts);
    add_lies(before, now, news);
    news.size = another_size(before, now);
    news.features = feature_news(before.features, now.features);
    return news;
}

}  // namespace roundwright::app
