#pragma once

#include <cstdint>

#include "core/language/round/token_cursor.h"

namespace roundwright {

/// "in next 4 sts", "in each st around", "BLO", "in magic ring", ...: what follows (or goes before) a
/// stitch's name.
struct Where {
    enum class Place : std::uint8_t { none, next, each_of_next, each, same, ring, from_hook };
    Place place = Place::none;
    int loops = 1;
    bool number_said = false;
    bool around = false;
    bool last = false;
    int to_last = -1;  ///< loops left alone; -1: not said
    std::optional<LoopPart> part;

    bool says_place() const { return place != Place::none || around || to_last >= 0; }
    bool said() const { return says_place() || part; }
    bool is_over_next() const { return place == Place::next || place == Place::each_of_next; }
    bool fills() const { return around || to_last >= 0 || place == Place::each; }
    Extent extent() const;  ///< of what is worked there once in each loop
};

/// `more`, said after `where`, of the same stitch.
[[nodiscard]] Where merged(const Where& where, const Where& more);

/// Reads places.
class PlaceParser : public TokenCursor {
  public:
    using TokenCursor::TokenCursor;

  protected:
    Where parse_where();
    bool parse_part(Where& where);
    bool parse_ring(Where& where, bool preposition);
    bool parse_ordinal(Where& where);
    bool accept_around();

  private:
    bool parse_where_once(Where& where);
    bool skip_articles(Where& where);
    bool parse_around(Where& where);
    bool parse_to_last(Where& where);
    bool parse_place(Where& where, bool preposition);
    bool parse_each(Where& where);
    bool parse_next(Where& where);
    bool parse_same(Where& where);
    bool parse_rest(Where& where);
    bool parse_bare_place(Where& where);
    bool is_times_next(std::size_t ahead) const {
        return is("times", ahead) || is("x", ahead) || is("time", ahead);
    }
};

}  // namespace roundwright
