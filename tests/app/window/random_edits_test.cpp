// A maker types hundreds of random edits into the window and ends them in random ways; a clerk beside the
// window keeps the toy as it should be, by the pure edits of core, and after each edit both are held against
// each other.
//
// A key costs no time here: the program gets to work between some keys and not between others, as if it were
// busy. ROUNDWRIGHT_TYPING_PACE=1 types as a person does, 60 to 200 ms a key, with stalls of 0.3 s.

#include <algorithm>
#include <gtest/gtest.h>
#include <random>

#include <QStatusBar>

#include "app/rounds/round_counts.h"
#include "core/rounds/piece_graph.h"
#include "core/toy/edits.h"
#include "tests/app/window/maker_at_the_window.h"
#include "tests/support/random_cases.h"

namespace roundwright::app {
namespace {

struct TypedCount {
    bool change = false;
    int value = 0;

    [[nodiscard]] QString text() const {
        if (!change) return QString::number(value);
        return value == 0
                   ? QStringLiteral("=")
                   : QStringLiteral("%1%2").arg(QLatin1Char(value > 0 ? '+' : '-')).arg(std::abs(value));
    }
};

/// What the toy should be.
struct Clerk {
    Toy toy;
    std::size_t at = 0;  ///< the piece on show

    Piece& piece() { return toy.pieces[at]; }
    [[nodiscard]] const Piece& piece() const { return toy.pieces[at]; }
    [[nodiscard]] int rounds() const { return static_cast<int>(piece().rounds.size()); }
    [[nodiscard]] int below(int row) const { return edge_counts(piece())[static_cast<std::size_t>(row)]; }

    [[nodiscard]] Round next_round() const {
        Round round = piece().rounds.empty() ? Round{} : piece().rounds.back();
        if (!std::holds_alternative<WorkedEvenly>(round.working))
            round.working = WorkedEvenly{std::max(below(rounds()), 1)};
        round.lies_flat = false;
        round.note.clear();
        return round;
    }
    void count(const std::vector<int>& rows, const TypedCount& typed) {
        if (rows.front() == rounds()) {
            Round round = next_round();
            std::get<WorkedEvenly>(round.working).stitches =
                std::max(typed.change ? below(rounds()) + typed.value : typed.value, 1);
            piece().rounds.push_back(round);
            return;
        }
        piece() = (typed.change ? change_counts(piece(), rows, typed.value, edge_counts(piece()))
                                : set_counts(piece(), rows, typed.value))
                      .value;
    }
    void write(int row, const QString& words) {
        if (row == rounds()) {
            Round round = next_round();
            std::get<WorkedEvenly>(round.working).stitches = std::max(below(rounds()), 1);
            piece().rounds.push_back(round);
        }
        YarnTable yarns;
        for (const Yarn& yarn : toy.yarns) yarns.names.push_back(yarn.name);
        const auto index = static_cast<std::size_t>(row);
        piece().rounds[index] = read_cell(piece(), index, words.toStdString(), Terms::us, yarns).round;
    }
};

enum class Ending {
    enter,
    tab,
    backtab,
    up,
    down,
    click,
    save,
    tab_of_piece,
    piece_key,
    other_window,
    close,
    undo,
    line,
    escape
};
constexpr const char* end_names[] = {"Enter",   "Tab",        "Shift+Tab", "Up",        "Down",
                                     "a click", "Ctrl+S",     "a tab",     "Ctrl+Page", "another window",
                                     "closing", "undo, redo", "Ctrl+J",    "Escape"};

class RandomEdits : public ::testing::Test {
  protected:
    RandomEdits() {
        clerk.toy = maker.session.toy();
        maker.after_each_key = [this] { rest(); };
    }

    int pick(int least, int most) { return std::uniform_int_distribution(least, most)(random); }
    bool one_in(int many) { return pick(1, many) == 1; }

    /// Between two keys.
    void rest() {
        if (at_a_persons_pace) {
            const int ms = pick(60, 200);
            return stalled ? QTest::qSleep(ms) : QTest::qWait(ms);
        }
        if (stalled || one_in(2)) return;
        QCoreApplication::processEvents();
        if (one_in(20)) wait_for_shape(maker.session);
    }

    // --- what is typed

    TypedCount any_count() {
        if (one_in(4)) return {true, pick(-8, 8)};
        return {false, pick(3, 60)};
    }
    QString any_words(int below) {
        if (below == 0) return QStringLiteral("%1 sc in magic ring").arg(pick(4, 9));
        const int parts = pick(2, 8);
        const int part = below / parts;
        const QString repeats[] = {QStringLiteral("[dec, sc %1] x %2").arg(part - 2).arg(parts),
                                   QStringLiteral("[sc %1, dec] x %2").arg(part - 2).arg(parts),
                                   QStringLiteral("[inc, sc %1] x %2").arg(part - 1).arg(parts),
                                   QStringLiteral("[sc %1, inc] x %2").arg(part - 1).arg(parts)};
        if (part > 2 && part * parts == below && !one_in(3)) return repeats[pick(0, 3)];
        const QString others[] = {QStringLiteral("hdc in each st around"),
                                  QStringLiteral("sc in each st around"),
                                  QStringLiteral("inc around"),
                                  QStringLiteral("sc %1").arg(below),
                                  QStringLiteral("sc %1").arg(below + 1),
                                  QStringLiteral("sc 2, inc 3, sc"),
                                  QStringLiteral("inc in each st"),
                                  QStringLiteral("something else 4")};
        return others[pick(0, 7)];
    }

    // --- how it ends

    Ending any_end() {
        static constexpr Ending often[] = {Ending::enter, Ending::enter, Ending::enter, Ending::tab,
                                           Ending::down,  Ending::up,    Ending::click};
        if (!one_in(3)) return often[pick(0, 6)];
        return static_cast<Ending>(pick(0, 13));
    }
    void put_popup_away(Ending how) {
        const auto* popup = qobject_cast<QAbstractItemView*>(QApplication::activePopupWidget());
        const bool chosen = popup && popup->currentIndex().isValid();
        if (!popup) return;
        if (how != Ending::enter || chosen) maker.press(Qt::Key_Escape);
    }
    void end(Ending how) {
        said << QLatin1String(end_names[static_cast<int>(how)]);
        put_popup_away(how);
        switch (how) {
            case Ending::enter:
                return maker.press(Qt::Key_Return);
            case Ending::tab:
                return maker.press(Qt::Key_Tab);
            case Ending::backtab:
                return maker.press(Qt::Key_Backtab, Qt::ShiftModifier);
            case Ending::up:
                return maker.press(Qt::Key_Up);
            case Ending::down:
                return maker.press(Qt::Key_Down);
            case Ending::click:
                return maker.click_cell(pick(0, maker.table().model()->rowCount() - 1));
            case Ending::save:
                return save();
            case Ending::tab_of_piece:
                return maker.click_tab(1 - static_cast<int>(clerk.at));
            case Ending::piece_key:
                return maker.press(clerk.at == 0 ? Qt::Key_PageDown : Qt::Key_PageUp, Qt::ControlModifier);
            case Ending::other_window:
                return maker.glance_at_another_window();
            case Ending::close:
                return maker.nearly_close();
            case Ending::undo:
                maker.choose(QStringLiteral("Edit"), QStringLiteral("Undo"));
                return maker.choose(QStringLiteral("Edit"), QStringLiteral("Redo"));
            case Ending::line:
                return maker.press(Qt::Key_J, Qt::ControlModifier);
            case Ending::escape:
                return maker.press(Qt::Key_Escape);
        }
    }
    void save() {
        maker.press(Qt::Key_S, Qt::ControlModifier);
        EXPECT_EQ(write_document(load_document_file(maker.file()).document.toy),
                  write_document(maker.session.toy()));
        EXPECT_FALSE(maker.session.modified());
    }
    /// Where the maker is now, for the clerk.
    void follow(Ending how) {
        if (how == Ending::tab_of_piece || how == Ending::piece_key) clerk.at = 1 - clerk.at;
        if (how == Ending::undo) clerk.at = static_cast<std::size_t>(maker.session.current_piece());
    }

    // --- the edits

    /// Types into a cell of the table and ends there; what is typed counts unless it is taken back.
    void in_the_table(const std::function<void()>& typing, const std::function<void(Clerk&)>& change) {
        const Clerk before = clerk;
        const int steps = maker.session.undo_stack().index();
        typing();
        const Ending how = any_end();
        end(how);
        if (how != Ending::escape) change(clerk);
        follow(how);
        const bool changed = !(clerk.toy == before.toy);
        EXPECT_EQ(maker.session.undo_stack().index(), steps + (changed ? 1 : 0)) << "one step";
        if (how == Ending::enter && changed && one_in(6)) take_back(before);
    }
    void take_back(const Clerk& before) {
        said << QStringLiteral("Ctrl+Z");
        maker.press(Qt::Key_Z, Qt::ControlModifier);
        clerk = before;
    }
    int any_row() { return one_in(3) ? clerk.rounds() : pick(0, clerk.rounds()); }

    void count() {
        const int row = any_row();
        const TypedCount typed = any_count();
        said << QStringLiteral("count %1 at %2").arg(typed.text()).arg(row);
        in_the_table(
            [&] {
                maker.click_cell(row, one_in(4) ? RoundColumn::change : RoundColumn::stitches);
                maker.type(typed.text());
            },
            [&](Clerk& toy) { toy.count({row}, typed); });
    }
    void words() {
        const int row = any_row();
        const QString typed = any_words(clerk.below(row));
        said << QStringLiteral("words %1 at %2").arg(typed).arg(row);
        in_the_table(
            [&] {
                maker.begin_words(row);
                maker.type(typed);
            },
            [&](Clerk& toy) { toy.write(row, typed); });
    }
    void several() {
        if (clerk.rounds() < 4) return count();
        const int first = pick(0, clerk.rounds() - 4);
        const int more = pick(1, 3);
        const TypedCount typed = any_count();
        std::vector<int> rows;
        for (int row = first; row <= first + more; ++row) rows.push_back(row);
        said << QStringLiteral("count %1 at %2 to %3").arg(typed.text()).arg(first).arg(rows.back());
        in_the_table(
            [&] {
                maker.click_cell(first);
                for (int row = 0; row < more; ++row) maker.press(Qt::Key_Down, Qt::ShiftModifier);
                maker.type(typed.text());
            },
            [&](Clerk& toy) { toy.count(rows, typed); });
    }
    /// One count after another, as fast as the keys go.
    void run_of_counts() {
        int row = any_row();
        maker.click_cell(row);
        for (int more = pick(2, 5); more > 0; --more, ++row) {
            const TypedCount typed = any_count();
            said << QStringLiteral("count %1 at %2, and on").arg(typed.text()).arg(row);
            maker.type(typed.text());
            maker.press(one_in(2) ? Qt::Key_Return : Qt::Key_Down);
            clerk.count({row}, typed);
        }
    }
    void line() {
        maker.press(Qt::Key_J, Qt::ControlModifier);
        maker.press(Qt::Key_A, Qt::ControlModifier);
        const int first = pick(4, 40);
        const int second = pick(4, 40);
        said << QStringLiteral("line %1x2, %2").arg(first).arg(second);
        maker.type(QStringLiteral("%1x2, %2").arg(first).arg(second));
        maker.press(Qt::Key_Return);
        for (const int value : {first, first, second}) clerk.count({clerk.rounds()}, {false, value});
    }
    void start_over() {
        said << QStringLiteral("start over");
        maker.press(Qt::Key_7, Qt::AltModifier);
        maker.press(Qt::Key_A, Qt::ControlModifier);
        maker.press(Qt::Key_Delete);
        clerk.piece().rounds.clear();
    }
    void note() {
        if (clerk.rounds() == 0) return;
        const int row = pick(0, clerk.rounds() - 1);
        const QString typed = QStringLiteral("turn %1").arg(pick(1, 99));
        said << QStringLiteral("note at %1").arg(row);
        maker.click_cell(row);
        maker.through_a_dialog(Qt::Key_M, Qt::ControlModifier, [&](QDialog& dialog) {
            maker.press(Qt::Key_A, Qt::ControlModifier);
            maker.type(typed);
            dialog.accept();
        });
        clerk.piece().rounds[static_cast<std::size_t>(row)].note = typed.toStdString();
    }
    void name() {
        const QString typed = QStringLiteral("Piece %1").arg(pick(1, 999));
        const bool kept = !one_in(4);
        said << QStringLiteral("name");
        maker.through_a_dialog(Qt::Key_F2, Qt::ShiftModifier, [&](QDialog&) {
            maker.press(Qt::Key_A, Qt::ControlModifier);
            maker.type(typed);
            maker.press(kept ? Qt::Key_Return : Qt::Key_Escape);
        });
        if (kept) clerk.piece().name = typed.toStdString();
    }
    void yarn_name() {
        const int yarn = pick(0, static_cast<int>(clerk.toy.yarns.size()) - 1);
        const QString typed = QStringLiteral("Yarn %1").arg(pick(1, 999));
        said << QStringLiteral("yarn");
        maker.begin_yarn_name(yarn);
        maker.type(typed);
        Ending how = any_end();
        if (how == Ending::up || how == Ending::down || how == Ending::undo) how = Ending::enter;
        end(how);
        follow(how);
        if (how != Ending::escape) clerk.toy.yarns[static_cast<std::size_t>(yarn)].name = typed.toStdString();
    }
    void field() {
        const int typed = pick(1, 99);
        said << QStringLiteral("make %1").arg(typed);
        maker.begin_make();
        maker.type(QString::number(typed));
        Ending how = any_end();
        // Up and Down step the field, Escape means nothing to it.
        if (how == Ending::up || how == Ending::down || how == Ending::escape || how == Ending::undo)
            how = Ending::enter;
        end(how);
        clerk.piece().make = typed;
        follow(how);
    }

    /// Where the keyboard is and what the window says, for whoever looks into a failure.
    std::string where() {
        const QWidget* keyboard = MakerAtTheWindow::under_the_keys();
        return std::string("\nkeyboard: ") + (keyboard ? keyboard->metaObject()->className() : "nowhere") +
               "\nline: " + maker.window->fast_entry().line()->text().toStdString() + " -> " +
               maker.window->fast_entry().understood().toStdString() +
               "\nstatus: " + maker.window->statusBar()->currentMessage().toStdString();
    }
    void edit() {
        if (said.size() > 12) said = said.mid(said.size() - 12);
        said << QStringLiteral("|");
        stalled = one_in(3);
        if (stalled && at_a_persons_pace) QTest::qSleep(300);
        if (clerk.rounds() > 40) start_over();
        const int which = pick(1, 100);
        if (which <= 35) return count();
        if (which <= 65) return words();
        if (which <= 77) return run_of_counts();
        if (which <= 83) return several();
        if (which <= 89) return line();
        if (which <= 91) return note();
        if (which <= 93) return name();
        if (which <= 96) return yarn_name();
        field();
    }

    const bool at_a_persons_pace = qEnvironmentVariableIsSet("ROUNDWRIGHT_TYPING_PACE");
    std::mt19937 random{20'240'611};
    MakerAtTheWindow maker{toy_to_type_into()};
    Clerk clerk;
    bool stalled = false;
    QStringList said;
};

TEST_F(RandomEdits, ReachTheToyAsTheyWereTyped) {
    if (QGuiApplication::platformName() == QStringLiteral("offscreen"))
        GTEST_SKIP() << "popups of windows in memory take the keyboard with them";
    const int edits = testing::random_cases(500);
    for (int at = 0; at < edits; ++at) {
        edit();
        const std::string what = std::to_string(at) + (stalled ? ", stalled: " : ": ") +
                                 said.join(QStringLiteral(", ")).toStdString() + where();
        ASSERT_EQ(maker.session.current_piece(), static_cast<int>(clerk.at)) << what;
        ASSERT_EQ(write_document(maker.session.toy()), write_document(clerk.toy)) << what;
        ASSERT_FALSE(HasFailure()) << what;
    }
}

}  // namespace
}  // namespace roundwright::app
