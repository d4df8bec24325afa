#include "render/scene/feature_scene_part.h"

#include <utility>

namespace roundwright::render {
namespace {

Finish finish_of(roundwright::Finish finish) {
    switch (finish) {
        case roundwright::Finish::glossy:
            return Finish::glossy;
        case roundwright::Finish::felt:
            return Finish::felt;
        case roundwright::Finish::yarn:
            return Finish::yarn;
    }
    return Finish::yarn;
}

}  // namespace

ScenePart scene_part(FeaturePart part) {
    return {std::move(part.mesh), finish_of(part.finish), !part.inside};
}

}  // namespace roundwright::render
