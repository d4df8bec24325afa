#include "core/assembly/assembled_studies.h"

#include "core/assembly/study_solved.h"
#include "core/mesh/build_mesh.h"
#include "core/study/study_surface.h"

namespace roundwright {
AssembledToy assemble(const Toy& toy, std::span<const PieceStudy> studies,
                      const std::optional<RevolveOptions>& surfaces, const AssembledToy* before) {
    std::vector<SolvedPiece> solved;
    std::vector<std::shared_ptr<const StitchSurface>> own(studies.size());
    for (std::size_t piece = 0; piece < studies.size(); ++piece) {
        const bool old = before && piece < before->solved.size();
        solved.push_back(solved_piece(toy, piece, studies[piece], old ? &before->solved[piece] : nullptr));
        if (!surfaces || !studies[piece].measures().converged()) continue;
        own[piece] =
            std::make_shared<const StitchSurface>(study_surface(toy, piece, studies[piece], *surfaces));
    }
    return assemble(toy, std::move(solved), std::move(own), before);
}

std::vector<FeaturePart> placed_features(const AssembledToy& toy, std::size_t index) {
    const SolvedPiece& solved = toy.solved[toy.placed.pieces[index].solved];
    std::vector<FeaturePart> parts =
        feature_parts(solved.piece->features, solved.surface, solved.stitches, solved.fabric_mm);
    for (FeaturePart& part : parts) part.mesh = placed_mesh(part.mesh, toy.forms[index]);
    return parts;
}

StitchSurface one_surface(std::span<const std::shared_ptr<const StitchSurface>> surfaces) {
    StitchSurface sum;
    sum.first_stitch_of_round = {0};
    for (const auto& surface : surfaces) {
        if (!surface || surface->mesh.indices.empty()) continue;
        const auto before = static_cast<std::int32_t>(sum.stitches.size());
        append(sum.mesh, surface->mesh, before);
        append(sum.stitches, surface->stitches);
        for (std::size_t round = 1; round < surface->first_stitch_of_round.size(); ++round)
            sum.first_stitch_of_round.push_back(static_cast<std::uint32_t>(before) +
                                                surface->first_stitch_of_round[round]);
    }
    return sum;
}

}  // namespace roundwright
