#include "tests/app/translation/found_texts.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QLibraryInfo>
#include <QProcess>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <QXmlStreamWriter>

#include "render/wording/plurals.h"

namespace roundwright::test {
namespace {

/// Runs one of Qt's tools and returns what it complains of. What it only reports goes to the standard output.
QString run_tool(const QString& name, const QStringList& arguments) {
    QProcess tool;
    tool.setWorkingDirectory(QStringLiteral(ROUNDWRIGHT_SOURCE));
    tool.start(QLibraryInfo::path(QLibraryInfo::BinariesPath) + QLatin1Char('/') + name, arguments);
    EXPECT_TRUE(tool.waitForStarted()) << name.toStdString() << " is missing: app/install_packages tests";
    EXPECT_TRUE(tool.waitForFinished(120'000));
    EXPECT_EQ(tool.exitCode(), 0) << name.toStdString();
    return QString::fromUtf8(tool.readAllStandardError());
}

/// Two things that lupdate says of sound code: it takes the std:: of a function's type for the class of the
/// function, and does not look into structs of structs.
bool is_of_sound_code(const QString& warning) {
    return warning.endsWith(QStringLiteral("Qualifying with unknown namespace/class ::std")) ||
           warning.endsWith(
               QStringLiteral("recording.cpp:69: Ignoring definition of undeclared qualified class"));
}

std::vector<FoundText> read_texts(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader xml(&file);
    std::vector<FoundText> texts;
    QString context;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement) continue;
        if (xml.name() == u"name") context = xml.readElementText();
        if (xml.name() == u"message") {
            texts.push_back({context, {}, {}, xml.attributes().value(QStringLiteral("numerus")) == u"yes"});
        } else if (xml.name() == u"source") {
            texts.back().source = xml.readElementText(QXmlStreamReader::IncludeChildElements);
        } else if (xml.name() == u"comment") {
            texts.back().comment = xml.readElementText();
        }
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return texts;
}

QString marked(const QString& text) { return opening_mark + text + closing_mark; }

void write_message(QXmlStreamWriter& xml, const FoundText& text) {
    xml.writeStartElement(QStringLiteral("message"));
    if (text.counted) xml.writeAttribute(QStringLiteral("numerus"), QStringLiteral("yes"));
    xml.writeTextElement(QStringLiteral("source"), text.source);
    if (!text.comment.isEmpty()) xml.writeTextElement(QStringLiteral("comment"), text.comment);
    xml.writeStartElement(QStringLiteral("translation"));
    if (text.counted) {
        for (const int count : {1, 2})
            xml.writeTextElement(QStringLiteral("numerusform"), marked(english_plural(text.source, count)));
    } else {
        xml.writeCharacters(marked(text.source));
    }
    xml.writeEndElement();
    xml.writeEndElement();
}

void write_translation(const QString& path, const std::vector<FoundText>& texts) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    QXmlStreamWriter xml(&file);
    xml.writeStartDocument();
    xml.writeDTD(QStringLiteral("<!DOCTYPE TS>"));
    xml.writeStartElement(QStringLiteral("TS"));
    xml.writeAttribute(QStringLiteral("version"), QStringLiteral("2.1"));
    xml.writeAttribute(QStringLiteral("language"), QStringLiteral("de"));
    for (const FoundText& text : texts) {
        xml.writeStartElement(QStringLiteral("context"));
        xml.writeTextElement(QStringLiteral("name"), text.context);
        write_message(xml, text);
        xml.writeEndElement();
    }
    xml.writeEndDocument();
}

}  // namespace

FoundTexts find_texts() {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("found.ts"));
    const QString said =
        run_tool(QStringLiteral("lupdate"), {QStringLiteral("-I"), QStringLiteral("."), QStringLiteral("app"),
                                             QStringLiteral("render"), QStringLiteral("-ts"), path});
    FoundTexts found{read_texts(path), {}};
    for (const QString& line : said.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
        if (!is_of_sound_code(line)) found.warnings += line;
    return found;
}

void write_marked_translation(const QString& folder) {
    const QString source = folder + QStringLiteral("/roundwright_de.ts");
    write_translation(source, find_texts().texts);
    const QString said =
        run_tool(QStringLiteral("lrelease"),
                 {source, QStringLiteral("-qm"), folder + QStringLiteral("/roundwright_de.qm")});
    EXPECT_EQ(said.toStdString(), "");
}

}  // namespace roundwright::test
