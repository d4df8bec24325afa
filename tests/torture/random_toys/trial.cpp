#include "tests/torture/random_toys/trial.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numeric>

#include "app/cli/shape_json.h"
#include "app/export/mesh_file.h"
#include "app/export/picture_file.h"
#include "core/document/json_document.h"
#include "core/language/pattern/write_pattern.h"
#include "core/study/toy_checks.h"
#include "render/pages/pdf/pdf_export.h"
#include "render/pages/text_export.h"
#include "render/wording/check_sentence.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/torture/random_toys/random_toy.h"

namespace roundwright::torture {
namespace {

constexpr std::size_t triangles_a_piece = 20'000;
constexpr QSize pixels{160, 160};

/// Numbers that are none reach a text as one of these.
bool has_no_number(const std::string& text) {
    return std::ranges::any_of(std::array{"nan", "NaN", "inf ", "inf,", "Infinity"},
                               [&](const char* word) { return text.find(word) != std::string::npos; });
}

class Trial {
  public:
    Trial(std::uint64_t number, Tally& tally) : number_(number), toy_(random_toy(number)), tally_(tally) {}

    void run(const Shares& shares) {
        read_back();
        for (std::size_t piece = 0; piece < toy_.pieces.size(); ++piece)
            studies_.push_back(study_piece(toy_, piece));
        checks_ = checks_of_toy(studies_);
        for (std::size_t piece = 0; piece < studies_.size(); ++piece) look_at(piece);
        for (const Check& check : checks_) look_at(check);
        if (takes_part(shares.words)) write_words();
        if (takes_part(shares.meshes)) write_meshes(Relief::solid);
        if (takes_part(shares.meshes)) write_meshes(Relief::none);
        if (takes_part(shares.drawings)) draw();
        if (takes_part(shares.pictures)) take_picture();
        if (takes_part(shares.pages)) print();
    }

  private:
    [[nodiscard]] bool takes_part(int one_in) const {
        return one_in > 0 && number_ % static_cast<std::uint64_t>(one_in) == 0;
    }
    void fault(const std::string& what) {
        tally_.faults.push_back("toy " + std::to_string(number_) + ": " + what);
    }
    void expect(bool holds, const std::string& what) {
        if (!holds) fault(what);
    }
    void end(const std::string& how) { ++tally_.ends[how]; }

    void read_back() {
        const std::string text = write_document(toy_);
        expect(write_document(read_document(text).toy) == text, "its file reads back as another");
        expect(!has_no_number(text), "its file has a number that is none");
    }

    /// Whether checks say why a piece has no shape.
    [[nodiscard]] bool is_said(std::size_t piece) const {
        return std::ranges::any_of(checks_, [piece](const Check& check) {
            return check.piece == static_cast<int>(piece) &&
                   (check.severity == Severity::error || check.code == CheckCode::not_converged);
        });
    }

    void look_at(std::size_t piece) {
        const std::string name = "piece " + std::to_string(piece) + " ";
        const PieceMeasures& shape = studies_[piece].measures();
        expect(shape.volume_mm3 >= 0, name + "holds less than nothing");
        expect(!shape.converged() || shape.usable(), name + "has settled on no shape");
        look_at(app::shape_json(toy_.pieces[piece], studies_[piece], false), name);
        if (shape.converged()) return end("shapes that settled");
        end(shape.usable() ? "shapes that did not settle" : "pieces without a shape");
        expect(is_said(piece), name + "has no settled shape, and nothing says why");
    }

    /// A number that is none is written as null.
    void look_at(const nlohmann::ordered_json& json, const std::string& name) {
        if (json.is_null()) return fault(name + "has a number that is none");
        if (json.is_number_float())
            expect(std::isfinite(json.get<double>()), name + "has a number that is none");
        if (json.is_structured())
            for (const auto& value : json) look_at(value, name);
    }

    void look_at(const Check& check) {
        const std::string words = check_sentence(check, LengthUnit::millimetres).toStdString();
        expect(!words.empty() && !has_no_number(words), "a check has no words: " + words);
        expect(!has_no_number(check_sentence(check, LengthUnit::inches).toStdString()),
               "a check has no words in inches");
        end("findings of checks");
    }

    void write_words() {
        for (const Terms terms : {Terms::us, Terms::uk})
            expect(!has_no_number(write_toy(toy_, terms)), "its rounds have a number that is none");
        render::PatternOptions options;
        for (const LengthUnit units : {LengthUnit::millimetres, LengthUnit::inches}) {
            options.units = units;
            const std::string text =
                render::pattern_text(toy_, options, render::TextForm::plain).toStdString();
            expect(!text.empty() && !has_no_number(text), "its pattern has a number that is none");
        }
        expect(!render::rounds_csv(toy_, options).isEmpty(), "its rounds make no table");
        end("patterns in words");
    }

    void write_meshes(Relief relief) {
        const app::ShownOptions options{relief, triangles_a_piece};
        std::size_t without = 0;
        for (std::size_t piece = 0; piece < toy_.pieces.size(); ++piece) {
            const app::ShownPiece shown = app::shown_piece(toy_, piece, options);
            const bool settled = studies_[piece].measures().converged();
            expect(!shown.empty() || !settled || is_said(piece), "a shape and no mesh of it");
            expect(shown.empty() || settled, "a mesh of no shape");
            if (shown.empty()) ++without;
            if (!shown.empty()) look_at(shown.surface.mesh, studies_[piece]);
        }
        std::vector<std::size_t> all(toy_.pieces.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        for (const app::MeshForm form : {app::MeshForm::obj, app::MeshForm::stl, app::MeshForm::glb}) {
            const app::MeshFile file = app::mesh_file(toy_, {form, all, options});
            expect(file.piece_without.has_value() == (without > 0), "a mesh file of no shape");
            expect(file.bytes.empty() == file.piece_without.has_value(), "a mesh file is empty");
            if (form == app::MeshForm::obj)
                expect(!has_no_number(file.bytes), "a mesh file has a number that is none");
            end(file.piece_without ? "mesh files refused" : "mesh files");
        }
    }

    void look_at(const Mesh& mesh, const PieceStudy& study) {
        const test::MeshMeasures found = test::measure(mesh);
        expect(found.finite, "a mesh has a place that is none");
        expect(found.unit_normals, "a mesh has a normal that is none");
        expect(found.odd_edges == 0, "a mesh is open at " + std::to_string(found.odd_edges) + " edges");
        // A piece of a single stitch, or of stitches that no hook makes, is not as wide as its fabric is
        // thick.
        const double proportion = study.gauge.round_height_mm / study.gauge.stitch_width_mm;
        const bool is_a_piece =
            study.measures().width_mm > study.gauge.stitch_width_mm && proportion > 0.2 && proportion < 5;
        const double least = -1e-4 * std::pow(study.measures().width_mm, 3);
        expect(found.volume_mm3 > least || !is_a_piece, "a mesh is inside out");
        expect(mesh.triangle_count() <= triangles_a_piece || mesh.triangle_count() < 2000,
               "a mesh has too many triangles");
        end("meshes");
    }

    void draw() {
        const app::ShownPiece shown = app::shown_piece(toy_, 0, app::for_pictures);
        if (shown.empty()) return;
        const std::string svg =
            app::picture_svg(shown, app::PictureWanted{}, QStringLiteral("Piece")).toStdString();
        expect(svg.find("</svg>") != std::string::npos && !has_no_number(svg), "a drawing is none");
        end("drawings");
    }

    void take_picture() {
        const app::ShownPiece shown = app::shown_piece(toy_, 0, app::for_pictures);
        if (shown.empty()) return;
        app::PictureWanted wanted;
        wanted.pixels = pixels;
        const QImage image = app::picture_of(shown, wanted);
        expect(image.size() == pixels, "a picture is none");
        expect(!app::png_bytes(image).isEmpty(), "a picture has no bytes");
        end("pictures");
    }

    void print() {
        QString error;
        const auto bytes = render::pattern_pdf(toy_, {}, &error);
        expect(bytes.has_value() != !error.isEmpty(), "a pattern is neither printed nor refused");
        expect(!bytes || bytes->startsWith("%PDF-"), "a PDF is none");
        end(bytes ? "printed patterns" : "printed patterns refused");
    }

    std::uint64_t number_;
    const Toy toy_;
    Tally& tally_;
    std::vector<PieceStudy> studies_;
    std::vector<Check> checks_;
};

}  // namespace

void Tally::add(const Tally& other) {
    for (const auto& [how, often] : other.ends) ends[how] += often;
    faults.insert(faults.end(), other.faults.begin(), other.faults.end());
    if (other.slowest_seconds <= slowest_seconds) return;
    slowest = other.slowest;
    slowest_seconds = other.slowest_seconds;
}

void try_toy(std::uint64_t number, const Shares& shares, Tally& tally) {
    const auto began = std::chrono::steady_clock::now();
    try {
        Trial(number, tally).run(shares);
    } catch (const std::exception& problem) {
        tally.faults.push_back("toy " + std::to_string(number) + ": thrown: " + problem.what());
    }
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
    if (took.count() <= tally.slowest_seconds) return;
    tally.slowest = number;
    tally.slowest_seconds = took.count();
}

}  // namespace roundwright::torture
