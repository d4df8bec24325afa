#include <gtest/gtest.h>
#include <memory>
#include <random>

#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"
#include "tests/support/random_cases.h"

namespace roundwright::app {
namespace {

/// A toy that shares nothing with any other: its bytes.
std::string plain(const Toy& toy) { return write_document(toy); }

/// A session and beside it what it should hold, as plain copies: the states that undo goes through, and what
/// is previewed.
class RandomSession {
  public:
    explicit RandomSession(unsigned seed) : random_(seed) {
        Toy toy = toy_of({6, 12, 18});
        toy.pieces.push_back(piece_of({6, 9}, "Fin"));
        session_.start(toy);
        states_ = {plain(toy)};
        kept_.push_back(session_.said_toy());
        kept_plain_.push_back(states_.front());
    }

    void step() {
        switch (below(9)) {
            case 0:
                session_.undo_stack().undo();
                if (at_ > 0) go_to(at_ - 1);
                break;
            case 1:
                session_.undo_stack().redo();
                if (at_ + 1 < states_.size()) go_to(at_ + 1);
                break;
            case 2:
            case 3:
                show();
                break;
            case 4:
                if (preview_) preview_->commit();
                if (previewed_) said(*previewed_);
                preview_.reset();
                break;
            case 5:
                preview_.reset();
                previewed_.reset();
                break;
            case 6:
                keep();
                break;
            default:
                edit();
        }
    }

    void expect_as_said(int at) const {
        ASSERT_EQ(plain(session_.said_toy()), states_[at_]) << at;
        ASSERT_EQ(plain(session_.toy()), previewed_ ? *previewed_ : states_[at_]) << at;
        for (std::size_t i = 0; i < kept_.size(); ++i) ASSERT_EQ(plain(kept_[i]), kept_plain_[i]) << at;
    }

  private:
    std::size_t below(std::size_t count) { return random_() % count; }

    void go_to(std::size_t state) {
        at_ = state;
        previewed_.reset();
    }

    void said(std::string state) {
        previewed_.reset();
        if (state == states_[at_]) return;
        states_.resize(++at_);
        states_.push_back(std::move(state));
    }

    void edit() {
        const Toy after = changed(session_.said_toy());
        const std::string state = plain(after);
        session_.edit(QStringLiteral("Edit"), after);
        said(state);
    }

    void show() {
        const Toy shown = changed(session_.said_toy());
        preview_ = std::make_unique<LivePreview>(session_, QString());
        preview_->show(shown);
        previewed_ = plain(shown);
    }

    /// Values that others hold on to stay as they were.
    void keep() {
        const std::size_t place = kept_.size() < 5 ? kept_.size() : below(5);
        kept_.resize(std::max(kept_.size(), place + 1));
        kept_plain_.resize(kept_.size());
        kept_[place] = session_.toy();
        kept_plain_[place] = plain(session_.toy());
    }

    Toy changed(Toy toy) {
        const auto pick = [this](const PieceList& pieces) { return below(pieces.size()); };
        switch (below(7)) {
            case 0:
                toy.title += "x";
                break;
            case 1:
                if (toy.pieces.size() < 5)
                    toy.pieces.insert(
                        toy.pieces.begin() + static_cast<std::ptrdiff_t>(below(toy.pieces.size() + 1)),
                        piece_of({6, 9}, "Fin"));
                break;
            case 2:
                if (toy.pieces.size() > 1)
                    toy.pieces.erase(toy.pieces.begin() + static_cast<std::ptrdiff_t>(pick(toy.pieces)));
                break;
            case 3:
                toy.pieces.move(pick(toy.pieces), pick(toy.pieces));
                break;
            case 4:
                toy.pieces[pick(toy.pieces)].make += 1;
                break;
            default: {
                auto& rounds = toy.pieces[pick(toy.pieces)].rounds;
                if (rounds.size() > 4)
                    rounds.pop_back();
                else
                    rounds.push_back({WorkedEvenly{static_cast<int>(below(12)) + 6}, 0, false, ""});
            }
        }
        return toy;
    }

    std::mt19937 random_;
    DocumentSession session_;
    std::unique_ptr<LivePreview> preview_;
    std::vector<std::string> states_;
    std::size_t at_ = 0;
    std::optional<std::string> previewed_;
    std::vector<Toy> kept_;
    std::vector<std::string> kept_plain_;
};

TEST(RandomSession, EditsUndoRedoAndPreviewsLeakIntoNoOtherToy) {
    for (unsigned seed = 1; seed <= static_cast<unsigned>(testing::random_cases(20)); ++seed) {
        RandomSession session(seed);
        for (int at = 0; at < 150; ++at) {
            session.step();
            ASSERT_NO_FATAL_FAILURE(session.expect_as_said(at)) << "seed " << seed;
            if (at % 10 == 0) QCoreApplication::processEvents();
        }
    }
}

}  // namespace
}  // namespace roundwright::app
