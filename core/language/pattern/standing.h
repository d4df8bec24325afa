#pragma once

#include <vector>

#include "core/language/pattern/reading_state.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {

/// What the next round of a pattern stands on.
class Standing {
  public:
    explicit Standing(ReadingState& state) : state_(state) {}

    /// A piece begins; until one does, a round can only be worked into a ring.
    void begin(const Start& start);
    void end();

    /// Reads a round on what stands below.
    [[nodiscard]] ReadRound read(const std::vector<Token>& tokens, YarnTable& yarns);
    /// The same to find out what a line is; what all the trials of a text may work is held.
    [[nodiscard]] ReadRound try_read(const std::vector<Token>& tokens, YarnTable& yarns);
    /// Looks for mends of the words of a round that comes out, but not to its count.
    void mend_words(ReadRound& read, const std::vector<Token>& tokens, const YarnTable& yarns);
    /// The round has been taken: the next one stands on it.
    void add(const ReadRound& read, const Round& round);
    /// The same for a round that was read before, as it was made.
    void add(const GraphRound& made, const Round& round);

    const RoundBelow& below() const { return below_; }
    int yarn() const { return yarn_; }
    void set_yarn(int yarn) { yarn_ = yarn; }

  private:
    RoundSetting setting_on(const RoundBelow& below) const;
    ReadRound read_on(const RoundBelow& below, const std::vector<Token>& tokens, YarnTable& yarns);

    ReadingState& state_;
    RoundBelow below_{.into_ring = true};
    bool begun_ = false;
    int yarn_ = 0;
};

}  // namespace roundwright
