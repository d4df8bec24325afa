#include "render/wording/takes_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "render/wording/amounts.h"
#include "render/wording/plain_text.h"
#include "render/wording/plurals.h"
#include "render/wording/printable.h"

namespace roundwright {
namespace {

constexpr int money_decimals = 2;

struct TakesText {
    Q_DECLARE_TR_FUNCTIONS(Takes)
};

QString number(Money money) {
    return QLocale().toString(money.rounded_to(money_decimals).units(), 'f', money_decimals);
}

QString with_currency(const QString& number, const std::string& currency) {
    const QString name = printable_line(currency);
    return name.isEmpty() ? number : TakesText::tr("%1 %2").arg(number, name);
}

/// "38 m (29 to 46)": the unit once.
QString range_words(const QString& likely, const QString& low, const QString& high) {
    return low == high ? likely : TakesText::tr("%1 (%2 to %3)").arg(likely, low, high);
}

QString without_unit(const QString& amount) { return amount.section(QLatin1Char(' '), 0, 0); }

QString length_taken(const Estimate& metres, LengthUnit units) {
    constexpr double mm = 1000;
    return range_words(yarn_length_words(metres.likely * mm, units),
                       without_unit(yarn_length_words(metres.low * mm, units)),
                       without_unit(yarn_length_words(metres.high * mm, units)));
}

QString weight_taken(const Estimate& grams) {
    return range_words(grams_text(grams.likely), without_unit(grams_text(grams.low)),
                       without_unit(grams_text(grams.high)));
}

QString yarn_name(const Yarn& yarn) {
    const QString name = printable_line(yarn.name);
    return name.isEmpty() ? TakesText::tr("Yarn") : name;
}

/// What is lost, of what would be left.
MoneyRange lost(const MoneyRange& left) {
    return {Money() - left.likely, Money() - left.high, Money() - left.low};
}

QString left_words(const Sale& sale, const std::string& currency) {
    if (sale.left.likely < Money())
        return TakesText::tr("%1 is lost.").arg(money_words(lost(sale.left), currency));
    const QString left = TakesText::tr("%1 is left").arg(money_words(sale.left, currency));
    if (!sale.an_hour) return left + QLatin1Char('.');
    return TakesText::tr("%1: %2 an hour.").arg(left, money_words(*sale.an_hour, currency));
}

}  // namespace

QString money_words(Money money, const std::string& currency) {
    return with_currency(number(money), currency);
}

QString money_words(const MoneyRange& range, const std::string& currency) {
    return range_words(money_words(range.likely, currency), number(range.low), number(range.high));
}

QString yarn_taken_words(const Yarn& yarn, const YarnUse& use, std::optional<int> balls, LengthUnit units) {
    const QString amount =
        TakesText::tr("%1: %2, %3")
            .arg(yarn_name(yarn), length_taken(use.metres, units), weight_taken(use.grams));
    return balls ? TakesText::tr("%1, %2").arg(amount, TakesText::tr("%n ball(s)", nullptr, *balls)) : amount;
}

QString stuffing_taken_words(const Estimate& grams) {
    return TakesText::tr("Stuffing: %1").arg(weight_taken(grams));
}

QString pellets_taken_words(double grams) {
    return grams > 0 ? TakesText::tr("Pellets: %1").arg(grams_text(grams)) : QString();
}

QString time_taken_words(const Estimate& minutes) {
    return TakesText::tr("Time to crochet: %1")
        .arg(range_words(time_words(minutes.likely), time_words(minutes.low), time_words(minutes.high)));
}

QString cost_words(const Toy& toy, const Earnings& earnings) {
    const std::string& currency = toy.making.currency;
    QString words = TakesText::tr("Materials cost %1.").arg(money_words(earnings.materials, currency));
    const QString hours = range_words(time_words(earnings.minutes.likely), time_words(earnings.minutes.low),
                                      time_words(earnings.minutes.high));
    words += QLatin1Char('\n');
    if (!earnings.work) return words + TakesText::tr("Work takes %1.").arg(hours);
    return words + TakesText::tr("Work takes %1, which is %2 at your rate.")
                       .arg(hours, money_words(*earnings.work, currency));
}

QString retail_words(const Toy& toy, const Earnings& earnings) {
    if (!earnings.retail) return {};
    const std::string& currency = toy.making.currency;
    const Sale& sale = *earnings.retail;
    const QString price = money_words(sale.price, currency);
    const QString left = left_words(sale, currency);
    if (sale.fees == Money()) return TakesText::tr("Sold at %1, %2").arg(price, left);
    return TakesText::tr("Sold at %1 less %2 of fees, %3").arg(price, money_words(sale.fees, currency), left);
}

QString wholesale_words(const Toy& toy, const Earnings& earnings) {
    if (!earnings.wholesale) return {};
    const std::string& currency = toy.making.currency;
    return TakesText::tr("To a shop at %1, %2")
        .arg(money_words(earnings.wholesale->price, currency), left_words(*earnings.wholesale, currency));
}

QString fair_price_words(const Toy& toy, const Earnings& earnings) {
    if (!earnings.fair_price) return {};
    return TakesText::tr("A price of %1 pays the materials, your hours and the fees.")
        .arg(money_words(*earnings.fair_price, toy.making.currency));
}

QString unpriced_words(const Toy& toy, const Earnings& earnings) {
    QStringList missing;
    for (const std::size_t yarn : earnings.unpriced) missing << yarn_name(toy.yarns[yarn]);
    if (earnings.stuffing_unpriced) missing << TakesText::tr("the stuffing");
    if (missing.isEmpty()) return {};
    return TakesText::tr("Not counted, since no price is known: %1.").arg(missing.join(TakesText::tr(", ")));
}

}  // namespace roundwright
