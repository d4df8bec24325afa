#pragma once

#include <deque>
#include <functional>
#include <random>
#include <string>

#include <QDialog>
#include <QObject>
#include <QPointer>

#include "app/window/main_window.h"
#include "tests/torture/hands.h"
#include "tests/torture/memory.h"

namespace roundwright::torture {

/// A maker in the process of the real window, who comes by himself to the first window of a process that the
/// torture program has started (`seed_variable` is set): types at random, saves, undoes, opens, answers
/// dialogs, and tells on the journal what the window holds. Obeys commands, one a line:
///   type / rest           go on typing; stop
///   save, save as PATH, open PATH, undo, close      as by the keyboard; close answers the question at random
///   answer FIND CHOICE    from now on, a dialog that offers FIND is answered by CHOICE
///
/// Tells:
///   settled               the window is open and asks nothing
///   state TOY TYPED PATH MODIFIED    what the window holds now
///   key, doing WHAT       what the maker does
///   asked KIND WORDS ANSWERS CHOICE  a dialog, and how it was answered
///   told WORDS            what the window says without asking: a notice, the status line
///   saving, saved PATH TOY, stands PATH TOY    the toy is being saved, was saved, was read from the disk
///   given_up              the maker let go what was in the window
///   late MS               the window's thread did nothing for so long
///   waited NS             since its start, it would have gone on for so long and had no processor
///   (waited_ns)
class Maker : public QObject {
  public:
    explicit Maker(app::MainWindow& window);

  private:
    // What is told.
    void tell(const std::string& kind, std::vector<std::string> fields = {});
    void tell_state();
    void tell_file();
    void tell_notices();
    void follow();

    // What is watched.
    void watch();
    void settle();
    void answer(QDialog& dialog);
    [[nodiscard]] QString choice(const Question& question);
    void answer_file_dialog(QDialog& dialog);
    void obey();
    void obey(const QString& command);

    // What is done.
    void step();
    void plan();
    void plan_line();
    void plan_cell();
    void plan_words();
    void plan_undo();
    void plan_places();
    void plan_files();
    void answer_notice();
    void later(std::function<void()> act) { plan_.push_back(std::move(act)); }
    void type(const QString& text);
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {});
    void save();
    void save_as(const QString& path);
    void open(const QString& path);
    [[nodiscard]] int pick(int from, int to) { return std::uniform_int_distribution<int>(from, to)(random_); }
    [[nodiscard]] bool one_in(int many) { return pick(1, many) == 1; }

    app::MainWindow& window_;
    Hands hands_;
    std::mt19937 random_;
    int shortest_pause_ms_ = 60;
    int longest_pause_ms_ = 200;

    Toy said_;
    std::string toy_hash_;
    Moment told_;
    QString told_notice_;
    std::int64_t watched_ns_ = 0;
    std::int64_t told_wait_ns_ = 0;
    int quiet_ = 0;
    int waits_ = 0;
    bool settled_ = false;
    bool typing_ = true;
    bool saving_ = false;
    bool given_up_ = false;
    bool thinks_better_of_it_ = false;

    QString wanted_path_;
    QPointer<QDialog> answering_;
    QByteArray unread_;
    std::deque<QString> commands_;
    std::vector<std::pair<QString, QString>> answers_;
    std::deque<std::function<void()>> plan_;
};

}  // namespace roundwright::torture
