#include <algorithm>
#include <gtest/gtest.h>
#include <set>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>

#include "tests/app/translation/found_texts.h"

namespace roundwright::test {
namespace {

/// Files whose words are read by machines: shaders, the PDF's own language, settings and calls of the
/// desktop.
const QStringList without_texts{
    QStringLiteral("render/raster/shading.cpp"), QStringLiteral("render/pages/pdf/pdf_finish.cpp"),
    QStringLiteral("render/scene/qt3d_scene_view.cpp"), QStringLiteral("app/kit/system_wishes.cpp")};

/// Words that are not said, or are the same in every language: names of fonts and styles, keys of steps that
/// merge, of contexts and of files, and rounds in the trade's language.
const std::set<QString> not_said{
    QStringLiteral("Actions"),
    QStringLiteral("no action "),  // a fault of the program's own
    QStringLiteral("CommandLine"),
    QStringLiteral("FieldWidgets"),
    QStringLiteral("FirstToy"),
    QStringLiteral("Pattern"),
    QStringLiteral("PieceName"),
    QStringLiteral("RunWithProgress"),
    QStringLiteral("Fusion"),
    QStringLiteral("Inhibit"),
    QStringLiteral("PrepareForSleep"),
    QStringLiteral("The X11 connection broke"),  // Qt's, to be known by
    QStringLiteral("This application failed to start because no Qt platform plugin"),
    QStringLiteral("The Wayland connection "),
    QStringLiteral("DejaVu Sans"),
    QStringLiteral("DejaVu Serif"),
    QStringLiteral("Title"),
    QStringLiteral("face direction"),
    QStringLiteral("end right"),
    QStringLiteral("end round"),
    QStringLiteral("feature apart"),
    QStringLiteral("feature height"),
    QStringLiteral("feature right"),
    QStringLiteral("feature round"),
    QStringLiteral("yarn length"),
    QStringLiteral("[3 sc, inc] x 6, sc in 12"),
    QStringLiteral("in each st around"),
    QStringLiteral("in next st"),
    QStringLiteral("PropertyChange"),  // of AT-SPI2
    QStringLiteral("<tr><td width=\"60%\">%1</td><td width=\"40%\"><b>%2</b></td></tr>"),
    QStringLiteral("<h3>%1</h3><table width=\"100%\">%2</table>"),
    QStringLiteral("Ctrl++"),
    QStringLiteral("Ctrl+-"),
    QStringLiteral("Roundwright")};

QString source_of(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return QString::fromUtf8(file.readAll());
}

/// The text that the compiler makes of a literal.
QString meant_by(QString literal) {
    static const QRegularExpression code(QStringLiteral("\\\\u([0-9A-Fa-f]{4})"));
    for (auto match = code.match(literal); match.hasMatch(); match = code.match(literal))
        literal.replace(match.capturedStart(), match.capturedLength(),
                        QChar(match.captured(1).toUShort(nullptr, 16)));
    return literal.replace(QStringLiteral("\\n"), QStringLiteral("\n"))
        .replace(QStringLiteral("\\\""), QStringLiteral("\""));
}

/// The literals of a file, those that the compiler joins joined, without those of comments and includes.
QStringList literals_of(QString code) {
    static const QRegularExpression aside(QStringLiteral("^\\s*#.*$|(^|\\s)//.*$"),
                                          QRegularExpression::MultilineOption);
    static const QRegularExpression literal(QStringLiteral("\"((?:[^\"\\\\\\n]|\\\\.)*)\""));
    code.replace(aside, QString()).remove(QStringLiteral("'\"'"));
    QStringList literals;
    qsizetype end = -1;
    for (auto all = literal.globalMatch(code); all.hasNext();) {
        const auto match = all.next();
        const bool goes_on = end >= 0 && code.mid(end, match.capturedStart() - end).trimmed().isEmpty();
        if (goes_on) {
            literals.last() += meant_by(match.captured(1));
        } else {
            literals += meant_by(match.captured(1));
        }
        end = match.capturedEnd();
    }
    return literals;
}

/// Two words, or one that begins a sentence. Style sheets have braces.
bool has_words(const QString& text) {
    static const QRegularExpression words(
        QStringLiteral("[A-Za-z]{2,} [A-Za-z(]{2,}|(^|[^A-Za-z:/#%.-])[A-Z][a-z]{2,}"));
    return text.contains(words) && !text.contains(QStringLiteral("{ "));
}

TEST(Texts, LupdateUnderstandsEveryOne) {
    EXPECT_EQ(find_texts().warnings.join(QLatin1Char('\n')).toStdString(), "");
}

TEST(Texts, NoneIsLeftOutOfATranslation) {
    std::set<QString> found;
    for (const FoundText& text : find_texts().texts) found.insert(text.source);
    ASSERT_GT(found.size(), 1000U);
    const QDir top(QStringLiteral(ROUNDWRIGHT_SOURCE));
    for (const char* side : {"app", "render"}) {
        QDirIterator files(top.filePath(QLatin1String(side)),
                           {QStringLiteral("*.cpp"), QStringLiteral("*.h")}, QDir::Files,
                           QDirIterator::Subdirectories);
        while (files.hasNext()) {
            const QString path = top.relativeFilePath(files.next());
            if (without_texts.contains(path)) continue;
            for (const QString& literal : literals_of(source_of(top.filePath(path)))) {
                EXPECT_TRUE(!has_words(literal) || found.count(literal) > 0 || not_said.count(literal) > 0)
                    << path.toStdString() << " says \"" << literal.toStdString() << "\" outside tr()";
            }
        }
    }
}

/// What is counted has a form for each number of it ("%n round(s)"), since languages have two, three or six
/// of them. A measure such as 7.5 stitches has none.
TEST(Texts, WhatIsCountedHasAFormForEachNumber) {
    static const QRegularExpression number_of(
        QStringLiteral("%[1-9] (stitch|stitches|rounds?|pieces?|lines?|pages?|balls?|times|repeats)\\b"));
    const std::set<QString> measures{
        QStringLiteral("%1 stitches"),
        QStringLiteral("%1 stitches in %2, %3 rounds in %4"),
        QStringLiteral("%1 stitches in %2, %3 rows in %4"),
        QStringLiteral("Set %1 to %2 stitches a round"),
        QStringLiteral("Times count crocheting only, at %1 stitches (%2) a minute. A class takes longer."),
        QStringLiteral(
            "Times count crocheting only, at a guess of %1 stitches (%2) a minute. A class takes longer."),
        QStringLiteral(
            "%1 stitches and %2 rounds of %3 = %4 \u00D7 %4, worked in the round and not stuffed."),
        QStringLiteral(
            "No settled shape was found for these %1: by the gauge, a stitch is %2 times as wide as it is "
            "high. Check the gauge."),
        QStringLiteral(
            "No settled shape was found for these %1: by the gauge, a stitch is %2 times as high as it is "
            "wide. Check the gauge."),
        QStringLiteral("Perhaps %1 to crochet this piece, anything from %2 to %3: a guess at %4 stitches a "
                       "minute. Time a "
                       "few rounds in Work along and it goes by your pace.")};
    for (const FoundText& text : find_texts().texts) {
        EXPECT_TRUE(text.counted || measures.count(text.source) > 0 || !text.source.contains(number_of))
            << text.source.toStdString();
    }
}

}  // namespace
}  // namespace roundwright::test
