#include "app/cli/resize_wish.h"

#include <QRegularExpression>

#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/input_file.h"
#include "app/cli/length_argument.h"
#include "app/cli/option_values.h"
#include "core/gauge/hook.h"
#include "core/reshape/reshape_toy.h"

namespace roundwright::app {
namespace {

std::optional<double> length_option(const Arguments& arguments, const char* name) {
    if (!arguments.has(QLatin1String(name))) return std::nullopt;
    const QString text = arguments.value(QLatin1String(name));
    const auto mm = length_mm(text, units_wanted(arguments));
    if (!mm)
        throw Complaint{CommandLine::tr("--%1 takes a length such as 60mm, 6cm or 2.5in, not \"%2\".")
                            .arg(QLatin1String(name), text)};
    return mm;
}

std::optional<double> number_option(const Arguments& arguments, const char* name, double least, double most) {
    if (!arguments.has(QLatin1String(name))) return std::nullopt;
    const QString text = arguments.value(QLatin1String(name));
    bool good = false;
    const double value = text.toDouble(&good);
    if (!good || !(value >= least && value <= most)) {
        throw Complaint{CommandLine::tr("--%1 takes a number from %2 to %3, not \"%4\".")
                            .arg(QLatin1String(name), QString::number(least), QString::number(most), text)};
    }
    return value;
}

/// "11", or "11+5": eleven rounds and five stitches of the next.
WorkedSoFar worked_option(const QString& text) {
    static const QRegularExpression pattern(QStringLiteral("^([0-9]{1,5})(?:\\+([0-9]{1,6}))?$"));
    const auto match = pattern.match(text);
    if (!match.hasMatch())
        throw Complaint{
            CommandLine::tr("--worked takes rounds, or rounds and stitches, such as 11 or 11+5, not \"%1\".")
                .arg(text)};
    WorkedSoFar worked;
    worked.rounds = match.captured(1).toInt();
    worked.stitches = match.captured(2).toInt();
    return worked;
}

YarnWeight weight_option(const QString& text) {
    for (const YarnStandard& standard : yarn_standards()) {
        QString name = QString::fromUtf8(standard.name.data(), qsizetype(standard.name.size())).toLower();
        if (name.replace(QLatin1Char(' '), QLatin1Char('-')) == text) return standard.weight;
    }
    return YarnWeight::light;
}

double hook_option(const QString& text) {
    const auto mm = length_mm(text, LengthUnit::millimetres);
    if (!mm || *mm < least_hook_mm || *mm > most_hook_mm)
        throw Complaint{CommandLine::tr("--hook takes a hook in mm, from %1 to %2, not \"%3\".")
                            .arg(QString::number(least_hook_mm), QString::number(most_hook_mm), text)};
    return *mm;
}

bool asks_for_a_size(const Target& target) {
    return target.width_mm || target.height_mm || target.circumference_mm;
}

void check_alike(const ResizeWish& wish) {
    if (wish.alike && wish.target.width_mm && wish.target.height_mm)
        throw Complaint{CommandLine::tr("--alike takes a width or a height, not both.")};
}

// Rounds that stay have the size they have.
void check_keep_rounds(const ResizeWish& wish) {
    if (!wish.keep_rounds) return;
    if (asks_for_a_size(wish.target) || wish.target.scale)
        throw Complaint{CommandLine::tr("--keep-rounds takes the size as it comes: leave the sizes out.")};
    if (!wish.hook_mm && !wish.weight)
        throw Complaint{CommandLine::tr("--keep-rounds goes with another hook (--hook) or yarn (--weight).")};
    if (wish.most_ripped >= 0)
        throw Complaint{CommandLine::tr(
            "--ways-on does not work with --keep-rounds: in another yarn, nothing worked so far can stay.")};
}

}  // namespace

ResizeWish wish_from(const Arguments& arguments) {
    ResizeWish wish;
    wish.target.width_mm = length_option(arguments, "width");
    wish.target.height_mm = length_option(arguments, "height");
    wish.target.circumference_mm = length_option(arguments, "circumference");
    wish.target.scale = number_option(arguments, "scale", 0.01, 100);
    if (arguments.has(QStringLiteral("hook")))
        wish.hook_mm = hook_option(arguments.value(QStringLiteral("hook")));
    if (arguments.has(QStringLiteral("weight")))
        wish.weight = weight_option(arguments.value(QStringLiteral("weight")));
    if (arguments.has(QStringLiteral("worked")))
        wish.worked = worked_option(arguments.value(QStringLiteral("worked")));
    wish.options.tidiness = number_option(arguments, "tidiness", 0, 1).value_or(ReshapeOptions{}.tidiness);
    if (const auto rip = number_option(arguments, "ways-on", 0, 2'000))
        wish.most_ripped = static_cast<int>(*rip);
    wish.keep_rounds = arguments.has(QStringLiteral("keep-rounds"));
    wish.alike = arguments.has(QStringLiteral("alike"));
    check_keep_rounds(wish);
    check_alike(wish);
    return wish;
}

std::vector<std::size_t> pieces_meant(const Arguments& arguments, const Toy& toy, const ResizeWish& wish) {
    const bool of_one = asks_for_a_size(wish.target) || wish.worked;
    return of_one ? std::vector{one_piece_wanted(arguments, toy)} : pieces_wanted(arguments, toy);
}

Toy worked_as(const Toy& toy, const ResizeWish& wish) {
    Toy other = wish.weight ? with_yarn_weight(toy, *wish.weight) : toy;
    return wish.hook_mm ? with_hook(other, *wish.hook_mm) : other;
}

}  // namespace roundwright::app
