#include "render/wording/plurals.h"

#include <QRegularExpression>

namespace roundwright {
QString english_plural(QString text, int count) {
    static const QRegularExpression ending(QStringLiteral("\\((e?s)\\)"));
    static const QRegularExpression either(QStringLiteral("\\(([\\w ]+)/([\\w ]+)\\)"));
    text.replace(ending, count == 1 ? QString() : QStringLiteral("\\1"));
    return text.replace(either, count == 1 ? QStringLiteral("\\1") : QStringLiteral("\\2"));
}

QString EnglishPlurals::translate(const char* /*context*/, const char* source, const char* /*disambiguation*/,
                                  int n) const {
    return source == nullptr || n < 0 ? QString() : english_plural(QString::fromUtf8(source), n);
}

}  // namespace roundwright
