#include "core/toy/piece_list.h"

#include <algorithm>
#include <atomic>
#include <utility>

#include "core/toy/toy.h"

namespace roundwright {

PieceList::PieceList(std::initializer_list<Piece> pieces) {
    for (const Piece& piece : pieces) push_back(piece);
}

PieceList::PieceList(std::vector<Piece> pieces) {
    for (Piece& piece : pieces) push_back(std::move(piece));
}

PieceList::PieceList(std::vector<Piece> pieces, std::span<const PieceId> wanted) {
    const std::vector<PieceId> ids = unique_piece_ids(wanted);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        slots_.push_back({ids[i], std::make_shared<Piece>(std::move(pieces[i]))});
        last_id_ = std::max(last_id_, ids[i]);
    }
}

std::optional<std::size_t> PieceList::index_of(PieceId id) const {
    const auto found = std::ranges::find(slots_, id, &Slot::id);
    if (found == slots_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - slots_.begin());
}

bool PieceList::same(const Slot& a, const Slot& b) {
    return a.id == b.id && (a.piece == b.piece || *a.piece == *b.piece);
}

bool operator==(const PieceList& a, const PieceList& b) {
    return std::ranges::equal(a.slots_, b.slots_, &PieceList::same);
}

Piece& PieceList::own(Slot& slot) {
    if (slot.piece.use_count() > 1) slot.piece = std::make_shared<Piece>(std::as_const(*slot.piece));
    // The last other owner may have let go in another thread: what it read came before what is written now.
    std::atomic_thread_fence(std::memory_order_acquire);
    return *slot.piece;
}

PieceList::Slot PieceList::new_slot(std::shared_ptr<Piece> piece) {
    std::vector<PieceId> taken;
    for (const Slot& slot : slots_) taken.push_back(slot.id);
    const PieceId id = new_piece_id(last_id_, taken);
    last_id_ = std::max(last_id_, id);
    return {id, std::move(piece)};
}

void PieceList::push_back(Piece piece) { insert(cend(), std::move(piece)); }

Piece& PieceList::emplace_back() {
    push_back(Piece{});
    return back();
}

void PieceList::insert(const_iterator at, Piece piece) {
    slots_.insert(slots_.begin() + at.index_, new_slot(std::make_shared<Piece>(std::move(piece))));
}

void PieceList::insert(const_iterator at, const_iterator first, const_iterator last) {
    const std::vector<Slot> others(first.list_->slots_.begin() + first.index_,
                                   first.list_->slots_.begin() + last.index_);
    difference_type place = at.index_;
    for (const Slot& other : others) slots_.insert(slots_.begin() + place++, new_slot(other.piece));
}

void PieceList::resize(std::size_t size) {
    if (size < slots_.size()) slots_.resize(size);
    while (slots_.size() < size) push_back(Piece{});
}

void PieceList::erase(const_iterator at) { erase(at, at + 1); }

void PieceList::erase(const_iterator first, const_iterator last) {
    slots_.erase(slots_.begin() + first.index_, slots_.begin() + last.index_);
}

void PieceList::move(std::size_t from, std::size_t to) {
    const auto place = [this](std::size_t index) {
        return slots_.begin() + static_cast<difference_type>(index);
    };
    const Slot moved = slots_[from];
    slots_.erase(place(from));
    slots_.insert(place(std::min(to, slots_.size())), moved);
}

}  // namespace roundwright
