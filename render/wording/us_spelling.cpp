#include "render/wording/us_spelling.h"

#include <array>
#include <string_view>
#include <utility>

namespace roundwright {
namespace {

/// Without their first letters, so that a mnemonic ("C&olour") stays in its place.
constexpr std::array<std::pair<QStringView, QStringView>, 4> spellings{
    {{u"olour", u"olor"}, {u"illimetre", u"illimeter"}, {u"entimetre", u"entimeter"}, {u"grey", u"gray"}}};

bool is_left_alone(std::string_view context) { return context == "Pattern" || context == "FirstToy"; }

/// The text respelt; null if it is spelt the same everywhere.
QString respelt(const QString& text) {
    QString spelt = text;
    for (const auto& [uk, us] : spellings) spelt.replace(uk.data(), uk.size(), us.data(), us.size());
    return spelt == text ? QString() : spelt;
}

}  // namespace

QString UsSpelling::translate(const char* context, const char* source, const char* disambiguation,
                              int n) const {
    if (source == nullptr || (context != nullptr && is_left_alone(context))) return {};
    const QString plural = EnglishPlurals::translate(context, source, disambiguation, n);
    return respelt(plural.isNull() ? QString::fromUtf8(source) : plural);
}

bool wants_us_spelling(const QStringList& languages) {
    return !languages.isEmpty() && languages.front().startsWith(QLatin1String("en")) &&
           languages.front().endsWith(QLatin1String("-US"));
}

}  // namespace roundwright
