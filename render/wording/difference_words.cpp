#include "render/wording/difference_words.h"

#include <algorithm>
#include <numeric>

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "render/wording/amounts.h"
#include "render/wording/counted.h"
#include "render/wording/feature_name.h"
#include "render/wording/printable.h"
#include "render/wording/round_phrases.h"

namespace roundwright {
namespace {

using Code = DifferenceCode;

struct DifferenceText {
    Q_DECLARE_TR_FUNCTIONS(Difference)
};

/// "36", "24, 30, 36", "6 to 36".
QString counts_words(const std::vector<int>& counts) {
    constexpr std::size_t most_listed = 4;
    const auto [least, most] = std::ranges::minmax(counts);
    if (least == most) return QLocale().toString(least);
    if (counts.size() > most_listed)
        return DifferenceText::tr("%1 to %2").arg(QLocale().toString(least), QLocale().toString(most));
    QStringList all;
    for (const int count : counts) all << QLocale().toString(count);
    return all.join(QStringLiteral(", "));
}

QString piece_words(const Difference& difference, const std::string& name) {
    return name.empty() ? DifferenceText::tr("Piece %1").arg(difference.place + 1) : printable_line(name);
}

QString yarn_words(const Difference& difference, const std::string& name) {
    return name.empty() ? DifferenceText::tr("Yarn %1").arg(difference.place + 1) : printable_line(name);
}

QString rounds_difference(const Difference& difference) {
    const int count = difference.last - difference.first + 1;
    std::vector<int> rounds(static_cast<std::size_t>(count));
    std::iota(rounds.begin(), rounds.end(), difference.first);
    const QString which = rounds_phrase(rounds);
    switch (difference.code) {
        case Code::rounds_counts:
            return DifferenceText::tr("%1 (differs/differ) (%2 instead of %3)", nullptr, count)
                .arg(which, counts_words(difference.now), counts_words(difference.then));
        case Code::rounds_new:
            return DifferenceText::tr("%1 (is/are) new (%2)", nullptr, count)
                .arg(which, counts_words(difference.now));
        case Code::rounds_gone:
            return DifferenceText::tr("the old %1 (is/are) gone (%2)", nullptr, count)
                .arg(which, counts_words(difference.then));
        case Code::rounds_stitches:
            return DifferenceText::tr("%1 (has/have) other stitches, but the same count", nullptr, count)
                .arg(which);
        case Code::rounds_yarn:
            return DifferenceText::tr("%1 (is/are) in another yarn", nullptr, count).arg(which);
        case Code::rounds_note:
            return DifferenceText::tr("the (note/notes) of %1 (differs/differ)", nullptr, count).arg(which);
        case Code::rounds_flat_mark:
            return DifferenceText::tr("whether %1 (is/are) to lie flat", nullptr, count).arg(which);
        default:
            return {};
    }
}

QString feature_difference(const Difference& difference) {
    const Feature& feature = *difference.feature;
    const QString name = feature_name(feature);
    const int count = feature.pair ? 2 : 1;
    if (difference.code == Code::feature_new)
        return DifferenceText::tr("%1 (is/are) new", nullptr, count).arg(name);
    if (difference.code == Code::feature_gone)
        return DifferenceText::tr("%1 (is/are) gone", nullptr, count).arg(name);
    return DifferenceText::tr("%1 (differs/differ)", nullptr, count).arg(name);
}

QString worked_difference(const Difference& difference) {
    const int then = difference.then.front();
    const int now = difference.now.front();
    if (then == now) return DifferenceText::tr("the stitches ticked off differ");
    return DifferenceText::tr("%1 worked instead of %2").arg(rounds_words(now), QLocale().toString(then));
}

/// "throughout", "in rounds 1 to 12 only".
QString stuffed_words(const std::vector<int>& part) {
    if (part.empty()) return DifferenceText::tr("throughout");
    if (part.front() >= part.back())
        return DifferenceText::tr("in round %1 only").arg(QLocale().toString(part.front() + 1));
    return DifferenceText::tr("in rounds %1 to %2 only")
        .arg(QLocale().toString(part.front() + 1), QLocale().toString(part.back() + 1));
}

/// As it is typed: pellets are weighed to a gram.
QString pellets_words(double grams) {
    return grams > 0 ? DifferenceText::tr("%1 g of pellets").arg(number_words(grams))
                     : DifferenceText::tr("no pellets");
}

QString stretch_words(double stretch) { return number_words(100 * stretch); }

/// What differs in a piece that is there both times.
QString within_piece(const Difference& difference) {
    switch (difference.code) {
        case Code::start:
            return DifferenceText::tr("it starts differently");
        case Code::end:
            return DifferenceText::tr("it ends differently");
        case Code::joining:
            return DifferenceText::tr("its rounds are joined differently");
        case Code::stuffing:
            return DifferenceText::tr("fabric stretch %1 % instead of %2 %")
                .arg(stretch_words(difference.now_value), stretch_words(difference.then_value));
        case Code::stuffed_rounds:
            return DifferenceText::tr("stuffed %1 instead of %2")
                .arg(stuffed_words(difference.now), stuffed_words(difference.then));
        case Code::weight:
            return DifferenceText::tr("%1 in it instead of %2")
                .arg(pellets_words(difference.now_value), pellets_words(difference.then_value));
        case Code::way_up:
            return DifferenceText::tr("it is the other way up");
        case Code::make:
            return DifferenceText::tr("make %1 instead of %2")
                .arg(difference.now.front())
                .arg(difference.then.front());
        case Code::worked:
            return worked_difference(difference);
        case Code::feature_new:
        case Code::feature_gone:
        case Code::feature_changed:
            return feature_difference(difference);
        case Code::features_in_other_order:
            return DifferenceText::tr("its eyes and other parts are listed in another order");
        case Code::face_direction:
            return DifferenceText::tr("its face looks another way");
        default:
            return rounds_difference(difference);
    }
}

QString of_piece(const Difference& difference) {
    const QString name = piece_words(difference, difference.name);
    switch (difference.code) {
        case Code::piece_new:
            return DifferenceText::tr("%1 is new (%2)")
                .arg(name, rounds_words(static_cast<int>(difference.now.size())));
        case Code::piece_gone:
            return DifferenceText::tr("%1 is gone (%2)")
                .arg(name, rounds_words(static_cast<int>(difference.then.size())));
        case Code::piece_renamed:
            return DifferenceText::tr("%1 was called %2")
                .arg(name, piece_words(difference, difference.old_name));
        default:
            return DifferenceText::tr("%1: %2").arg(name, within_piece(difference));
    }
}

QString of_yarn(const Difference& difference) {
    const QString name = yarn_words(difference, difference.name);
    switch (difference.code) {
        case Code::yarn_new:
            return DifferenceText::tr("The yarn %1 is new").arg(name);
        case Code::yarn_gone:
            return DifferenceText::tr("The yarn %1 is gone").arg(name);
        case Code::yarn_renamed:
            return DifferenceText::tr("The yarn %1 was called %2")
                .arg(name, yarn_words(difference, difference.old_name));
        default:
            return DifferenceText::tr("The yarn %1 differs").arg(name);
    }
}

}  // namespace

QString difference_words(const Difference& difference) {
    switch (difference.code) {
        case Code::pieces_in_other_order:
            return DifferenceText::tr("The pieces are in another order");
        case Code::yarn_new:
        case Code::yarn_gone:
        case Code::yarn_renamed:
        case Code::yarn_changed:
            return of_yarn(difference);
        case Code::yarns_in_other_order:
            return DifferenceText::tr("The yarns are in another order");
        case Code::hook:
            return DifferenceText::tr("Hook: %1 mm instead of %2 mm")
                .arg(number_words(difference.now_value), number_words(difference.then_value));
        case Code::gauge:
            return DifferenceText::tr("The gauge differs");
        case Code::title:
            return DifferenceText::tr("The title differs");
        case Code::designer:
            return DifferenceText::tr("The designer’s name differs");
        case Code::notes:
            return DifferenceText::tr("The notes differ");
        case Code::private_notes:
            return DifferenceText::tr("The notes to yourself differ");
        case Code::pattern_words:
            return DifferenceText::tr("Words of the pattern differ (introduction, assembly and so on)");
        case Code::making:
            return DifferenceText::tr("Pace, stuffing or prices differ");
        case Code::other:
            return DifferenceText::tr("Something else in the file differs");
        default:
            return of_piece(difference);
    }
}

}  // namespace roundwright
