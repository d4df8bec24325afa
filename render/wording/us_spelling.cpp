#include "render/wording/us_spelling.h"

#include <array>
#include <string_view>
#include <utility>

namespace roundwright {
namespace {

/// Without their first letters, so that a mnemonic ("C&olour") stays in its place.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> spellings{
    {{"olour", "olor"}, {"illimetre", "illimeter"}, {"entimetre", "entimeter"}}};

bool is_left_alone(std::string_view context) { return context == "Pattern" || context == "FirstToy"; }

}  // namespace

QString UsSpelling::translate(const char* context, const char* source, const char* /*disambiguation*/,
                              int /*n*/) const {
    if (source == nullptr || (context != nullptr && is_left_alone(context))) return {};
    const std::string_view text = source;
    QString respelt;
    for (const auto& [uk, us] : spellings) {
        if (text.find(uk) == std::string_view::npos) continue;
        if (respelt.isNull()) respelt = QString::fromUtf8(source);
        respelt.replace(QString::fromLatin1(uk.data(), static_cast<qsizetype>(uk.size())),
                        QString::fromLatin1(us.data(), static_cast<qsizetype>(us.size())));
    }
    return respelt;
}

bool wants_us_spelling(const QStringList& languages) {
    return !languages.isEmpty() && languages.front().startsWith(QLatin1String("en")) &&
           languages.front().endsWith(QLatin1String("-US"));
}

}  // namespace roundwright
