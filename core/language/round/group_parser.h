#pragma once

#include "core/language/round/count_parser.h"

namespace roundwright {

/// Reads what follows a bracket or a closing star: how often, or in which stitch, it is worked.
class GroupParser : public CountParser {
  public:
    using CountParser::CountParser;

  protected:
    void group_tail(Node& node);
    void place_group(Node& node, const Where& where);
    static void fill(Extent& extent, const Where& where);

  private:
    static void set_part(Node& node, LoopPart part);
    static Stitch with_part(Stitch stitch, LoopPart part);
    void shell(Node& node, const Where& where);
};

}  // namespace roundwright
