#include "app/window/announcements.h"

#include <algorithm>

#include <QLineEdit>

#include "app/checks/checks_model.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "render/wording/as_sentence.h"
#include "render/wording/shape_words.h"

namespace roundwright::app {
namespace {

constexpr int rest_ms = 500;    // longer than between two keys of a count
constexpr int most_checks = 2;  // that are read out at once

const auto understood_topic = QStringLiteral("understood");
const auto count_topic = QStringLiteral("count");
const auto lie_topic = QStringLiteral("lie");
const auto size_topic = QStringLiteral("size");
const auto checks_topic = QStringLiteral("checks");
const auto place_topic = QStringLiteral("place");

}  // namespace

Announcements::Announcements(DocumentSession& session, Announcer& announcer, const ChecksModel& checks,
                             FastEntryLine& line, RoundsView& rounds, QObject* parent)
    : QObject(parent),
      session_(session),
      announcer_(announcer),
      checks_(checks),
      line_(line),
      rounds_(rounds) {
    rest_.setSingleShot(true);
    rest_.setInterval(rest_ms);
    connect(&rest_, &QTimer::timeout, this, &Announcements::tell_news);
    connect(&session_, &DocumentSession::study_ready, this, &Announcements::later);
    connect(&session_, &DocumentSession::surface_ready, this, &Announcements::later);
    connect(&session_, &DocumentSession::every_stitch_changed, this, &Announcements::later);
    connect(&session_, &DocumentSession::current_piece_changed, this, [this] {
        piece_.reset();
        later();
    });
    connect(&session_, &DocumentSession::toy_changed, this, [this](const ChangeSet& changes) {
        if (changes.everything) forget();
        later();
    });
    connect(&session_.undo_stack(), &QUndoStack::indexChanged, &announcer_, &Announcer::dealt_with);
    follow_line();
    follow_words();
}

void Announcements::follow_line() {
    connect(line_.line(), &QLineEdit::textChanged, this, [this] {
        announcer_.drop(understood_topic);
        if (line_.line()->text().isEmpty() || line_.problem().isEmpty()) announcer_.dealt_with();
        if (!line_.line()->text().isEmpty()) {
            understood_ = as_sentence(line_.what_was_understood());
            typed_ = true;
        }
        later();
    });
    connect(&line_, &FastEntryLine::not_understood, &announcer_, &Announcer::complain);
    connect(&line_, &FastEntryLine::rounds_added, this, [this] {
        if (!understood_.isEmpty()) announcer_.answer(tr("Added: %1").arg(understood_));
        later();
    });
}

void Announcements::follow_words() {
    connect(&rounds_, &RoundsView::typed_changed, this, [this] {
        typed_ = typed_ || !rounds_.spoken_hint().isEmpty();
        announcer_.drop(understood_topic);
        later();
    });
    connect(&rounds_, &RoundsView::offer_chosen, &announcer_, &Announcer::answer);
}

void Announcements::forget() {
    piece_.reset();
    knows_checks_ = false;
    announcer_.dealt_with();
}

bool Announcements::line_is_typed() const {
    return line_.line()->hasFocus() && !line_.line()->text().isEmpty();
}

/// The latest answer of the solver is waited for; it starts the rest anew.
void Announcements::tell_news() {
    tell_what_is_typed();
    const int current = session_.current_piece();
    if (session_.solving() || session_.piece() == nullptr || !session_.is_up_to_date(current)) return;
    // One size is said, not that of the round shape and then that of every stitch.
    if (session_.every_stitch(current).coming) return;
    const auto study = session_.shown_study(current);
    if (!study) return;
    const PieceAsHeard now = PieceAsHeard::of(*session_.piece(), *study);
    if (piece_)
        tell_piece(now);
    else
        tell_checks({});
    piece_ = now;
}

void Announcements::tell_what_is_typed() {
    const QString typed = !line_is_typed()            ? rounds_.spoken_hint()
                          : line_.problem().isEmpty() ? understood_
                                                      : line_.problem();
    if (!typed.isEmpty()) announcer_.say(understood_topic, typed, Weight::count);
}

void Announcements::tell_piece(const PieceAsHeard& now) {
    const PieceNews news = piece_news(*piece_, now);
    const bool told_by_the_line = line_is_typed() || session_.said_toy() != session_.toy();
    announcer_.say(count_topic, typed_ ? QString() : news.count, Weight::count);
    typed_ = line_is_typed() || !rounds_.spoken_hint().isEmpty();
    announcer_.say(lie_topic, news.lie, Weight::lie);
    if (news.size) tell_size();
    announcer_.say(place_topic, news.features, Weight::place);
    if (!told_by_the_line) tell_checks(news.rounds_of_lie);
}

void Announcements::tell_size() {
    const auto shown = session_.shown_study(session_.current_piece());
    announcer_.say(size_topic, as_sentence(size_words(*shown, session_.preferences().units())), Weight::size);
}

std::vector<Announcements::CheckAsHeard> Announcements::checks_now() const {
    std::vector<CheckAsHeard> now;
    for (int row = 0; row < checks_.rowCount(); ++row) {
        const Check& check = checks_.check(row);
        now.push_back({{static_cast<int>(check.code), check.piece, check.round},
                       check.piece == session_.current_piece() ? check.round : -1,
                       checks_.data(checks_.index(row), Qt::AccessibleTextRole).toString()});
    }
    return now;
}

/// A round that was just said to ruffle is not said to be found ruffling as well.
void Announcements::tell_checks(const std::vector<int>& rounds_told) {
    const auto now = checks_now();
    std::set<CheckKey> keys;
    QStringList come;
    int came = 0;
    for (const CheckAsHeard& check : now) {
        keys.insert(check.key);
        if (known_checks_.contains(check.key)) continue;
        const bool told =
            check.round >= 0 && std::ranges::find(rounds_told, check.round) != rounds_told.end();
        if (told || ++came > most_checks) continue;
        come << check.words;
    }
    if (came > most_checks) come << tr("And %n more check(s)", nullptr, came - most_checks);
    const auto stays = [&keys](const CheckKey& key) { return keys.contains(key); };
    const bool gone = !std::ranges::all_of(known_checks_, stays);
    if (gone && keys.empty()) come << tr("Nothing to fix");
    if (gone && !keys.empty() && came == 0)
        come << tr("%n check(s) left", nullptr, static_cast<int>(keys.size()));
    if (knows_checks_) announcer_.say(checks_topic, joined_sentences(come), Weight::checks);
    known_checks_ = std::move(keys);
    knows_checks_ = true;
}

}  // namespace roundwright::app
