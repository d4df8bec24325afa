#pragma once

#include "core/language/round/place_parser.h"

namespace roundwright {

/// A stitch with everything said about it.
struct Item {
    Name name;
    std::optional<StitchKind> shaped;  ///< the stitch of "hdc inc", "dc dec"
    int lead = 0;                      ///< number before the name; 0: none
    int trail = 0;                     ///< number after it; 0: none
    int together = 0;                  ///< loops drawn together; 0: not said
    int times = 1;
    bool invisible = false;
    Where where;
    TextSpan span;

    int number() const { return lead > 0 ? lead : trail; }
};

/// Reads one stitch, in the many ways the trade says it, and makes of it what is worked.
class StitchParser : public PlaceParser {
  public:
    using PlaceParser::PlaceParser;

  protected:
    /// Reads a stitch at the cursor; leaves the cursor where it was when there is none. `lead`: a place said
    /// before it ("in next st, 2 sc"); `part`: a loop said before it ("BLO 2 sc").
    std::optional<Item> parse_item(const Where& lead, std::optional<LoopPart> part);
    Node node_of(const Item& item);

    /// "x 6", "6 times", "* 6", "twice", "(6 times)"; a bare number only after a bracket.
    bool parse_times(Extent& extent, bool after_bracket);
    /// "times", "more times", "times more"; true when there is a "more".
    bool accept_more();
    int choice() { return syntax_.choices++; }

    bool worked_ = false;  ///< a stitch has been read
    int open_stars_ = 0;

  private:
    bool item_head(Item& item);
    bool number_in_each(Item& item);
    bool lone_ring_number(Item& item);
    void take_name(Item& item, const Name& name);
    bool other_terms_beside(Item& item);
    void take_second_name(Item& item, StitchKind first, const Name& second);
    void item_tail(Item& item);
    void parse_together(Item& item);
    void set_together(Item& item, int number, std::size_t start);
    void trailing_number(Item& item);
    bool times_number(int& number, bool& more, bool bare);

    Work work_of(const Item& item, Stitch stitch, int copies);
    static Extent extent_of(const Item& item, int number);
    Work skipped(const Item& item);
    Work chained(const Item& item);
    void build_decrease(Node& node, const Item& item);
    void build_increase(Node& node, const Item& item);
    void build_plain(Node& node, const Item& item);
    void or_else(Node& node, const Item& item, const Stitch& stitch, int copies, int loops);
};

}  // namespace roundwright
