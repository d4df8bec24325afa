#include "app/session/assembly.h"

#include <algorithm>
#include <utility>

namespace roundwright::app {
namespace {

bool same_for_placing(const Toy& a, const Toy& b) {
    return a.joins == b.joins && a.stance == b.stance && a.pieces == b.pieces && a.hook_mm == b.hook_mm &&
           a.gauge == b.gauge && a.yarns == b.yarns;
}

/// Each copy is drawn, so that the triangles are shared out among them.
std::size_t triangles_a_copy(const Toy& toy, std::size_t all) {
    constexpr std::size_t least = 500;
    std::size_t copies = 0;
    for (const Piece& piece : toy.pieces) copies += static_cast<std::size_t>(std::max(piece.make, 1));
    return std::max(least, all / std::max<std::size_t>(copies, 1));
}

}  // namespace

bool Assembly::Inputs::operator==(const Inputs& other) const {
    if (studies != other.studies || most_triangles != other.most_triangles) return false;
    return toy == other.toy || (toy && other.toy && same_for_placing(*toy, *other.toy));
}

Assembly::Assembly(const Studies& studies, QObject* parent) : QObject(parent), studies_(studies) {
    wanted_.most_triangles = most_picture_triangles;
    connect(&background_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) {
                running_ = false;
                Q_EMIT failed(why);
            });
}

void Assembly::set_wanted(bool wanted) {
    is_wanted_ = wanted;
    bring_up_to_date();
}

void Assembly::follow(const Toy& toy) {
    wanted_.toy = std::make_shared<const Toy>(toy);
    bring_up_to_date();
}

void Assembly::set_most_triangles(std::size_t triangles) {
    wanted_.most_triangles = triangles;
    bring_up_to_date();
}

void Assembly::clear() {
    background_.cancel();
    measuring_.cancel();
    running_ = false;
    made_.reset();
    made_of_ = {};
    wanted_.studies.clear();
}

/// False while a shape is still on its way: joins and shapes of two states are never put together.
bool Assembly::find_studies() {
    wanted_.studies.clear();
    for (std::size_t piece = 0; piece < wanted_.toy->pieces.size(); ++piece) {
        const PieceId id = wanted_.toy->pieces.id(piece);
        if (!studies_.shape_is_known(id)) return false;
        wanted_.studies.push_back(studies_.shape_study(id));
    }
    return true;
}

void Assembly::bring_up_to_date() {
    if (!is_wanted_ || running_ || wanted_.toy == nullptr) return;
    if (!find_studies() || is_up_to_date()) return;
    start();
}

// One at a time, and what came meanwhile is taken up after it: a drag sees every toy that it can keep up
// with.
void Assembly::start() {
    running_ = true;
    background_.start(render::Lane::next_key,
                      [this, of = wanted_, before = made_](const render::TaskRun&) -> render::Delivery {
                          RevolveOptions options;
                          options.relief = Relief::shaded;
                          options.most_triangles = triangles_a_copy(*of.toy, of.most_triangles);
                          auto made = std::make_shared<const AssembledToy>(
                              put_in_place(of.toy, of.studies, before.get(), options));
                          return [this, of, made] { take(of, made); };
                      });
}

/// Of pieces that are no longer the toy's it is stale, and dropped.
void Assembly::take(const Inputs& of, std::shared_ptr<const AssembledToy> made) {
    running_ = false;
    const bool stale = wanted_.toy == nullptr || !(of.toy->pieces == wanted_.toy->pieces);
    if (!stale) {
        made_ = std::move(made);
        made_of_ = of;
        Q_EMIT changed();
        measure();
    }
    bring_up_to_date();
}

/// Once it rests: while it is dragged, the measures of the place before are of no use.
void Assembly::measure() {
    measuring_.start_latest(render::Lane::longer,
                            [this, of = made_](const render::TaskRun&) -> render::Delivery {
                                auto with_measures = std::make_shared<const AssembledToy>(measured(*of));
                                return [this, of, with_measures] {
                                    if (made_ != of) return;
                                    made_ = with_measures;
                                    Q_EMIT changed();
                                };
                            });
}

}  // namespace roundwright::app
