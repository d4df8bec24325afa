#include "render/wording/plain_text.h"

#include <QLocale>
#include <QStringList>
#include <QTextBoundaryFinder>

#include "render/wording/unprintable.h"

namespace roundwright {
namespace {

constexpr char16_t first_isolate = 0x2066, own_isolate = 0x2068, end_of_isolate = 0x2069;
constexpr char16_t control_pictures = 0x2400, picture_of_delete = 0x2421;
constexpr qsizetype most_in_a_name = 48, most_in_a_word = 80;

bool is_isolate(QChar c) { return c.unicode() >= first_isolate && c.unicode() <= end_of_isolate; }

bool is_right_to_left(QChar::Direction direction) {
    return direction == QChar::DirR || direction == QChar::DirAL;
}

bool has_right_to_left(const QString& text) {
    for (const char32_t letter : text.toUcs4()) {
        if (is_right_to_left(QChar::direction(letter))) return true;
    }
    return false;
}

/// What stands for a control character, a mark or an unfit one in the window; null: nothing.
QChar shown_as(QChar c) {
    const char16_t u = c.unicode();
    if (u == 0x09) return u' ';
    if (u < 0x20) return QChar(control_pictures + u);
    if (u == 0x7F) return QChar(picture_of_delete);
    if (u >= 0x80 && u < 0xA0) return QChar::ReplacementCharacter;
    return is_unprintable(u) ? QChar() : c;
}

/// One line. `isolates_stay`: they are known to be in pairs.
QString shown_line(const QString& line, bool isolates_stay) {
    QString shown;
    shown.reserve(line.size());
    for (qsizetype at = 0; at < line.size(); ++at) {
        const bool stays = joins_letters(line, at) || (isolates_stay && is_isolate(line[at]));
        const QChar c = stays ? line[at] : shown_as(line[at]);
        if (!c.isNull()) shown += c;
    }
    return without_stacked_marks(shown);
}

/// Ends at or before `at`, between two letters as a reader sees them, where one letter is not longer than
/// all.
qsizetype letter_edge(const QString& text, qsizetype at) {
    QTextBoundaryFinder finder(QTextBoundaryFinder::Grapheme, text);
    finder.setPosition(at);
    if (finder.isAtBoundary()) return at;
    const qsizetype edge = finder.toPreviousBoundary();
    if (edge > at - most_in_a_name / 4) return edge;
    return at > 0 && at < text.size() && text[at].isLowSurrogate() ? at - 1 : at;
}

QString without_middle(const QString& text, qsizetype most) {
    if (text.size() <= most) return text;
    const qsizetype head = most * 3 / 5, tail = most - head - 1;
    return text.left(letter_edge(text, head)) + QChar(0x2026) +
           text.mid(letter_edge(text, text.size() - tail));
}

QString isolated(const QString& name) {
    const bool sentence_is_right_to_left = QLocale().textDirection() == Qt::RightToLeft;
    if (name.isEmpty() || !(sentence_is_right_to_left || has_right_to_left(name))) return name;
    return QChar(own_isolate) + name + QChar(end_of_isolate);
}

QString on_one_line(const QString& name) {
    return shown_line(with_line_feeds(name).replace(u'\n', u' '), false);
}

/// Without the isolates that nothing ends and the ends of none.
QString with_isolates_in_pairs(const QString& line) {
    QList<qsizetype> open, alone;
    for (qsizetype at = 0; at < line.size(); ++at) {
        if (!is_isolate(line[at])) continue;
        if (line[at].unicode() != end_of_isolate)
            open << at;
        else if (open.isEmpty())
            alone << at;
        else
            open.removeLast();
    }
    QString paired = line;
    for (const qsizetype at : open + alone) paired[at] = u'\0';
    return paired.remove(u'\0');
}

QString with_short_words(const QString& line) {
    if (line.size() <= most_in_a_word) return line;
    QStringList words = line.split(u' ');
    for (QString& word : words) word = without_middle(word, most_in_a_word);
    return words.join(u' ');
}

QString escaped(QChar c) {
    return QStringLiteral("\\u%1").arg(static_cast<int>(c.unicode()), 4, 16, QLatin1Char('0'));
}

template <typename OfALine>
QString by_lines(const QString& text, OfALine of_a_line) {
    QStringList done = with_line_feeds(text).split(u'\n');
    for (QString& line : done) line = of_a_line(line);
    return done.join(u'\n');
}

}  // namespace

QString name_in_words(const QString& name) {
    return isolated(without_middle(on_one_line(name), most_in_a_name));
}

QString name_in_words(std::string_view utf8) {
    return name_in_words(QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size())));
}

QString line_in_words(const QString& line) { return on_one_line(line); }

QString text_in_words(const QString& text) {
    return by_lines(text, [](const QString& line) { return shown_line(line, false); });
}

QString plain_message(const QString& text) {
    return by_lines(text, [](const QString& line) {
        return with_short_words(shown_line(with_isolates_in_pairs(line), true));
    });
}

QString for_terminal(const QString& text, bool lines_stay) {
    QString safe;
    safe.reserve(text.size());
    for (qsizetype at = 0; at < text.size(); ++at) {
        const QChar c = text[at];
        const bool own_line = lines_stay && (c == u'\n' || c == u'\t');
        const bool prints = own_line || !is_unprintable(c.unicode()) || joins_letters(text, at);
        if (c.unicode() == own_isolate || c.unicode() == end_of_isolate) continue;
        prints ? safe += c : safe += escaped(c);
    }
    return safe;
}

QString for_json(const QString& json) {
    QString safe;
    safe.reserve(json.size());
    for (qsizetype at = 0; at < json.size(); ++at)
        is_unprintable(json[at].unicode()) && !joins_letters(json, at) ? safe += escaped(json[at])
                                                                       : safe += json[at];
    return safe;
}

}  // namespace roundwright
