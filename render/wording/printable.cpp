#include "render/wording/printable.h"

#include "render/wording/unprintable.h"

namespace roundwright {

QString printable(const QString& text) {
    const QString lines = with_line_feeds(text);
    QString clean;
    clean.reserve(lines.size());
    for (qsizetype at = 0; at < lines.size(); ++at) {
        const QChar c = lines[at];
        if (c == u'\t')
            clean += u' ';
        else if (c == u'\n' || !is_unprintable(c.unicode()) || joins_letters(lines, at))
            clean += c;
    }
    return without_stacked_marks(clean);
}

QString printable_line(const QString& text) { return printable(text).simplified(); }
QString printable_name(const QString& name) {
    return printable(name).replace(QLatin1Char('\n'), QLatin1Char(' '));
}
QString printable_line(const std::string& utf8) { return printable_line(QString::fromStdString(utf8)); }

}  // namespace roundwright
