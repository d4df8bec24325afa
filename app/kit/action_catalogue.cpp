#include "app/kit/action_catalogue.h"

#include <algorithm>
#include <stdexcept>

#include <QCoreApplication>

namespace roundwright::app {
namespace {

using Place = ActionPlace;

/// The usual keys of an action, as the compiler can hold them.
struct Keys {
    QKeySequence::StandardKey standard = QKeySequence::UnknownKey;
    int first = 0;
    int second = 0;     ///< pressed after the first
    int otherwise = 0;  ///< does the same
};
constexpr Keys standard(QKeySequence::StandardKey key) { return {key}; }
constexpr Keys keys(QKeyCombination one) { return {QKeySequence::UnknownKey, one.toCombined()}; }
constexpr Keys keys(QKeyCombination one, QKeyCombination other) {
    return {QKeySequence::UnknownKey, one.toCombined(), 0, other.toCombined()};
}

// One key after the other, for what is chosen once in a while. No desktop takes these: Ctrl+Alt and a letter
// locks the screen, opens a terminal or switches workspaces on many (GNOME, KDE, Xfce; common practice).
constexpr Keys after_ctrl_b(Qt::Key key) {
    return {QKeySequence::UnknownKey, (Qt::CTRL | Qt::Key_B).toCombined(), key};
}

constexpr Keys after_ctrl_b_shift(Qt::Key key) {
    return {QKeySequence::UnknownKey, (Qt::CTRL | Qt::Key_B).toCombined(), (Qt::SHIFT | key).toCombined()};
}

QList<QKeySequence> sequences(const Keys& of) {
    if (of.standard != QKeySequence::UnknownKey) return {QKeySequence(of.standard)};
    QList<QKeySequence> all{QKeySequence(of.first, of.second)};
    if (of.otherwise != 0) all << QKeySequence(of.otherwise);
    return all;
}

struct PlaceEntry {
    Place place;
    ActionWindow window;
    const char* text;
    Place within;  ///< the menu that holds this one; itself: the menu bar or the window
};
constexpr PlaceEntry places[] = {
    {Place::file, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&File"), Place::file},
    {Place::recent, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Open &recent"), Place::file},
    {Place::samples, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Open a sa&mple"), Place::file},
    {Place::edit, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Edit"), Place::edit},
    {Place::lengths, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Lengths in"), Place::edit},
    {Place::look, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Loo&k"), Place::edit},
    {Place::text_size, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Text size"), Place::look},
    {Place::round, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Round"), Place::round},
    {Place::piece, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Piece"), Place::piece},
    {Place::start, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Start"), Place::piece},
    {Place::worked, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Worked"), Place::piece},
    {Place::toy, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "W&hole toy"), Place::piece},
    {Place::shape, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Shape"), Place::shape},
    {Place::on_the_face, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Move on the f&ace"), Place::shape},
    {Place::pattern, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "P&attern"), Place::pattern},
    {Place::languages, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Terms in another &language"),
     Place::pattern},
    {Place::go, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Go"), Place::go},
    {Place::panels, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "Go to &a panel"), Place::go},
    {Place::help, ActionWindow::main, QT_TRANSLATE_NOOP("Actions", "&Help"), Place::help},
    {Place::work_along, ActionWindow::work_along, QT_TRANSLATE_NOOP("Actions", "Work along"),
     Place::work_along},
    {Place::preview, ActionWindow::preview, QT_TRANSLATE_NOOP("Actions", "Pattern preview"), Place::preview},
    {Place::review, ActionWindow::review, QT_TRANSLATE_NOOP("Actions", "Reading a pattern"), Place::review},
    {Place::beside, ActionWindow::beside, QT_TRANSLATE_NOOP("Actions", "Every other window"), Place::beside},
};

struct Row {
    const char* id;
    Place place;
    const char* text;
    Keys usual;
    const char* icon = "";
};
constexpr Row rows[] = {
    {"file.new", Place::file, QT_TRANSLATE_NOOP("Actions", "&New toy"), standard(QKeySequence::New), "new"},
    {"file.open", Place::file, QT_TRANSLATE_NOOP("Actions", "&Open…"), standard(QKeySequence::Open), "open"},
    {"file.save", Place::file, QT_TRANSLATE_NOOP("Actions", "&Save"), standard(QKeySequence::Save), "save"},
    {"file.save-as", Place::file, QT_TRANSLATE_NOOP("Actions", "Save &as…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_S)},
    {"file.kept-copies", Place::file, QT_TRANSLATE_NOOP("Actions", "&Kept copies…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_K)},
    {"file.take-theirs", Place::file, QT_TRANSLATE_NOOP("Actions", "Take &what is in the file"),
     keys(Qt::Key_F5)},
    {"file.about-toy", Place::file, QT_TRANSLATE_NOOP("Actions", "About this &toy…"),
     keys(Qt::ALT | Qt::Key_Return), "note"},
    {"file.versions", Place::file, QT_TRANSLATE_NOOP("Actions", "Earlier &versions…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_H)},
    {"file.picture", Place::file, QT_TRANSLATE_NOOP("Actions", "Save a p&icture…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_P)},
    {"file.mesh", Place::file, QT_TRANSLATE_NOOP("Actions", "Save a &3D file…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_M)},
    {"file.close", Place::file, QT_TRANSLATE_NOOP("Actions", "&Close the window"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_W)},
    {"file.quit", Place::file, QT_TRANSLATE_NOOP("Actions", "&Quit"), keys(Qt::CTRL | Qt::Key_Q)},
    {"recent.1", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &1"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_1)},
    {"recent.2", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &2"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_2)},
    {"recent.3", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &3"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_3)},
    {"recent.4", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &4"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_4)},
    {"recent.5", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &5"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_5)},
    {"recent.6", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &6"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_6)},
    {"recent.7", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &7"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_7)},
    {"recent.8", Place::recent, QT_TRANSLATE_NOOP("Actions", "Recent toy &8"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_8)},
    {"sample.seal-pup", Place::samples, QT_TRANSLATE_NOOP("Actions", "Seal &pup"), after_ctrl_b(Qt::Key_P)},
    {"sample.puffin", Place::samples, QT_TRANSLATE_NOOP("Actions", "P&uffin"), after_ctrl_b(Qt::Key_F)},
    {"sample.starfish", Place::samples, QT_TRANSLATE_NOOP("Actions", "&Starfish"), after_ctrl_b(Qt::Key_S)},
    {"edit.undo", Place::edit, QT_TRANSLATE_NOOP("Actions", "&Undo"), standard(QKeySequence::Undo), "undo"},
    {"edit.redo", Place::edit, QT_TRANSLATE_NOOP("Actions", "&Redo"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Z, Qt::CTRL | Qt::Key_Y), "redo"},
    {"edit.cut", Place::edit, QT_TRANSLATE_NOOP("Actions", "Cu&t"), standard(QKeySequence::Cut)},
    {"edit.copy", Place::edit, QT_TRANSLATE_NOOP("Actions", "&Copy"), standard(QKeySequence::Copy)},
    {"edit.paste", Place::edit, QT_TRANSLATE_NOOP("Actions", "&Paste"), standard(QKeySequence::Paste)},
    {"edit.copy-piece", Place::edit, QT_TRANSLATE_NOOP("Actions", "Cop&y piece"), after_ctrl_b(Qt::Key_Z)},
    {"edit.paste-piece", Place::edit, QT_TRANSLATE_NOOP("Actions", "Past&e piece"), after_ctrl_b(Qt::Key_V)},
    {"edit.select-all", Place::edit, QT_TRANSLATE_NOOP("Actions", "Select &all rounds"),
     standard(QKeySequence::SelectAll)},
    {"edit.shortcuts", Place::edit, QT_TRANSLATE_NOOP("Actions", "Keyboard &shortcuts…"),
     after_ctrl_b(Qt::Key_B)},
    {"lengths.mm", Place::lengths, QT_TRANSLATE_NOOP("Actions", "&Millimetres"), after_ctrl_b(Qt::Key_M)},
    {"lengths.inches", Place::lengths, QT_TRANSLATE_NOOP("Actions", "&Inches"), after_ctrl_b(Qt::Key_I)},
    {"look.system", Place::look, QT_TRANSLATE_NOOP("Actions", "Same as the &system"),
     after_ctrl_b(Qt::Key_Y)},
    {"look.light", Place::look, QT_TRANSLATE_NOOP("Actions", "&Light"), after_ctrl_b(Qt::Key_L)},
    {"look.dark", Place::look, QT_TRANSLATE_NOOP("Actions", "&Dark"), after_ctrl_b(Qt::Key_D)},
    {"look.more-contrast", Place::look, QT_TRANSLATE_NOOP("Actions", "More &contrast"),
     after_ctrl_b(Qt::Key_C)},
    {"text-size.100", Place::text_size, QT_TRANSLATE_NOOP("Actions", "Same as the &system"),
     after_ctrl_b(Qt::Key_0)},
    {"text-size.125", Place::text_size, QT_TRANSLATE_NOOP("Actions", "125 %"), after_ctrl_b(Qt::Key_8)},
    {"text-size.150", Place::text_size, QT_TRANSLATE_NOOP("Actions", "150 %"), after_ctrl_b(Qt::Key_9)},
    {"text-size.200", Place::text_size, QT_TRANSLATE_NOOP("Actions", "200 %"), after_ctrl_b(Qt::Key_X)},
    {"look.reduce-motion", Place::look, QT_TRANSLATE_NOOP("Actions", "Reduce &motion"),
     after_ctrl_b(Qt::Key_R)},
    {"round.add-after", Place::round, QT_TRANSLATE_NOOP("Actions", "&New round after"),
     keys(Qt::CTRL | Qt::Key_Return), "add"},
    {"round.add-before", Place::round, QT_TRANSLATE_NOOP("Actions", "New round &before"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Return)},
    {"round.repeat", Place::round, QT_TRANSLATE_NOOP("Actions", "&Repeat"), keys(Qt::CTRL | Qt::Key_D),
     "repeat"},
    {"round.delete", Place::round, QT_TRANSLATE_NOOP("Actions", "&Delete"), keys(Qt::Key_Delete), "remove"},
    {"round.earlier", Place::round, QT_TRANSLATE_NOOP("Actions", "Move &earlier"), keys(Qt::ALT | Qt::Key_Up),
     "up"},
    {"round.later", Place::round, QT_TRANSLATE_NOOP("Actions", "Move &later"), keys(Qt::ALT | Qt::Key_Down),
     "down"},
    {"round.count", Place::round, QT_TRANSLATE_NOOP("Actions", "Set t&he count"), keys(Qt::Key_F4)},
    {"round.words", Place::round, QT_TRANSLATE_NOOP("Actions", "&Words of the round"), keys(Qt::Key_F2)},
    {"round.fix-words", Place::round, QT_TRANSLATE_NOOP("Actions", "Fi&x the words"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_F8)},
    {"round.evenly", Place::round, QT_TRANSLATE_NOOP("Actions", "Work e&venly"), keys(Qt::CTRL | Qt::Key_E)},
    {"round.stagger", Place::round, QT_TRANSLATE_NOOP("Actions", "Sta&gger the increases"),
     after_ctrl_b(Qt::Key_W)},
    {"round.flat", Place::round, QT_TRANSLATE_NOOP("Actions", "Meant to lie &flat"),
     keys(Qt::CTRL | Qt::Key_L)},
    {"round.note", Place::round, QT_TRANSLATE_NOOP("Actions", "N&ote…"), keys(Qt::CTRL | Qt::Key_M)},
    {"round.worked", Place::round, QT_TRANSLATE_NOOP("Actions", "Worked &up to here"),
     keys(Qt::SHIFT | Qt::Key_F9)},
    {"piece.new", Place::piece, QT_TRANSLATE_NOOP("Actions", "&New piece"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_N), "add"},
    {"piece.duplicate", Place::piece, QT_TRANSLATE_NOOP("Actions", "&Duplicate"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_D)},
    {"piece.rename", Place::piece, QT_TRANSLATE_NOOP("Actions", "&Rename…"), keys(Qt::SHIFT | Qt::Key_F2)},
    {"piece.delete", Place::piece, QT_TRANSLATE_NOOP("Actions", "D&elete piece"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Delete)},
    {"piece.previous", Place::piece, QT_TRANSLATE_NOOP("Actions", "&Previous piece"),
     keys(Qt::CTRL | Qt::Key_PageUp)},
    {"piece.next", Place::piece, QT_TRANSLATE_NOOP("Actions", "Ne&xt piece"),
     keys(Qt::CTRL | Qt::Key_PageDown)},
    {"piece.left", Place::piece, QT_TRANSLATE_NOOP("Actions", "Move to the &left"),
     keys(Qt::ALT | Qt::SHIFT | Qt::Key_Left)},
    {"piece.right", Place::piece, QT_TRANSLATE_NOOP("Actions", "Move to the ri&ght"),
     keys(Qt::ALT | Qt::SHIFT | Qt::Key_Right)},
    {"start.magic-ring", Place::start, QT_TRANSLATE_NOOP("Actions", "&Magic ring"), after_ctrl_b(Qt::Key_1)},
    {"start.chain-ring", Place::start, QT_TRANSLATE_NOOP("Actions", "&Chain ring…"), after_ctrl_b(Qt::Key_2)},
    {"start.tube", Place::start, QT_TRANSLATE_NOOP("Actions", "Open &tube…"), after_ctrl_b(Qt::Key_3)},
    {"start.oval", Place::start, QT_TRANSLATE_NOOP("Actions", "&Oval on a chain…"), after_ctrl_b(Qt::Key_4)},
    {"start.worked-on", Place::start, QT_TRANSLATE_NOOP("Actions", "On the &edges of others…"),
     after_ctrl_b(Qt::Key_G)},
    {"start.at-top", Place::start, QT_TRANSLATE_NOOP("Actions", "Starts at the to&p"),
     after_ctrl_b(Qt::Key_T)},
    {"worked.spiral", Place::worked, QT_TRANSLATE_NOOP("Actions", "In a &spiral"), after_ctrl_b(Qt::Key_5)},
    {"worked.joined", Place::worked, QT_TRANSLATE_NOOP("Actions", "In &joined rounds"),
     after_ctrl_b(Qt::Key_6)},
    {"worked.rows", Place::worked, QT_TRANSLATE_NOOP("Actions", "In &rows, turned"), after_ctrl_b(Qt::Key_7)},
    {"piece.drawn-closed", Place::piece, QT_TRANSLATE_NOOP("Actions", "Drawn &closed at the end"),
     after_ctrl_b(Qt::Key_E)},
    {"piece.make", Place::piece, QT_TRANSLATE_NOOP("Actions", "How &many…"), after_ctrl_b(Qt::Key_N)},
    {"piece.from-shape", Place::piece, QT_TRANSLATE_NOOP("Actions", "New &from a shape…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_F)},
    {"piece.upside-down", Place::piece, QT_TRANSLATE_NOOP("Actions", "&Turn upside down"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_T)},
    {"piece.join", Place::piece, QT_TRANSLATE_NOOP("Actions", "Join to an&other piece…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_J)},
    {"piece.keep", Place::piece, QT_TRANSLATE_NOOP("Actions", "&Keep as an own piece"),
     after_ctrl_b(Qt::Key_J)},
    {"piece.own", Place::piece, QT_TRANSLATE_NOOP("Actions", "Own p&ieces…"), after_ctrl_b(Qt::Key_O)},
    {"toy.whole", Place::toy, QT_TRANSLATE_NOOP("Actions", "Show the &whole toy"), keys(Qt::Key_F3)},
    {"toy.together", Place::toy, QT_TRANSLATE_NOOP("Actions", "&Put it together"), after_ctrl_b(Qt::Key_A)},
    {"toy.apart", Place::toy, QT_TRANSLATE_NOOP("Actions", "Pieces &apart"), keys(Qt::SHIFT | Qt::Key_F3)},
    {"toy.hide", Place::toy, QT_TRANSLATE_NOOP("Actions", "&Hide the piece"), after_ctrl_b(Qt::Key_H)},
    {"toy.show-all", Place::toy, QT_TRANSLATE_NOOP("Actions", "&Show all pieces"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_F3)},
    {"toy.turn-left", Place::toy, QT_TRANSLATE_NOOP("Actions", "&Turn the piece to the left"),
     keys(Qt::ALT | Qt::Key_Left)},
    {"toy.turn-right", Place::toy, QT_TRANSLATE_NOOP("Actions", "Turn the piece to the &right"),
     keys(Qt::ALT | Qt::Key_Right)},
    {"toy.lean-up", Place::toy, QT_TRANSLATE_NOOP("Actions", "&Lean up"), keys(Qt::ALT | Qt::Key_PageUp)},
    {"toy.lean-down", Place::toy, QT_TRANSLATE_NOOP("Actions", "Lean &down"),
     keys(Qt::ALT | Qt::Key_PageDown)},
    {"toy.lean-left", Place::toy, QT_TRANSLATE_NOOP("Actions", "Lea&n to the left"),
     keys(Qt::ALT | Qt::Key_Home)},
    {"toy.lean-right", Place::toy, QT_TRANSLATE_NOOP("Actions", "Lean t&o the right"),
     keys(Qt::ALT | Qt::Key_End)},
    {"shape.reshape", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Reshape…"), keys(Qt::CTRL | Qt::Key_R),
     "reshape"},
    {"shape.outline", Place::shape, QT_TRANSLATE_NOOP("Actions", "Pull the &outline…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_R)},
    {"shape.gauge-circle", Place::shape, QT_TRANSLATE_NOOP("Actions", "Measure a gauge &circle"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_G)},
    {"shape.gauge-from-piece", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Gauge from a finished piece…"),
     keys(Qt::CTRL | Qt::Key_G)},
    {"shape.front", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Front"), keys(Qt::CTRL | Qt::Key_1)},
    {"shape.side", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Side"), keys(Qt::CTRL | Qt::Key_2)},
    {"shape.top", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Top"), keys(Qt::CTRL | Qt::Key_3)},
    {"shape.back", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Back"), keys(Qt::CTRL | Qt::Key_4)},
    {"shape.bottom", Place::shape, QT_TRANSLATE_NOOP("Actions", "Botto&m"), keys(Qt::CTRL | Qt::Key_5)},
    {"shape.three-quarter", Place::shape, QT_TRANSLATE_NOOP("Actions", "Three-&quarter view"),
     keys(Qt::CTRL | Qt::Key_6)},
    {"shape.fit", Place::shape, QT_TRANSLATE_NOOP("Actions", "F&it"), keys(Qt::CTRL | Qt::Key_0), "fit"},
    {"shape.zoom-in", Place::shape, QT_TRANSLATE_NOOP("Actions", "Zoom i&n"), keys(Qt::CTRL | Qt::Key_Plus)},
    {"shape.zoom-out", Place::shape, QT_TRANSLATE_NOOP("Actions", "&Zoom out"),
     keys(Qt::CTRL | Qt::Key_Minus)},
    {"shape.turn-left", Place::shape, QT_TRANSLATE_NOOP("Actions", "Turn &left"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Left)},
    {"shape.turn-right", Place::shape, QT_TRANSLATE_NOOP("Actions", "Turn rig&ht"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Right)},
    {"shape.turn-up", Place::shape, QT_TRANSLATE_NOOP("Actions", "Turn &up"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Up)},
    {"shape.turn-down", Place::shape, QT_TRANSLATE_NOOP("Actions", "Turn &down"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_Down)},
    {"shape.words", Place::shape, QT_TRANSLATE_NOOP("Actions", "Round by round in &words…"),
     keys(Qt::CTRL | Qt::Key_I)},
    {"shape.stuffed", Place::shape, QT_TRANSLATE_NOOP("Actions", "Stuff&ed"), keys(Qt::CTRL | Qt::Key_T)},
    {"shape.every-stitch", Place::shape, QT_TRANSLATE_NOOP("Actions", "Stitch b&y stitch"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_B)},
    {"face.up", Place::on_the_face, QT_TRANSLATE_NOOP("Actions", "&Up a round"), keys(Qt::CTRL | Qt::Key_Up)},
    {"face.down", Place::on_the_face, QT_TRANSLATE_NOOP("Actions", "&Down a round"),
     keys(Qt::CTRL | Qt::Key_Down)},
    {"face.left", Place::on_the_face, QT_TRANSLATE_NOOP("Actions", "A stitch to the &left"),
     keys(Qt::CTRL | Qt::Key_Left)},
    {"face.right", Place::on_the_face, QT_TRANSLATE_NOOP("Actions", "A stitch to the &right"),
     keys(Qt::CTRL | Qt::Key_Right)},
    {"pattern.work-along", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&Work along…"), keys(Qt::Key_F9),
     "hook"},
    {"pattern.us-terms", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&US terms"), after_ctrl_b(Qt::Key_U)},
    {"pattern.uk-terms", Place::pattern, QT_TRANSLATE_NOOP("Actions", "U&K terms"), after_ctrl_b(Qt::Key_K)},
    {"languages.german", Place::languages, QT_TRANSLATE_NOOP("Actions", "&German terms"),
     after_ctrl_b_shift(Qt::Key_G)},
    {"languages.french", Place::languages, QT_TRANSLATE_NOOP("Actions", "&French terms"),
     after_ctrl_b_shift(Qt::Key_F)},
    {"languages.spanish", Place::languages, QT_TRANSLATE_NOOP("Actions", "&Spanish terms"),
     after_ctrl_b_shift(Qt::Key_S)},
    {"languages.dutch", Place::languages, QT_TRANSLATE_NOOP("Actions", "&Dutch terms"),
     after_ctrl_b_shift(Qt::Key_N)},
    {"languages.danish", Place::languages, QT_TRANSLATE_NOOP("Actions", "D&anish terms"),
     after_ctrl_b_shift(Qt::Key_D)},
    {"languages.portuguese", Place::languages, QT_TRANSLATE_NOOP("Actions", "&Portuguese terms"),
     after_ctrl_b_shift(Qt::Key_P)},
    {"languages.italian", Place::languages, QT_TRANSLATE_NOOP("Actions", "&Italian terms"),
     after_ctrl_b_shift(Qt::Key_I)},
    {"pattern.preview", Place::pattern, QT_TRANSLATE_NOOP("Actions", "Pre&view and print…"),
     standard(QKeySequence::Print), "print"},
    {"pattern.chart", Place::pattern, QT_TRANSLATE_NOOP("Actions", "Roun&d chart…"),
     keys(Qt::SHIFT | Qt::Key_F7)},
    {"pattern.open-text", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&Open pattern text…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_O)},
    {"pattern.paste-text", Place::pattern, QT_TRANSLATE_NOOP("Actions", "Pa&ste a pattern…"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_V)},
    {"pattern.copy-piece", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&Copy this piece as text"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_C)},
    {"pattern.copy-toy", Place::pattern, QT_TRANSLATE_NOOP("Actions", "Copy the whole &toy as text"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_A)},
    {"pattern.next-check", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&Next check"), keys(Qt::Key_F8)},
    {"pattern.previous-check", Place::pattern, QT_TRANSLATE_NOOP("Actions", "&Previous check"),
     keys(Qt::SHIFT | Qt::Key_F8)},
    {"pattern.fix-check", Place::pattern, QT_TRANSLATE_NOOP("Actions", "Fi&x the check"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_X)},
    {"go.next", Place::go, QT_TRANSLATE_NOOP("Actions", "On to the &next part of the window"),
     keys(Qt::Key_F6)},
    {"go.previous", Place::go, QT_TRANSLATE_NOOP("Actions", "&Back to the part before"),
     keys(Qt::SHIFT | Qt::Key_F6)},
    {"go.rounds", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the &rounds"), keys(Qt::ALT | Qt::Key_7)},
    {"go.line", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the next rounds &line"),
     keys(Qt::CTRL | Qt::Key_J)},
    {"go.shape", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the &shape"), keys(Qt::ALT | Qt::Key_8)},
    {"go.checks", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the &checks"), keys(Qt::ALT | Qt::Key_9)},
    {"go.panels", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the &panels"), keys(Qt::ALT | Qt::Key_0)},
    {"go.notices", Place::go, QT_TRANSLATE_NOOP("Actions", "Go to the no&tices"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_F6)},
    {"panel.yarn", Place::panels, QT_TRANSLATE_NOOP("Actions", "&Yarn and hook"), keys(Qt::ALT | Qt::Key_1)},
    {"panel.gauge", Place::panels, QT_TRANSLATE_NOOP("Actions", "&Gauge"), keys(Qt::ALT | Qt::Key_2)},
    {"panel.stuffing", Place::panels, QT_TRANSLATE_NOOP("Actions", "&Stuffing"), keys(Qt::ALT | Qt::Key_3)},
    {"panel.face", Place::panels, QT_TRANSLATE_NOOP("Actions", "&Face"), keys(Qt::ALT | Qt::Key_4)},
    {"panel.finish", Place::panels, QT_TRANSLATE_NOOP("Actions", "Start and f&inish"),
     keys(Qt::ALT | Qt::Key_5)},
    {"panel.plot", Place::panels, QT_TRANSLATE_NOOP("Actions", "&Along the rounds"),
     keys(Qt::ALT | Qt::Key_6)},
    {"panel.takes", Place::panels, QT_TRANSLATE_NOOP("Actions", "What it &takes and earns"),
     keys(Qt::ALT | Qt::SHIFT | Qt::Key_T)},
    {"help.keyboard", Place::help, QT_TRANSLATE_NOOP("Actions", "&Keyboard"), keys(Qt::Key_F1)},
    {"help.say-again", Place::help, QT_TRANSLATE_NOOP("Actions", "&Say again"), keys(Qt::Key_F7)},
    {"help.about", Place::help, QT_TRANSLATE_NOOP("Actions", "&About Roundwright"),
     keys(Qt::SHIFT | Qt::Key_F1)},
    {"work.done", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Round done"), keys(Qt::Key_PageDown)},
    {"work.back", Place::work_along, QT_TRANSLATE_NOOP("Actions", "A round back"), keys(Qt::Key_PageUp)},
    {"work.count", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Count a stitch"), keys(Qt::Key_Right)},
    {"work.stitch-back", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Take a stitch back"),
     keys(Qt::Key_Backspace, Qt::Key_Left)},
    {"work.where", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Where am I?"), keys(Qt::Key_Home)},
    {"work.say-again", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Say again"),
     keys(Qt::Key_End, Qt::Key_F7)},
    {"work.close", Place::work_along, QT_TRANSLATE_NOOP("Actions", "Close"), keys(Qt::Key_Escape)},
    {"preview.larger", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Larger"),
     standard(QKeySequence::ZoomIn)},
    {"preview.smaller", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Smaller"),
     standard(QKeySequence::ZoomOut)},
    {"preview.fit-width", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Fit width"),
     keys(Qt::CTRL | Qt::Key_0)},
    {"preview.actual-size", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Actual size"),
     keys(Qt::CTRL | Qt::Key_1)},
    {"preview.next-page", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Next page"),
     keys(Qt::CTRL | Qt::Key_PageDown)},
    {"preview.previous-page", Place::preview, QT_TRANSLATE_NOOP("Actions", "&Previous page"),
     keys(Qt::CTRL | Qt::Key_PageUp)},
    {"review.next", Place::review, QT_TRANSLATE_NOOP("Actions", "&Next finding"), keys(Qt::Key_F8)},
    {"review.previous", Place::review, QT_TRANSLATE_NOOP("Actions", "&Previous finding"),
     keys(Qt::SHIFT | Qt::Key_F8)},
    {"review.fix", Place::review, QT_TRANSLATE_NOOP("Actions", "Make the chosen &fix"),
     keys(Qt::CTRL | Qt::SHIFT | Qt::Key_X)},
    {"review.undo", Place::review, QT_TRANSLATE_NOOP("Actions", "Take the last change &back"),
     standard(QKeySequence::Undo), "undo"},
    {"review.text", Place::review, QT_TRANSLATE_NOOP("Actions", "Go to the &text"),
     keys(Qt::CTRL | Qt::Key_T)},
    {"review.add", Place::review, QT_TRANSLATE_NOOP("Actions", "&Add these pieces"),
     keys(Qt::CTRL | Qt::Key_Return)},
    {"beside.close", Place::beside, QT_TRANSLATE_NOOP("Actions", "Close the window in front"),
     keys(Qt::CTRL | Qt::Key_W)},
};

const PlaceEntry& entry_of(Place place) { return *std::ranges::find(places, place, &PlaceEntry::place); }

QString without_mark(QString text) { return text.remove(u'&'); }

std::vector<ActionEntry> all_actions() {
    std::vector<ActionEntry> all;
    for (const Row& row : rows)
        all.push_back(
            {QLatin1String(row.id), row.place, row.text, sequences(row.usual), QLatin1String(row.icon)});
    return all;
}

}  // namespace

const std::vector<ActionEntry>& action_catalogue() {
    static const std::vector<ActionEntry> all = all_actions();
    return all;
}

const ActionEntry& action_entry(const QString& id) {
    const auto found = std::ranges::find(action_catalogue(), id, &ActionEntry::id);
    if (found == action_catalogue().end()) throw std::out_of_range("no action " + id.toStdString());
    return *found;
}

ActionWindow window_of(ActionPlace place) { return entry_of(place).window; }

bool stands_in_menu_bar(ActionPlace place) {
    const PlaceEntry& entry = entry_of(place);
    return entry.window == ActionWindow::main && entry.within == place;
}

QString action_text(const ActionEntry& entry) { return QCoreApplication::translate("Actions", entry.text); }
QString action_name(const ActionEntry& entry) { return without_mark(action_text(entry)).remove(u'…'); }

QString place_text(ActionPlace place) { return QCoreApplication::translate("Actions", entry_of(place).text); }

QString place_name(ActionPlace place) {
    const PlaceEntry& entry = entry_of(place);
    const QString own = without_mark(place_text(place));
    if (entry.within == place) return own;
    return QCoreApplication::translate("Actions", "%1, %2").arg(without_mark(place_text(entry.within)), own);
}

}  // namespace roundwright::app
