#include "render/raster/shading.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <string>

// Both languages follow one model; a test compares them. Names are the same in both.
namespace roundwright::render {

namespace {

using Eigen::Array3f;
using Eigen::Vector3f;

/// Light above this is held back, so that white yarn does not clip.
constexpr float knee = 0.75F;
/// Tangent of the steepest tilt of a cord; triangles seen edge-on give more.
constexpr float steepest_cord = 3;
static_assert(knee == 0.75F && steepest_cord == 3 && FacePicture::steepest == 4,
              "the shader's text holds them too");

float mix(float a, float b, float t) { return a + (b - a) * t; }
float smoothstep(float t) { return t * t * (3 - 2 * t); }
float smooth_between(float low, float high, float x) {
    return smoothstep(std::clamp((x - low) / (high - low), 0.0F, 1.0F));
}

/// The normal of the cords of yarn: the surface's, tilted against the slope of the relief on it.
Vector3f cord_normal(const ShadedPoint& point, const ShadingSetup& setup) {
    const float faces_a_mm = point.across.norm();
    if (faces_a_mm <= 0) return point.normal;
    const float height = std::min(setup.stitch_mm, 1 / faces_a_mm);
    Vector3f slope = height * (point.fabric.slope_u * point.across + point.fabric.slope_v * point.up);
    slope *= std::min(1.0F, steepest_cord / std::max(slope.norm(), 1e-6F));
    return (point.normal - slope).normalized();
}

/// Share of the light that reaches a point that sees `open` of the sky, with what its surroundings of the
/// same colour throw back: the fit of Jimenez, Wu, Pesce and Jarabo, "Practical real-time strategies for
/// accurate indirect occlusion", SIGGRAPH 2016 courses. Hollows of white yarn are bright, those of black yarn
/// dark.
Array3f with_bounces(float open, const Array3f& albedo) {
    const Array3f a = 2.0404F * albedo - 0.3324F, b = -4.7951F * albedo + 0.6417F,
                  c = 2.7552F * albedo + 0.6903F;
    return (((open * a + b) * open + c) * open).max(open).min(1);
}

Vector3f light(const ShadedPoint& point, const ShadingSetup& setup) {
    static const Vector3f lamp = Vector3f(-0.35F, 0.55F, 0.76F).normalized();
    const Vector3f view = -point.position.normalized();
    const FinishValues gloss = values_of(setup.finish);
    const Vector3f normal = cord_normal(point, setup);
    const float direct = std::max((normal.dot(lamp) + gloss.wrap) / (1 + gloss.wrap), 0.0F);
    const float sky = 0.5F + 0.5F * normal.y();
    const float on = setup.any_lit ? smooth_between(0.45F, 0.55F, point.lit) : 0;
    const Array3f albedo = (1 + 0.3F * on) * (0.014F + 0.945F * point.colour.array()) + 0.03F * on;
    const float open = point.fabric.open;
    const Array3f reached = with_bounces(open, albedo.min(1));
    const Array3f total = mix(0.22F, 0.42F, sky) * reached + 0.98F * direct * (0.65F * reached + 0.35F);
    const float edge = 1 - std::max(point.normal.dot(view), 0.0F);
    const float fuzz = gloss.fuzz * edge * edge * edge * mix(0.5F, 0.75F, sky) * open;
    const float highlight = std::max(normal.dot((lamp + view).normalized()), 0.0F);
    const float fourth = highlight * highlight * highlight * highlight;
    float shine = gloss.broad * fourth * fourth * fourth * open;
    if (gloss.sharp > 0)
        shine += gloss.sharp * (std::pow(highlight, 90.0F) + 0.3F * edge * edge * edge * edge * sky);
    Array3f out = albedo * total * point.fabric.tone;
    out += fuzz * (0.42F * albedo + 0.17F) * (1 - out).max(0) + shine;
    return point.inside ? 0.6F * out : out;
}

/// Leaves light up to the knee as it is and brings the rest below one.
Vector3f with_shoulder(const Vector3f& light) {
    const auto bent = [](float x) {
        return x <= knee ? x : knee + (1 - knee) * (1 - std::exp(-(x - knee) / (1 - knee)));
    };
    return {bent(light.x()), bent(light.y()), bent(light.z())};
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

vec4 texel(int column, int row) { return texelFetch(fabric, ivec2(column, row), 0); }

vec4 faceAtLevel(int face, vec2 uv, int level) {
    int side = faceSize >> level;
    int mask = side - 1;
    int row0 = 2 * faceSize - ((2 * faceSize) >> level);
    int column0 = face * faceSize;
    vec2 at = uv * float(side) - 0.5;
    vec2 whole = floor(at);
    vec2 share = at - whole;
    ivec2 ij = ivec2(whole);
    int left = column0 + (ij.x & mask), right = column0 + ((ij.x + 1) & mask);
    int low = row0 + (ij.y & mask), high = row0 + ((ij.y + 1) & mask);
    return mix(mix(texel(left, low), texel(right, low), share.x), mix(texel(left, high), texel(right, high), share.x),
               share.y);
}

vec4 faceAt(int face, vec2 uv, float level) {
    int fine = int(level);
    vec4 found = faceAtLevel(face, uv, fine);
    float share = level - float(fine);
    return share > 0.0 ? mix(found, faceAtLevel(face, uv, fine + 1), share) : found;
}

vec3 withBounces(float open, vec3 albedo) {
    vec3 a = 2.0404 * albedo - 0.3324, b = -4.7951 * albedo + 0.6417, c = 2.7552 * albedo + 0.6903;
    return min(max(((open * a + b) * open + c) * open, vec3(open)), 1.0);
}

vec3 light(vec3 position, vec3 normalOfSurface, bool isInside) {
    vec3 lamp = normalize(vec3(-0.35, 0.55, 0.76));
    vec3 view = -normalize(position);
    vec3 normal = normalOfSurface;
    float open = 1.0;
    float tone = 1.0;
    float facing = max(dot(normalOfSurface, view), 0.0);
    vec3 dx = dFdx(position), dy = dFdy(position);
    vec2 placeX = dFdx(place.xy), placeY = dFdy(place.xy);
    if (place.z > -0.5) {
        float texels = -position.z * pixelAngle / max(facing, 0.35) * float(faceSize) / stitchMm;
        float level = clamp(log2(max(texels, 1.0)), 0.0, float(faceLevels - 1));
        vec4 found = faceAt(int(place.z + 0.5), place.xy, level);
        open = found.z;
        tone = 2.0 * found.w;
        vec2 slopes = (2.0 * found.xy - 1.0) * steepest;
        dx -= normalOfSurface * dot(normalOfSurface, dx);
        dy -= normalOfSurface * dot(normalOfSurface, dy);
        vec3 plane = cross(dx, dy);
        vec3 alongX = cross(dy, plane), alongY = cross(plane, dx);
        float area = max(dot(plane, plane), 1e-20);
        vec3 across = (placeX.x * alongX + placeY.x * alongY) / area;
        vec3 up = (placeX.y * alongX + placeY.y * alongY) / area;
        float height = min(stitchMm, 1.0 / max(length(across), 1e-6));
        vec3 slope = height * (slopes.x * across + slopes.y * up);
        slope *= min(1.0, steepestCord / max(length(slope), 1e-6));
        normal = normalize(normalOfSurface - slope);
    }
    float direct = max((dot(normal, lamp) + wrap) / (1.0 + wrap), 0.0);
    float sky = 0.5 + 0.5 * normal.y;
    float on = anyLit > 0.5 ? smoothBetween(0.45, 0.55, lit) : 0.0;
    vec3 albedo = (1.0 + 0.3 * on) * (0.014 + 0.945 * colour) + 0.03 * on;
    vec3 reached = withBounces(open, min(albedo, 1.0));
    vec3 total = mix(0.22, 0.42, sky) * reached + 0.98 * direct * (0.65 * reached + 0.35);
    float edge = 1.0 - facing;
    float rim = fuzz * edge * edge * edge * mix(0.5, 0.75, sky) * open;
    float highlight = max(dot(normal, normalize(lamp + view)), 0.0);
    float fourth = highlight * highlight * highlight * highlight;
    float shine = broad * fourth * fourth * fourth * open;
    if (sharp > 0.0) shine += sharp * (pow(highlight, 90.0) + 0.3 * edge * edge * edge * edge * sky);
    vec3 result = albedo * (total * tone);
    result += rim * (0.42 * albedo + 0.17) * max(1.0 - result, 0.0) + shine;
    return isInside ? 0.6 * result : result;
}

vec3 withShoulder(vec3 c) {
    return mix(c, knee + (1.0 - knee) * (1.0 - exp(-(c - knee) / (1.0 - knee))), step(knee, c));
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
            return {0.30F, 0.40F, 0.030F, 0};
        case Finish::pile:
            return {0.60F, 0.55F, 0, 0, true};
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
    const Vector3f colour = with_shoulder(light(point, setup));
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

float fabric_level(float depth_mm, float facing, const ShadingSetup& setup) {
    const float pixel_mm = depth_mm * setup.pixel_angle / std::max(facing, 0.35F);
    return std::log2(std::max(pixel_mm * FacePicture::size / setup.stitch_mm, 1.0F));
}

std::string vertex_shader_text() {
    return R"(#version 150 core
in vec3 vertexPosition;
in vec3 vertexNormal;
in vec3 vertexColor;
in float vertexLit;
in vec3 vertexPlace;
out vec3 eyePosition;
out vec3 eyeNormal;
out vec3 place;
out vec3 colour;
out float lit;
uniform mat4 modelView;
uniform mat3 modelViewNormal;
uniform mat4 mvp;
void main() {
    eyePosition = vec3(modelView * vec4(vertexPosition, 1.0));
    eyeNormal = modelViewNormal * vertexNormal;
    place = vertexPlace;
    colour = pow(max(vertexColor, vec3(0.0)), vec3(2.2));
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
in float lit;
out vec4 fragColor;
uniform float wrap;
uniform float fuzz;
uniform float broad;
uniform float sharp;
uniform float twoSided;
uniform float stitchMm;
uniform float pixelAngle;
uniform float anyLit;
uniform sampler2D fabric;
const int faceSize = )") +
           std::to_string(FacePicture::size) +
           ";\nconst int faceLevels = " + std::to_string(FacePicture::levels) +
           ";\nconst float steepest = 4.0;\nconst float knee = 0.75;\nconst float steepestCord = 3.0;\n" +
           shared_functions +
           R"(
void main() {
    bool isInside = !gl_FrontFacing && twoSided < 0.5;
    vec3 normal = normalize(eyeNormal) * (isInside ? -1.0 : 1.0);
    vec3 c = withShoulder(light(eyePosition, normal, isInside));
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

std::string rim_vertex_shader_text() {
    return R"(#version 150 core
in vec3 vertexPosition;
uniform mat4 mvp;
uniform vec2 rimStep;
void main() {
    float angle = 6.2831853 * float(gl_InstanceID) / )" +
           std::to_string(rim_directions) + R"(.0;
    vec4 at = mvp * vec4(vertexPosition, 1.0);
    at.xy += rimStep * vec2(cos(angle), sin(angle)) * at.w;
    gl_Position = at;
}
)";
}

std::string rim_fragment_shader_text() {
    return R"(#version 150 core
out vec4 fragColor;
uniform vec3 rimColour;
void main() { fragColor = vec4(rimColour, 1.0); }
)";
}

}  // namespace roundwright::render
