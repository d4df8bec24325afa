#include <algorithm>
#include <functional>
#include <gtest/gtest.h>
#include <random>

#include <QDir>

#include "app/on_disk/file_follower.h"
#include "tests/app/on_disk/changing_files.h"
#include "tests/support/random_cases.h"

namespace roundwright::app {
namespace {

/// A maker who edits, undoes, saves and chooses, and another program that does anything to the file at the
/// same time. A model knows what the maker has seen of it.
class RandomChanges {
  public:
    explicit RandomChanges(unsigned seed) : random_(seed) {
        write_in_place(pup_, toy_bytes({6, 12}));
        EXPECT_FALSE(session_.open(pup_));
        known_ = bytes_in(pup_);
    }

    void step() {
        static const std::vector<void (RandomChanges::*)()> steps{
            &RandomChanges::edit,         &RandomChanges::edit,         &RandomChanges::undo,
            &RandomChanges::redo,         &RandomChanges::save,         &RandomChanges::save,
            &RandomChanges::take_theirs,  &RandomChanges::keep_mine,    &RandomChanges::keep_both,
            &RandomChanges::write_theirs, &RandomChanges::write_theirs, &RandomChanges::write_garbage,
            &RandomChanges::remove,       &RandomChanges::touch,        &RandomChanges::put_back,
            &RandomChanges::let_be,       &RandomChanges::look};
        (this->*steps[below(static_cast<int>(steps.size()))])();
        if (below(3) == 0) QTest::qWait(below(40));
        expect_a_toy_of_ones_own();
    }
    /// When all is quiet, what is told is what is so.
    void expect_the_truth() {
        session_.path() == pup_ ? void() : pup_changed();
        const auto is_true = [this] { return session_.standing().on_disk == really(); };
        EXPECT_TRUE(wait_until(is_true)) << static_cast<int>(session_.standing().on_disk) << " is told, "
                                         << static_cast<int>(really()) << " is so";
        const bool unsaved = session_.said_toy() != toy_in(known_);
        if (unsaved) {
            EXPECT_TRUE(session_.modified());
        }
    }

  private:
    [[nodiscard]] int below(int most) { return std::uniform_int_distribution<int>(0, most - 1)(random_); }
    [[nodiscard]] static Toy toy_in(const QByteArray& bytes) {
        return read_document({bytes.constData(), static_cast<std::size_t>(bytes.size())}).toy;
    }
    [[nodiscard]] QByteArray there() const {
        QFile file(pup_);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("nothing");
    }
    [[nodiscard]] OnDisk really() const {
        const QByteArray bytes = there();
        if (bytes == known_) return OnDisk::same;
        if (!QFile::exists(pup_)) return OnDisk::gone;
        try {
            static_cast<void>(toy_in(bytes));
            return OnDisk::changed;
        } catch (const DocumentError&) {
            return OnDisk::unreadable;
        }
    }
    void pup_changed() { pup_ = session_.path(); }

    void edit() { set_first_count(session_, ++count_); }
    void undo() { session_.undo_stack().undo(); }
    void redo() { session_.undo_stack().redo(); }
    void let_be() { QTest::qWait(below(300)); }
    void look() { follower_.look(); }
    void save() {
        const QByteArray before = there();
        const auto problem = session_.save(session_.path());
        if (problem) {
            EXPECT_EQ(there(), before) << "nothing is written";
            EXPECT_NE(before, known_);
            return;
        }
        EXPECT_TRUE(before == known_ || before == "nothing") << "only what was known is written over";
        known_ = there();
        EXPECT_EQ(toy_in(known_), session_.said_toy());
    }
    void take_theirs() {
        const QByteArray before = there();
        const Toy mine = session_.said_toy();
        if (follower_.take_theirs()) {
            EXPECT_EQ(session_.said_toy(), mine);
            return;
        }
        known_ = before;
        const bool is_step = session_.said_toy() != mine;
        if (is_step) {
            undo();
            EXPECT_EQ(session_.said_toy(), mine) << "one step brings mine back";
            redo();
        }
        EXPECT_FALSE(session_.modified());
    }
    void keep_mine() {
        const QByteArray theirs = there();
        const OnDisk found = really();
        EXPECT_FALSE(follower_.keep_mine());
        known_ = there();
        EXPECT_EQ(toy_in(known_), session_.said_toy());
        if (found != OnDisk::changed) return;
        const VersionStore versions(state_);
        const auto kept = versions.versions_of(session_.path());
        EXPECT_TRUE(std::ranges::any_of(kept, [&](const Version& version) {
            return versions.read(version).bytes == theirs;
        })) << "theirs stays as a version";
    }
    void keep_both() {
        if (really() != OnDisk::changed) return;
        const QString theirs = pup_;
        const QByteArray before = there();
        EXPECT_FALSE(follower_.keep_both());
        EXPECT_EQ(bytes_in(theirs), before);
        pup_changed();
        known_ = there();
        EXPECT_EQ(toy_in(known_), session_.said_toy());
    }
    void write_theirs() {
        const QByteArray theirs = toy_bytes({++count_, 16});
        below(2) == 0 ? rename_over(pup_, theirs) : write_in_place(pup_, theirs);
    }
    void write_garbage() { write_in_place(pup_, known_.left(below(static_cast<int>(known_.size() - 10)))); }
    void remove() { QFile::remove(pup_); }
    void touch() {
        if (QFile::exists(pup_)) rename_over(pup_, there());
    }
    void put_back() { rename_over(pup_, known_); }

    void expect_a_toy_of_ones_own() { ASSERT_FALSE(session_.said_toy().pieces.empty()); }

    std::mt19937 random_;
    QTemporaryDir folder_;
    QString state_ = folder_.filePath(QStringLiteral("state"));
    QString pup_ = folder_.filePath(QStringLiteral("pup.roundwright"));
    DocumentSession session_;
    FileFollower follower_{session_, state_};
    QByteArray known_;
    int count_ = 20;
};

TEST(RandomChangesTest, NothingUnseenIsWrittenOverAndNothingOfTheMakersIsLost) {
    for (int seed = 1; seed <= roundwright::testing::random_cases(12) && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        RandomChanges changes(static_cast<unsigned>(seed));
        for (int step = 0; step < 40; ++step) {
            changes.step();
            if (step % 20 == 19) changes.expect_the_truth();
        }
    }
}

}  // namespace
}  // namespace roundwright::app
