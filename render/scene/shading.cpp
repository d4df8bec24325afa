#include "render/scene/shading.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>

// Both languages follow one model; a test compares them. Names are the same in both.
namespace roundwright::render {

namespace {

using Eigen::Vector3f;
using Eigen::Vector3i;

float mix(float a, float b, float t) { return a + (b - a) * t; }
float smoothstep(float t) { return t * t * (3 - 2 * t); }
float smooth_between(float low, float high, float x) {
    return smoothstep(std::clamp((x - low) / (high - low), 0.0F, 1.0F));
}

float lattice(const Vector3i& p) {
    auto n = static_cast<std::uint32_t>(p.x()) * 73856093U ^ static_cast<std::uint32_t>(p.y()) * 19349663U ^
             static_cast<std::uint32_t>(p.z()) * 83492791U;
    n = (n ^ (n >> 13)) * 1274126177U;
    return static_cast<float>((n ^ (n >> 16)) & 0xffffU) / 65535.0F;
}

/// Value noise, -1..1, with its gradient: smoothstep between random values on the corners of a lattice.
struct Noise {
    float value;
    Vector3f slope;
};

Noise noise(const Vector3f& p) {
    const Vector3f whole = p.array().floor();
    const Vector3i cell = whole.cast<int>();
    const Vector3f f = p - whole;
    const Vector3f s = f.array() * f.array() * (3 - 2 * f.array());
    const Vector3f d = 6 * f.array() * (1 - f.array());
    const auto at = [&cell](int x, int y, int z) { return lattice(cell + Vector3i(x, y, z)); };
    const float a = at(0, 0, 0), b = at(1, 0, 0), c = at(0, 1, 0), e = at(0, 0, 1);
    const float ab = b - a, ac = c - a, ae = e - a;
    const float bc = at(1, 1, 0) - b - c + a, be = at(1, 0, 1) - b - e + a, ce = at(0, 1, 1) - c - e + a;
    const float all = at(1, 1, 1) - a - ab - ac - ae - bc - be - ce;
    const float x = s.x(), y = s.y(), z = s.z();
    const float value = a + ab * x + ac * y + ae * z + bc * x * y + be * x * z + ce * y * z + all * x * y * z;
    const Vector3f slope(ab + bc * y + be * z + all * y * z, ac + bc * x + ce * z + all * x * z,
                         ae + be * x + ce * y + all * x * y);
    return {2 * value - 1, 2 * slope.cwiseProduct(d)};
}

/// The fibres' brightness about 1 and how they tilt the surface, in the piece's axes.
struct Grain {
    float brightness;
    Vector3f tilt;
};

Grain grain(const Vector3f& place, float depth, const ShadingSetup& setup) {
    const float fibres_per_pixel = depth * setup.pixel_angle * setup.grain_per_mm;
    const float strength = 1 - smooth_between(0.25F, 0.8F, fibres_per_pixel);
    if (strength <= 0) return {1, Vector3f::Zero()};
    const Noise coarse = noise(place * setup.grain_per_mm);
    const Noise fine = noise(place * (2.6F * setup.grain_per_mm));
    return {1 + strength * (0.05F * coarse.value + 0.05F * fine.value),
            strength * (0.10F * coarse.slope + 0.10F * fine.slope)};
}

Vector3f light(const ShadedPoint& point, const ShadingSetup& setup) {
    static const Vector3f lamp = Vector3f(-0.35F, 0.55F, 0.76F).normalized();
    const Vector3f view = -point.position.normalized();
    const FinishValues gloss = values_of(setup.finish);
    Vector3f normal = point.normal;
    float fibre = 1;
    if (setup.finish == Finish::yarn) {
        const Grain fibres = grain(point.place, -point.position.z(), setup);
        fibre = fibres.brightness;
        normal = (normal + setup.to_eye * fibres.tilt).normalized();
    }
    const float facing = std::max(normal.dot(view), 0.0F);
    const float direct = std::max((normal.dot(lamp) + gloss.wrap) / (1 + gloss.wrap), 0.0F);
    const float sky = 0.5F + 0.5F * normal.y();
    const float open = point.openness;
    const float total = mix(0.13F, 0.27F, sky) * open + 0.70F * direct * mix(open, 1, 0.35F);
    const float edge = 1 - facing;
    const float fuzz = gloss.fuzz * edge * edge * edge * mix(0.5F, 0.75F, sky) * open;
    const float highlight = std::max(normal.dot((lamp + view).normalized()), 0.0F);
    const float fourth = highlight * highlight * highlight * highlight;
    float shine = gloss.broad * fourth * fourth * fourth * open;
    if (gloss.sharp > 0)
        shine += gloss.sharp * (std::pow(highlight, 90.0F) + 0.3F * edge * edge * edge * edge * sky);
    const float on = setup.any_lit ? 0.12F * smooth_between(0.45F, 0.55F, point.lit) : 0;
    const Vector3f albedo = (1 - on) * (0.014F + 0.945F * point.colour.array()) + on;
    Vector3f out = albedo * (total * fibre);
    out.array() += fuzz * (0.42F * albedo.array() + 0.17F) * (1 - out.array()) + shine;
    return point.inside ? Vector3f(0.6F * out) : out;
}

/// Lit rounds: the rest steps back, the round comes forward between a light and a dark line.
Vector3f with_lit(Vector3f colour, const ShadedPoint& point) {
    const float on = smooth_between(0.45F, 0.55F, point.lit);
    colour *= mix(0.80F, 1.08F, on);
    if (point.lit_step <= 0) return colour;
    const float pixels = (point.lit - 0.5F) / point.lit_step;
    const float light_line = smooth_between(-0.4F, 0.2F, pixels) * (1 - smooth_between(1.4F, 2.0F, pixels));
    const float dark_line = smooth_between(-2.8F, -2.2F, pixels) * (1 - smooth_between(-0.8F, -0.2F, pixels));
    colour = colour * (1 - light_line) + Vector3f::Constant(0.93F) * light_line;
    return colour * (1 - dark_line) + Vector3f::Constant(0.01F) * dark_line;
}

constexpr const char* shared_functions = R"(
float smoothBetween(float low, float high, float x) { return smoothstep(low, high, x); }

float lattice(ivec3 p) {
    uint n = uint(p.x) * 73856093u ^ uint(p.y) * 19349663u ^ uint(p.z) * 83492791u;
    n = (n ^ (n >> 13u)) * 1274126177u;
    return float((n ^ (n >> 16u)) & 0xffffu) / 65535.0;
}

vec4 noise(vec3 p) {
    vec3 whole = floor(p);
    ivec3 cell = ivec3(whole);
    vec3 f = p - whole;
    vec3 s = f * f * (3.0 - 2.0 * f);
    vec3 d = 6.0 * f * (1.0 - f);
    float a = lattice(cell);
    float b = lattice(cell + ivec3(1, 0, 0));
    float c = lattice(cell + ivec3(0, 1, 0));
    float e = lattice(cell + ivec3(0, 0, 1));
    float ab = b - a, ac = c - a, ae = e - a;
    float bc = lattice(cell + ivec3(1, 1, 0)) - b - c + a;
    float be = lattice(cell + ivec3(1, 0, 1)) - b - e + a;
    float ce = lattice(cell + ivec3(0, 1, 1)) - c - e + a;
    float all = lattice(cell + ivec3(1, 1, 1)) - a - ab - ac - ae - bc - be - ce;
    float value = a + ab * s.x + ac * s.y + ae * s.z + bc * s.x * s.y + be * s.x * s.z + ce * s.y * s.z +
                  all * s.x * s.y * s.z;
    vec3 slope = vec3(ab + bc * s.y + be * s.z + all * s.y * s.z, ac + bc * s.x + ce * s.z + all * s.x * s.z,
                      ae + be * s.x + ce * s.y + all * s.x * s.y);
    return vec4(2.0 * slope * d, 2.0 * value - 1.0);
}

vec4 grain(vec3 where, float depth) {
    float fibresPerPixel = depth * pixelAngle * grainPerMm;
    float strength = 1.0 - smoothBetween(0.25, 0.8, fibresPerPixel);
    if (strength <= 0.0) return vec4(0.0, 0.0, 0.0, 1.0);
    vec4 coarse = noise(where * grainPerMm);
    vec4 fine = noise(where * (2.6 * grainPerMm));
    return vec4(strength * (0.10 * coarse.xyz + 0.10 * fine.xyz), 1.0 + strength * (0.05 * coarse.w + 0.05 * fine.w));
}

vec3 light(vec3 position, vec3 smoothNormal, bool isInside) {
    vec3 lamp = normalize(vec3(-0.35, 0.55, 0.76));
    vec3 view = -normalize(position);
    vec3 normal = smoothNormal;
    float fibre = 1.0;
    if (grainPerMm > 0.0) {
        vec4 fibres = grain(place, -position.z);
        fibre = fibres.w;
        normal = normalize(normal + modelViewNormal * fibres.xyz);
    }
    float facing = max(dot(normal, view), 0.0);
    float direct = max((dot(normal, lamp) + wrap) / (1.0 + wrap), 0.0);
    float sky = 0.5 + 0.5 * normal.y;
    float total = mix(0.13, 0.27, sky) * open + 0.70 * direct * mix(open, 1.0, 0.35);
    float edge = 1.0 - facing;
    float rim = fuzz * edge * edge * edge * mix(0.5, 0.75, sky) * open;
    float highlight = max(dot(normal, normalize(lamp + view)), 0.0);
    float fourth = highlight * highlight * highlight * highlight;
    float shine = broad * fourth * fourth * fourth * open;
    if (sharp > 0.0) shine += sharp * (pow(highlight, 90.0) + 0.3 * edge * edge * edge * edge * sky);
    float on = anyLit > 0.5 ? 0.12 * smoothBetween(0.45, 0.55, lit) : 0.0;
    vec3 albedo = mix(0.014 + 0.945 * colour, vec3(1.0), on);
    vec3 result = albedo * (total * fibre);
    result += rim * (0.42 * albedo + 0.17) * (1.0 - result) + shine;
    return isInside ? 0.6 * result : result;
}

vec3 withLit(vec3 c) {
    float on = smoothBetween(0.45, 0.55, lit);
    c *= mix(0.80, 1.08, on);
    float litStep = length(vec2(dFdx(lit), dFdy(lit)));
    if (litStep <= 0.0) return c;
    float pixels = (lit - 0.5) / litStep;
    float lightLine = smoothBetween(-0.4, 0.2, pixels) * (1.0 - smoothBetween(1.4, 2.0, pixels));
    float darkLine = smoothBetween(-2.8, -2.2, pixels) * (1.0 - smoothBetween(-0.8, -0.2, pixels));
    c = mix(c, vec3(0.93), lightLine);
    return mix(c, vec3(0.01), darkLine);
}
)";

}  // namespace

FinishValues values_of(Finish finish) {
    switch (finish) {
        case Finish::yarn:
            return {0.30F, 0.50F, 0.030F, 0};
        case Finish::felt:
            return {0.50F, 0.30F, 0, 0};
        case Finish::glossy:
            break;
    }
    return {0.10F, 0, 0.08F, 0.85F};
}

float to_linear(float srgb) { return std::pow(std::max(srgb, 0.0F), 2.2F); }
float to_srgb(float linear) { return std::pow(std::clamp(linear, 0.0F, 1.0F), 1 / 2.2F); }

Vector3f shade(const ShadedPoint& point, const ShadingSetup& setup) {
    const Vector3f colour = light(point, setup);
    return setup.any_lit ? with_lit(colour, point) : colour;
}

float ghost_opacity(float facing, bool behind) {
    const float outline = 1 - std::clamp(facing, 0.0F, 1.0F);
    return behind ? 0.75F * std::pow(outline, 5.0F) : 0.16F + 0.62F * std::pow(outline, 2.5F);
}

Vector3f ghost_colour(const QColor& background) {
    const bool on_dark = background.alpha() > 0 && background.lightness() < 128;
    return on_dark ? Vector3f(0.62F, 0.72F, 0.85F) : Vector3f(0.045F, 0.085F, 0.16F);
}

double grain_per_mm(double stitch_mm) { return 7 / std::max(stitch_mm, 0.05); }
double hollow_scale(double stitch_mm) { return 0.3 * stitch_mm; }

std::string vertex_shader_text() {
    return R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
in vec4 vertexColor;
in float vertexLit;
out vec3 eyePosition;
out vec3 eyeNormal;
out vec3 place;
out vec3 colour;
out float open;
out float lit;
uniform mat4 modelView;
uniform mat3 modelViewNormal;
uniform mat4 mvp;
void main() {
    eyePosition = vec3(modelView * vec4(vertexPosition, 1.0));
    eyeNormal = modelViewNormal * vertexNormal;
    place = vertexPosition;
    colour = pow(max(vertexColor.rgb, vec3(0.0)), vec3(2.2));
    open = vertexColor.a;
    lit = vertexLit;
    gl_Position = mvp * vec4(vertexPosition, 1.0);
}
)";
}

std::string fragment_shader_text() {
    return std::string(R"(#version 150 core
in vec3 eyePosition;
in vec3 eyeNormal;
in vec3 place;
in vec3 colour;
in float open;
in float lit;
out vec4 fragColor;
uniform float wrap;
uniform float fuzz;
uniform float broad;
uniform float sharp;
uniform float grainPerMm;
uniform float pixelAngle;
uniform float anyLit;
uniform mat3 modelViewNormal;
)") + shared_functions +
           R"(
void main() {
    vec3 normal = normalize(eyeNormal) * (gl_FrontFacing ? 1.0 : -1.0);
    vec3 c = light(eyePosition, normal, !gl_FrontFacing);
    if (anyLit > 0.5) c = withLit(c);
    fragColor = vec4(pow(clamp(c, 0.0, 1.0), vec3(1.0 / 2.2)), 1.0);
}
)";
}

std::string ghost_fragment_shader_text(bool behind) {
    return std::string(R"(#version 150 core
in vec3 eyePosition;
in vec3 eyeNormal;
out vec4 fragColor;
uniform vec3 ghostColour;
void main() {
    float facing = clamp(abs(dot(normalize(eyeNormal), normalize(eyePosition))), 0.0, 1.0);
    float outline = 1.0 - facing;
)") +
           (behind ? "    float alpha = 0.75 * pow(outline, 5.0);\n"
                   : "    float alpha = 0.16 + 0.62 * pow(outline, 2.5);\n") +
           "    fragColor = vec4(ghostColour, alpha);\n}\n";
}

}  // namespace roundwright::render
