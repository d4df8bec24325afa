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
    QString name;
};

/// One or more of each plain name; our own choice.
std::array<NamedColour, 30> named_colours() {
    return {{{{255, 255, 255}, ColourWords::tr("white")},
             {{244, 234, 214}, ColourWords::tr("cream")},
             {{214, 196, 164}, ColourWords::tr("beige")},
             {{200, 202, 204}, ColourWords::tr("light grey")},
             {{138, 140, 142}, ColourWords::tr("grey")},
             {{70, 72, 75}, ColourWords::tr("dark grey")},
             {{15, 15, 15}, ColourWords::tr("black")},
             {{205, 30, 35}, ColourWords::tr("red")},
             {{120, 20, 25}, ColourWords::tr("dark red")},
             {{215, 105, 105}, ColourWords::tr("light red")},
             {{242, 170, 190}, ColourWords::tr("pink")},
             {{220, 60, 140}, ColourWords::tr("strong pink")},
             {{235, 125, 30}, ColourWords::tr("orange")},
             {{235, 180, 130}, ColourWords::tr("light orange")},
             {{120, 72, 40}, ColourWords::tr("brown")},
             {{175, 130, 88}, ColourWords::tr("light brown")},
             {{66, 38, 24}, ColourWords::tr("dark brown")},
             {{242, 210, 45}, ColourWords::tr("yellow")},
             {{247, 238, 160}, ColourWords::tr("light yellow")},
             {{165, 205, 140}, ColourWords::tr("light green")},
             {{60, 150, 60}, ColourWords::tr("green")},
             {{28, 72, 40}, ColourWords::tr("dark green")},
             {{60, 170, 170}, ColourWords::tr("turquoise")},
             {{160, 196, 230}, ColourWords::tr("light blue")},
             {{45, 100, 200}, ColourWords::tr("blue")},
             {{26, 43, 94}, ColourWords::tr("dark blue")},
             {{110, 142, 158}, ColourWords::tr("grey blue")},
             {{195, 165, 220}, ColourWords::tr("light purple")},
             {{125, 60, 150}, ColourWords::tr("purple")},
             {{70, 32, 90}, ColourWords::tr("dark purple")}}};
}

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
    const auto named = named_colours();
    return std::ranges::min_element(
               named, {}, [&colour](const NamedColour& other) { return distance(other.colour, colour); })
        ->name;
}

QString colour_words(const Colour& colour) {
    const auto value = static_cast<unsigned>((colour.red << 16) | (colour.green << 8) | colour.blue);
    const QString hex = QString::number(value, 16).rightJustified(6, QLatin1Char('0')).toUpper();
    return ColourWords::tr("%1, #%2").arg(colour_name(colour), hex);
}

}  // namespace roundwright
