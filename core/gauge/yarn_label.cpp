#include "core/gauge/yarn_label.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "core/base/units.h"

namespace roundwright {
namespace {

// International yard and pound agreement, 1959.
constexpr double metres_per_yard = 36 * mm_per_inch / 1'000;
constexpr double grams_per_pound = 453.59237;
constexpr double grams_per_ounce = grams_per_pound / 16;

enum class Kind { number, length, mass, tex, denier, metric, cotton, wraps, plies, weight, over, link };

struct Token {
    Kind kind = Kind::link;
    double value = 0;  ///< a number; of a unit, metres or grams in one of it, or tex in one of it
    YarnWeight weight{};
};

struct Unit {
    std::string_view word;
    Kind kind;
    double value = 1;
};

constexpr std::array units{
    Unit{"m", Kind::length},
    Unit{"mtr", Kind::length},
    Unit{"mtrs", Kind::length},
    Unit{"metre", Kind::length},
    Unit{"metres", Kind::length},
    Unit{"meter", Kind::length},
    Unit{"meters", Kind::length},
    Unit{"yd", Kind::length, metres_per_yard},
    Unit{"yds", Kind::length, metres_per_yard},
    Unit{"yard", Kind::length, metres_per_yard},
    Unit{"yards", Kind::length, metres_per_yard},
    Unit{"g", Kind::mass},
    Unit{"gr", Kind::mass},
    Unit{"gram", Kind::mass},
    Unit{"grams", Kind::mass},
    Unit{"kg", Kind::mass, 1'000},
    Unit{"oz", Kind::mass, grams_per_ounce},
    Unit{"ounce", Kind::mass, grams_per_ounce},
    Unit{"ounces", Kind::mass, grams_per_ounce},
    Unit{"lb", Kind::mass, grams_per_pound},
    Unit{"lbs", Kind::mass, grams_per_pound},
    Unit{"pound", Kind::mass, grams_per_pound},
    Unit{"tex", Kind::tex},
    Unit{"dtex", Kind::tex, 0.1},
    Unit{"den", Kind::denier},
    Unit{"denier", Kind::denier},
    Unit{"nm", Kind::metric},
    Unit{"ne", Kind::cotton},
    Unit{"wpi", Kind::wraps},
    Unit{"wraps", Kind::wraps},
    Unit{"ply", Kind::plies},
    Unit{"plies", Kind::plies},
    Unit{"per", Kind::link},
    Unit{"in", Kind::link},
    Unit{"to", Kind::link},
    Unit{"the", Kind::link},
    Unit{"a", Kind::link},
    Unit{"an", Kind::link},
    Unit{"inch", Kind::link},
    Unit{"approx", Kind::link},
    Unit{"about", Kind::link},
    Unit{"ball", Kind::link},
    Unit{"skein", Kind::link},
    Unit{"weight", Kind::link},
    Unit{"yarn", Kind::link},
};

/// What the shops say (common practice), and the names of the published table in one word.
constexpr std::pair<std::string_view, YarnWeight> weights[]{
    {"lace", YarnWeight::lace},       {"laceweight", YarnWeight::lace}, {"fingering", YarnWeight::super_fine},
    {"sock", YarnWeight::super_fine}, {"sport", YarnWeight::fine},      {"dk", YarnWeight::light},
    {"worsted", YarnWeight::medium},  {"aran", YarnWeight::medium},     {"bulky", YarnWeight::bulky},
    {"chunky", YarnWeight::bulky},    {"jumbo", YarnWeight::jumbo},
};

/// Common practice in Australia and New Zealand, where so many plies are a thickness whatever the yarn is
/// spun of.
constexpr std::pair<int, YarnWeight> plies[]{
    {2, YarnWeight::lace},   {3, YarnWeight::super_fine},   {4, YarnWeight::super_fine},
    {5, YarnWeight::fine},   {8, YarnWeight::light},        {10, YarnWeight::medium},
    {12, YarnWeight::bulky}, {14, YarnWeight::super_bulky}, {16, YarnWeight::super_bulky},
};

bool is_digit(char letter) { return letter >= '0' && letter <= '9'; }
bool is_letter(char letter) { return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z'); }

/// "1,200" is a thousand and more, "1,75" is not two.
double number_in(std::string text) {
    const auto comma = text.find(',');
    const bool groups =
        comma != std::string::npos && text.size() - comma == 4 && comma <= 3 && text[0] != '0';
    if (groups) text.erase(comma, 1);
    std::ranges::replace(text, ',', '.');
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    return read.ptr == text.data() + text.size() && read.ec == std::errc{} ? value : -1;
}

std::optional<Token> word(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    const auto unit = std::ranges::find(units, text, &Unit::word);
    if (unit != units.end()) return Token{unit->kind, unit->value, {}};
    for (const auto& [name, weight] : weights)
        if (name == text) return Token{Kind::weight, 0, weight};
    return std::nullopt;
}

std::optional<std::vector<Token>> tokens_of(std::string_view text) {
    std::vector<Token> tokens;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t begin = at;
        const auto take = [&](auto fits) {
            while (at < text.size() && fits(text[at])) ++at;
            return std::string(text.substr(begin, at - begin));
        };
        if (is_digit(text[at])) {
            const double value = number_in(take([](char c) { return is_digit(c) || c == '.' || c == ','; }));
            if (value <= 0) return std::nullopt;
            tokens.push_back({Kind::number, value, {}});
        } else if (is_letter(text[at])) {
            const auto token = word(take(is_letter));
            if (!token) return std::nullopt;
            if (token->kind != Kind::link) tokens.push_back(*token);
        } else if (text[at] == '/') {
            tokens.push_back({Kind::over, 0, {}});
            ++at;
        } else if (std::string_view(" \t=~:;.,()-").find(text[at]) != std::string_view::npos) {
            ++at;
        } else {
            return std::nullopt;
        }
    }
    return tokens;
}

std::optional<YarnWeight> weight_of_wraps(double wraps) {
    const YarnStandard* nearest = nullptr;
    double least = 0;
    for (const YarnStandard& standard : yarn_standards()) {
        const Range& range = standard.wraps_per_inch;
        const double off = std::abs(std::log(wraps / range.middle()));
        if (wraps < range.low || wraps > range.high || (nearest != nullptr && off >= least)) continue;
        nearest = &standard;
        least = off;
    }
    return nearest != nullptr ? std::optional(nearest->weight) : std::nullopt;
}

std::optional<YarnWeight> weight_of_plies(double count) {
    for (const auto& [number, weight] : plies)
        if (count == number) return weight;
    return std::nullopt;
}

/// One reading of one text: what was found so far.
class Reading {
  public:
    explicit Reading(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

    std::optional<YarnLabel> run() {
        while (at_ < tokens_.size())
            if (!step()) return std::nullopt;
        if (length_.has_value() != mass_.has_value()) return std::nullopt;
        if (length_) {
            if (!say_metres(*length_ / *mass_ * 100)) return std::nullopt;
            label_.ball_grams = mass_is_counted_ ? mass_ : std::nullopt;
        }
        return label_ == YarnLabel{} ? std::nullopt : std::optional(label_);
    }

  private:
    [[nodiscard]] bool is(std::size_t at, Kind kind) const {
        return at < tokens_.size() && tokens_[at].kind == kind;
    }

    bool step() {
        const Token token = tokens_[at_];
        if (token.kind == Kind::over && at_ > 0) return ++at_, at_ < tokens_.size();
        if (token.kind == Kind::weight) return ++at_, say_weight(token.weight);
        if (token.kind == Kind::metric || token.kind == Kind::cotton) return spinners_number(token.kind);
        if (token.kind == Kind::number && at_ + 1 < tokens_.size()) {
            at_ += 2;
            return counted(token.value, tokens_[at_ - 1], true);
        }
        if (token.kind == Kind::length || token.kind == Kind::mass) return ++at_, counted(1, token, false);
        return false;
    }

    bool counted(double number, const Token& unit, bool is_counted) {
        const double amount = number * unit.value;
        switch (unit.kind) {
            case Kind::length:
                return !std::exchange(length_, amount);
            case Kind::mass:
                mass_is_counted_ = is_counted;
                return !std::exchange(mass_, amount);
            case Kind::tex:
                return say_metres(metres_per_100_g_of_tex(amount));
            case Kind::denier:
                return say_metres(metres_per_100_g_of_tex(tex_of_denier(amount)));
            case Kind::wraps:
                return say_weight(weight_of_wraps(number));
            case Kind::plies:
                return say_weight(weight_of_plies(number));
            default:
                return false;
        }
    }

    /// "Nm 10/2": number 10, two strands of it.
    bool spinners_number(Kind kind) {
        if (!is(++at_, Kind::number)) return false;
        double number = tokens_[at_++].value;
        if (is(at_, Kind::over) && is(at_ + 1, Kind::number)) {
            number /= tokens_[at_ + 1].value;
            at_ += 2;
        }
        const double tex = kind == Kind::metric ? tex_of_metric_number(number) : tex_of_cotton_number(number);
        return say_metres(metres_per_100_g_of_tex(tex));
    }

    bool say_metres(double metres) { return !std::exchange(label_.metres_per_100_g, metres); }
    bool say_weight(std::optional<YarnWeight> weight) {
        return weight && !std::exchange(label_.weight, weight);
    }

    std::vector<Token> tokens_;
    std::size_t at_ = 0;
    YarnLabel label_;
    std::optional<double> length_;
    std::optional<double> mass_;
    bool mass_is_counted_ = false;
};

}  // namespace

double tex_of_cotton_number(double number) {
    constexpr double hank_metres = 840 * metres_per_yard;
    return grams_per_pound / (hank_metres * number) * 1'000;
}

std::optional<YarnLabel> read_yarn_label(std::string_view text) {
    auto tokens = tokens_of(text);
    return tokens ? Reading(std::move(*tokens)).run() : std::nullopt;
}

}  // namespace roundwright
