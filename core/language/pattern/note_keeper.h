#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/language/pattern/piece_reader.h"
#include "core/language/pattern/waiting_text.h"

namespace roundwright {

/// Keeps the text of a pattern that is not worked: as notes of the round, the piece or the toy it stands
/// with, as assembly or as finishing. What it says of a piece is heard; what may be rounds is told.
class NoteKeeper {
  public:
    explicit NoteKeeper(ReadingState& state) : state_(state) {}

    /// `piece`: the one that is being read; null: none. `ending`: no round of it follows.
    void keep(const std::vector<WaitingLine>& lines, PieceReader* piece, bool ending);

  private:
    void hear(const std::vector<WaitingLine>& lines, PieceReader* piece) const;
    std::vector<bool> lines_of_known_sentences(const std::vector<WaitingLine>& lines) const;
    void keep_line(const WaitingLine& waiting, PieceReader* piece, bool ending, bool known);
    void put(const WaitingLine& waiting, const std::string& text, PieceReader* piece);
    bool tell(const WaitingLine& waiting, const NoteMeaning& meaning);

    ReadingState& state_;
};

/// Text of a note, without "Note:" before it.
[[nodiscard]] std::span<const Token> note_words(std::span<const Token> tokens);

/// The front of a long line, as a diagnostic says it.
[[nodiscard]] std::string shortened(const std::string& text);

/// "sc = single crochet", "inc: 2 sc in next st", "MR - magic ring": what an abbreviation means.
[[nodiscard]] bool is_definition(std::span<const Token> tokens, Terms terms);

}  // namespace roundwright
