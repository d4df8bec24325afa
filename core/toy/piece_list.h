#pragma once

#include <compare>
#include <cstddef>
#include <initializer_list>
#include <iterator>
#include <memory>
#include <optional>
#include <span>
#include <type_traits>
#include <vector>

#include "core/toy/piece_id.h"

namespace roundwright {

struct Piece;

/// The pieces of a toy, in their order, each with its id. Copies of a list share all their pieces; what is
/// reached through a list that is not const is first made that list's own ("copy on write"), so reading goes
/// through a const list. A piece that takes another's place by assignment takes over its id.
///
/// A reference or an iterator from a list that is not const is good until that list is copied: writing
/// through it afterwards would change the copy as well.
class PieceList {
    template <bool is_const>
    class Iterator;

  public:
    using value_type = Piece;
    using size_type = std::size_t;
    using difference_type = std::ptrdiff_t;
    using reference = Piece&;
    using const_reference = const Piece&;
    using iterator = Iterator<false>;
    using const_iterator = Iterator<true>;

    PieceList() = default;
    /// Give each piece a new id.
    PieceList(std::initializer_list<Piece> pieces);
    PieceList(std::vector<Piece> pieces);
    /// With the ids that the pieces ask for, as far as `unique_piece_ids` grants them; one a piece.
    PieceList(std::vector<Piece> pieces, std::span<const PieceId> wanted);

    [[nodiscard]] std::size_t size() const { return slots_.size(); }
    [[nodiscard]] bool empty() const { return slots_.empty(); }

    [[nodiscard]] const Piece& operator[](std::size_t index) const { return *slots_[index].piece; }
    [[nodiscard]] const Piece& at(std::size_t index) const { return *slots_.at(index).piece; }
    [[nodiscard]] const Piece& front() const { return *slots_.front().piece; }
    [[nodiscard]] const Piece& back() const { return *slots_.back().piece; }
    [[nodiscard]] Piece& operator[](std::size_t index) { return own(slots_[index]); }
    [[nodiscard]] Piece& at(std::size_t index) { return own(slots_.at(index)); }
    [[nodiscard]] Piece& front() { return own(slots_.front()); }
    [[nodiscard]] Piece& back() { return own(slots_.back()); }

    [[nodiscard]] PieceId id(std::size_t index) const { return slots_[index].id; }
    [[nodiscard]] std::optional<std::size_t> index_of(PieceId id) const;
    /// A piece to hold on to: what a list does afterwards leaves it as it is.
    [[nodiscard]] std::shared_ptr<const Piece> shared(std::size_t index) const { return slots_[index].piece; }

    [[nodiscard]] const_iterator begin() const;
    [[nodiscard]] const_iterator end() const;
    [[nodiscard]] const_iterator cbegin() const;
    [[nodiscard]] const_iterator cend() const;
    [[nodiscard]] iterator begin();
    [[nodiscard]] iterator end();

    // What comes in gets a new id.
    void push_back(Piece piece);
    Piece& emplace_back();
    void insert(const_iterator at, Piece piece);
    /// Pieces of another list, shared with it.
    void insert(const_iterator at, const_iterator first, const_iterator last);
    void resize(std::size_t size);

    void erase(const_iterator at);
    void erase(const_iterator first, const_iterator last);
    void pop_back() { slots_.pop_back(); }
    void clear() { slots_.clear(); }
    /// Moves a piece to the place `to`, counted after it was taken out; to the end where that is beyond it.
    void move(std::size_t from, std::size_t to);

    /// The same pieces with the same ids.
    friend bool operator==(const PieceList& a, const PieceList& b);
    /// Whether piece `i` of `a` is piece `k` of `b`, unchanged: shared pieces are not looked into.
    friend bool same_piece(const PieceList& a, std::size_t i, const PieceList& b, std::size_t k) {
        return same(a.slots_[i], b.slots_[k]);
    }

  private:
    struct Slot {
        PieceId id = PieceId::none;
        std::shared_ptr<Piece> piece;
    };

    [[nodiscard]] static bool same(const Slot& a, const Slot& b);
    /// The slot's piece, shared with nobody.
    [[nodiscard]] static Piece& own(Slot& slot);
    [[nodiscard]] Slot new_slot(std::shared_ptr<Piece> piece);

    std::vector<Slot> slots_;
    PieceId last_id_ = PieceId::none;  ///< the largest given so far, so that none is given twice
};

template <bool is_const>
class PieceList::Iterator {
    using List = std::conditional_t<is_const, const PieceList, PieceList>;

  public:
    using iterator_category = std::random_access_iterator_tag;
    using value_type = Piece;
    using difference_type = std::ptrdiff_t;
    using reference = std::conditional_t<is_const, const Piece&, Piece&>;
    using pointer = std::conditional_t<is_const, const Piece*, Piece*>;

    Iterator() = default;
    Iterator(List& list, difference_type index) : list_(&list), index_(index) {}
    operator Iterator<true>() const requires(!is_const) { return {*list_, index_}; }

    reference operator*() const { return (*list_)[static_cast<std::size_t>(index_)]; }
    pointer operator->() const { return &**this; }
    reference operator[](difference_type by) const { return *(*this + by); }

    Iterator& operator+=(difference_type by) {
        index_ += by;
        return *this;
    }
    Iterator& operator-=(difference_type by) { return *this += -by; }
    Iterator& operator++() { return *this += 1; }
    Iterator& operator--() { return *this += -1; }
    Iterator operator++(int) {
        const Iterator before = *this;
        ++*this;
        return before;
    }
    Iterator operator--(int) {
        const Iterator before = *this;
        --*this;
        return before;
    }
    friend Iterator operator+(Iterator at, difference_type by) { return at += by; }
    friend Iterator operator+(difference_type by, Iterator at) { return at += by; }
    friend Iterator operator-(Iterator at, difference_type by) { return at -= by; }
    friend difference_type operator-(const Iterator& a, const Iterator& b) { return a.index_ - b.index_; }
    friend bool operator==(const Iterator& a, const Iterator& b) { return a.index_ == b.index_; }
    friend auto operator<=>(const Iterator& a, const Iterator& b) { return a.index_ <=> b.index_; }

  private:
    friend class PieceList;
    List* list_ = nullptr;
    difference_type index_ = 0;
};

inline PieceList::const_iterator PieceList::begin() const { return {*this, 0}; }
inline PieceList::const_iterator PieceList::end() const {
    return {*this, static_cast<difference_type>(size())};
}
inline PieceList::const_iterator PieceList::cbegin() const { return begin(); }
inline PieceList::const_iterator PieceList::cend() const { return end(); }
inline PieceList::iterator PieceList::begin() { return {*this, 0}; }
inline PieceList::iterator PieceList::end() { return {*this, static_cast<difference_type>(size())}; }

}  // namespace roundwright
