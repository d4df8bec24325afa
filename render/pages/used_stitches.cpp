#include "render/pages/used_stitches.h"

#include <algorithm>

namespace roundwright::render {
namespace {

class Collector {
  public:
    void piece(const Piece& piece, const StitchGraph& graph, std::size_t index) {
        at_ = {index, -1};
        start(piece.start);
        if (piece.joining == Joining::rows) add(Technique::chain);
        for (std::size_t i = 0; i < graph.rounds.size(); ++i) {
            at_.round = static_cast<int>(i);
            round(graph.rounds[i]);
            if (piece.joining == Joining::joined) {
                add(Technique::slip_stitch);
                add(Technique::chain);
            }
        }
        at_.round = static_cast<int>(graph.rounds.size());
        add(piece.end == End::drawn_closed ? Technique::draw_closed : Technique::fasten_off);
        if (piece.end == End::sewn_straight) add(Technique::sew_straight);
    }

    std::vector<UsedTechnique> take() { return std::move(used_); }

  private:
    void add(Technique technique) {
        const auto known = std::find_if(used_.begin(), used_.end(), [&](const UsedTechnique& used) {
            return used.technique == technique;
        });
        if (known == used_.end()) used_.push_back({technique, at_});
    }

    void start(const Start& start) {
        if (std::holds_alternative<MagicRing>(start)) return add(Technique::magic_ring);
        if (const auto* on = std::get_if<WorkedOn>(&start)) {
            if (on->chains_between > 0) add(Technique::chain);
            return;
        }
        add(Technique::chain);
        if (std::holds_alternative<OvalChain>(start)) return add(Technique::oval_start);
        add(Technique::foundation_ring);
        add(Technique::slip_stitch);
    }

    void round(const GraphRound& round) {
        for (std::size_t i = 0; i < round.stitches.size(); ++i) {
            const Stitch& stitch = round.stitches[i].stitch;
            if (yarn_ >= 0 && yarn_ != stitch.yarn && !(at_.round == 0 && i == 0))
                add(Technique::change_yarn);
            yarn_ = stitch.yarn;
            worked(stitch);
        }
    }

    void worked(const Stitch& stitch) {
        add(kind(stitch.kind));
        if (stitch.part == LoopPart::front) add(Technique::front_loop);
        if (stitch.part == LoopPart::back) add(Technique::back_loop);
        if (stitch.same_foot && stitch.kind == StitchKind::single_crochet) add(Technique::increase);
        if (stitch.feet < 2) return;
        const bool plain = stitch.kind == StitchKind::single_crochet && stitch.feet == 2;
        if (plain)
            add(stitch.invisible ? Technique::invisible_decrease : Technique::decrease);
        else
            add(Technique::together);
    }

    static Technique kind(StitchKind kind) {
        switch (kind) {
            case StitchKind::chain:
                return Technique::chain;
            case StitchKind::slip_stitch:
                return Technique::slip_stitch;
            case StitchKind::single_crochet:
                return Technique::single_crochet;
            case StitchKind::half_double_crochet:
                return Technique::half_double_crochet;
            case StitchKind::double_crochet:
                return Technique::double_crochet;
            case StitchKind::treble_crochet:
                return Technique::treble_crochet;
            case StitchKind::bobble:
                return Technique::bobble;
            case StitchKind::skip:
                return Technique::skip;
        }
        return Technique::single_crochet;
    }

    std::vector<UsedTechnique> used_;
    FirstUse at_;
    int yarn_ = -1;
};

}  // namespace

std::vector<UsedTechnique> used_techniques(const Toy& toy, const std::vector<const PieceGraph*>& graphs) {
    Collector collector;
    for (std::size_t i = 0; i < std::min(toy.pieces.size(), graphs.size()); ++i) {
        collector.piece(toy.pieces[i], graphs[i]->graph, i);
    }
    return collector.take();
}

}  // namespace roundwright::render
