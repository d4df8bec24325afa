#include "render/wording/colour_words.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QCoreApplication>

namespace roundwright {
namespace {

struct ColourWords {
    Q_DECLARE_TR_FUNCTIONS(ColourWords)
};

struct NamedColour {
    Colour colour;
    const char* name;
};

/// One or more of each plain name; our own choice.
constexpr std::array<NamedColour, 30> named_colours{
    {{{255, 255, 255}, QT_TRANSLATE_NOOP("ColourWords", "white")},
     {{244, 234, 214}, QT_TRANSLATE_NOOP("ColourWords", "cream")},
     {{214, 196, 164}, QT_TRANSLATE_NOOP("ColourWords", "beige")},
     {{200, 202, 204}, QT_TRANSLATE_NOOP("ColourWords", "light grey")},
     {{138, 140, 142}, QT_TRANSLATE_NOOP("ColourWords", "grey")},
     {{70, 72, 75}, QT_TRANSLATE_NOOP("ColourWords", "dark grey")},
     {{15, 15, 15}, QT_TRANSLATE_NOOP("ColourWords", "black")},
     {{205, 30, 35}, QT_TRANSLATE_NOOP("ColourWords", "red")},
     {{120, 20, 25}, QT_TRANSLATE_NOOP("ColourWords", "dark red")},
     {{215, 105, 105}, QT_TRANSLATE_NOOP("ColourWords", "light red")},
     {{242, 170, 190}, QT_TRANSLATE_NOOP("ColourWords", "pink")},
     {{220, 60, 140}, QT_TRANSLATE_NOOP("ColourWords", "strong pink")},
     {{235, 125, 30}, QT_TRANSLATE_NOOP("ColourWords", "orange")},
     {{235, 180, 130}, QT_TRANSLATE_NOOP("ColourWords", "light orange")},
     {{120, 72, 40}, QT_TRANSLATE_NOOP("ColourWords", "brown")},
     {{175, 130, 88}, QT_TRANSLATE_NOOP("ColourWords", "light brown")},
     {{66, 38, 24}, QT_TRANSLATE_NOOP("ColourWords", "dark brown")},
     {{242, 210, 45}, QT_TRANSLATE_NOOP("ColourWords", "yellow")},
     {{247, 238, 160}, QT_TRANSLATE_NOOP("ColourWords", "light yellow")},
     {{165, 205, 140}, QT_TRANSLATE_NOOP("ColourWords", "light green")},
     {{60, 150, 60}, QT_TRANSLATE_NOOP("ColourWords", "green")},
     {{28, 72, 40}, QT_TRANSLATE_NOOP("ColourWords", "dark green")},
     {{60, 170, 170}, QT_TRANSLATE_NOOP("ColourWords", "turquoise")},
     {{160, 196, 230}, QT_TRANSLATE_NOOP("ColourWords", "light blue")},
     {{45, 100, 200}, QT_TRANSLATE_NOOP("ColourWords", "blue")},
     {{26, 43, 94}, QT_TRANSLATE_NOOP("ColourWords", "dark blue")},
     {{110, 142, 158}, QT_TRANSLATE_NOOP("ColourWords", "grey blue")},
     {{195, 165, 220}, QT_TRANSLATE_NOOP("ColourWords", "light purple")},
     {{125, 60, 150}, QT_TRANSLATE_NOOP("ColourWords", "purple")},
     {{70, 32, 90}, QT_TRANSLATE_NOOP("ColourWords", "dark purple")}}};

/// Linear light of an sRGB channel (IEC 61966-2-1).
double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// CIE L*a*b* for the white of sRGB, D65 (CIE 15); equal distances look about equal.
std::array<double, 3> lab(const Colour& colour) {
    const double r = linear(colour.red), g = linear(colour.green), b = linear(colour.blue);
    const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
    const double x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
    const double y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
    const double z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double distance(const Colour& one, const Colour& other) {
    const auto a = lab(one), b = lab(other);
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

}  // namespace

QString colour_name(const Colour& colour) {
    const auto nearest = std::ranges::min_element(
        named_colours, {}, [&colour](const NamedColour& named) { return distance(named.colour, colour); });
    return ColourWords::tr(nearest->name);
}

QString colour_words(const Colour& colour) {
    const auto value = static_cast<unsigned>((colour.red << 16) | (colour.green << 8) | colour.blue);
    const QString hex = QString::number(value, 16).rightJustified(6, QLatin1Char('0')).toUpper();
    return ColourWords::tr("%1, #%2").arg(colour_name(colour), hex);
}

}  // namespace roundwright
