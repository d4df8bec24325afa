// The pages as PDF/A-1b. Source of every check: ISO 19005-1:2005, the clause named beside it.

#include <algorithm>
#include <gtest/gtest.h>
#include <map>

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#define POINTERHOLDER_TRANSITION 4
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>

#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using Object = QPDFObjectHandle;

/// A toy with everything in its pattern that can be.
Toy full_toy() {
    Toy toy = testing::puffin();
    Feature eyes;
    eyes.round = 14;
    eyes.stitches_apart = 8;
    toy.pieces[0].features = {eyes};
    toy.pieces.push_back(testing::piece_of("Sole", {26, 32, 38}, End::left_open));
    toy.pieces.back().start = OvalChain{10};
    toy.notes = "Notes & <marks>, \xE2\x80\x9Cquoted\xE2\x80\x9D";
    return toy;
}

PatternOptions everything() {
    PatternOptions options;
    options.contents.teaching_sheet = true;
    return options;
}

class ArchiveTest : public ::testing::Test {
  protected:
    void SetUp() override {
        pdf.setSuppressWarnings(true);
        pdf.processMemoryFile("pattern", bytes.constData(), static_cast<std::size_t>(bytes.size()));
    }

    /// Every dictionary of the file, those of streams too, with those within them.
    std::vector<Object> dictionaries() {
        std::vector<Object> found;
        for (const Object& object : pdf.getAllObjects()) collect(object, found);
        EXPECT_GT(found.size(), 50U);
        return found;
    }

    std::vector<Object> of_type(const char* type) {
        std::vector<Object> found;
        for (Object& each : dictionaries()) {
            if (each.getKey("/Type").isNameAndEquals(type)) found.push_back(each);
        }
        return found;
    }

    static const QByteArray& made_once() {
        static const QByteArray made = testing::pdf_bytes(full_toy(), everything());
        return made;
    }
    const QByteArray& bytes = made_once();
    QPDF pdf;

  private:
    static void collect(Object object, std::vector<Object>& found) {
        if (object.isArray()) {
            for (Object& item : object.getArrayAsVector()) descend(item, found);
        }
        if (object.isStream()) object = object.getDict();
        if (!object.isDictionary()) return;
        found.push_back(object);
        for (const std::string& key : object.getKeys()) descend(object.getKey(key), found);
    }
    static void descend(const Object& object, std::vector<Object>& found) {
        if (!Object(object).isIndirect()) collect(object, found);
    }
};

TEST_F(ArchiveTest, HeaderAndTrailer) {
    // 6.1.2: the header begins the file, and a comment of at least four bytes above 127 follows it.
    EXPECT_TRUE(bytes.startsWith("%PDF-1."));
    const qsizetype second = bytes.indexOf('\n') + 1;
    EXPECT_EQ(bytes[second], '%');
    for (int i = 1; i <= 4; ++i) EXPECT_GT(static_cast<unsigned char>(bytes[second + i]), 127);
    // 6.1.3: an identifier, no encryption, nothing after the end but a line end.
    EXPECT_TRUE(pdf.getTrailer().getKey("/ID").isArray());
    EXPECT_FALSE(pdf.isEncrypted());
    EXPECT_TRUE(bytes.trimmed().endsWith("%%EOF"));
}

TEST_F(ArchiveTest, Streams) {
    // 6.1.7: a line end before each "endstream".
    int streams = 0;
    for (qsizetype at = bytes.indexOf("endstream"); at >= 0; at = bytes.indexOf("endstream", at + 1)) {
        EXPECT_EQ(bytes[at - 1], '\n') << at;
        ++streams;
    }
    EXPECT_GT(streams, 10);
    for (Object& each : dictionaries()) {
        // 6.1.7: no streams in other files; 6.1.10: no LZW; 6.1.11: no files within.
        EXPECT_FALSE(each.hasKey("/FFilter") || each.hasKey("/FDecodeParms"));
        EXPECT_EQ(each.getKey("/Filter").unparse().find("LZW"), std::string::npos);
        EXPECT_FALSE(each.hasKey("/EF") || each.hasKey("/EmbeddedFiles"));
    }
    EXPECT_FALSE(pdf.getRoot().hasKey("/OCProperties"));  // 6.1.13: no optional content
}

/// Counts what content streams hold.
class Operators : public QPDFObjectHandle::ParserCallbacks {
  public:
    void handleObject(QPDFObjectHandle object) override {
        if (!object.isOperator()) return;
        const std::string name = object.getOperatorValue();
        ++count[name];
        if (name == "q") deepest = std::max(deepest, ++depth);
        if (name == "Q") --depth;
    }
    void handleEOF() override {}
    std::map<std::string, int> count;
    int depth = 0;
    int deepest = 0;
};

TEST_F(ArchiveTest, Contents) {
    // Operators of PDF 1.4 (6.2.10), without those for CMYK, which the profile is not for (6.2.3).
    const std::string allowed =
        " b B b* B* BDC BI BMC BT BX c cm cs CS d d0 d1 Do DP EI EMC ET EX f F f* G g gs h i ID j J l m M MP "
        "n "
        "q Q re RG rg ri s S sc SC scn SCN sh T* Tc Td TD Tf Tj TJ TL Tm Tr Ts Tw Tz v w W W* y ' \" ";
    for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper(pdf).getAllPages()) {
        Operators found;
        page.parseContents(&found);
        EXPECT_LE(found.deepest, 28);  // 6.1.12: q within q, table C.1 of PDF 1.4
        EXPECT_EQ(found.depth, 0);
        EXPECT_GT(found.count["Tj"] + found.count["TJ"], 0);  // real text
        for (const auto& [name, count] : found.count)
            EXPECT_NE(allowed.find(" " + name + " "), std::string::npos) << name;
    }
}

TEST_F(ArchiveTest, OutputIntent) {
    // 6.2.2: an intent of PDF/A-1 with a profile, here of a display in RGB (ICC.1:1998-09, 6.1).
    Object intents = pdf.getRoot().getKey("/OutputIntents");
    ASSERT_TRUE(intents.isArray());
    ASSERT_EQ(intents.getArrayNItems(), 1);
    Object intent = intents.getArrayItem(0);
    EXPECT_TRUE(intent.getKey("/S").isNameAndEquals("/GTS_PDFA1"));
    Object profile = intent.getKey("/DestOutputProfile");
    ASSERT_TRUE(profile.isStream());
    EXPECT_EQ(profile.getDict().getKey("/N").getIntValueAsInt(), 3);
    const std::shared_ptr<Buffer> data = profile.getStreamData();
    const std::string icc(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
    EXPECT_EQ(icc.substr(36, 4), "acsp");
    EXPECT_EQ(icc.substr(16, 4), "RGB ");
    for (Object& each : dictionaries())  // 6.2.3
        for (const char* key : {"/ColorSpace", "/CS"})
            EXPECT_EQ(each.getKey(key).unparse().find("CMYK"), std::string::npos);
}

TEST_F(ArchiveTest, Fonts) {
    int programs = 0;
    for (Object& font : of_type("/Font")) {
        Object descriptor = font.getKey("/FontDescriptor");
        if (font.getKey("/Subtype").isNameAndEquals("/Type0")) {
            // 6.3.3.3: a character map of PDF itself, or embedded.
            Object encoding = font.getKey("/Encoding");
            EXPECT_TRUE(encoding.isStream() || encoding.isNameAndEquals("/Identity-H"));
            continue;
        }
        ASSERT_TRUE(descriptor.isDictionary());
        // 6.3.4: the program is embedded.
        EXPECT_TRUE(descriptor.hasKey("/FontFile") || descriptor.hasKey("/FontFile2") ||
                    descriptor.hasKey("/FontFile3"));
        ++programs;
        const bool truetype = font.getKey("/Subtype").isNameAndEquals("/CIDFontType2");
        EXPECT_TRUE(!truetype || font.hasKey("/CIDToGIDMap"));  // 6.3.3.2
        EXPECT_TRUE(descriptor.getKey("/CIDSet").isStream());   // 6.3.5: what a subset holds
        EXPECT_EQ(font.getKey("/BaseFont").getName(), descriptor.getKey("/FontName").getName());
    }
    EXPECT_GE(programs, 3);  // the sans, its bold and the serif
}

TEST_F(ArchiveTest, NoTransparency) {
    for (Object& each : dictionaries()) {
        // 6.4: no soft masks, no groups, normal blending, full opacity.
        Object mask = each.getKey("/SMask");
        EXPECT_TRUE(mask.isNull() || mask.isNameAndEquals("/None"));
        EXPECT_FALSE(each.getKey("/S").isNameAndEquals("/Transparency"));
        Object blend = each.getKey("/BM");
        EXPECT_TRUE(blend.isNull() || blend.isNameAndEquals("/Normal") ||
                    blend.isNameAndEquals("/Compatible"));
        for (const char* opacity : {"/CA", "/ca"}) {
            Object value = each.getKey(opacity);
            EXPECT_TRUE(!value.isNumber() || value.getNumericValue() == 1) << opacity;
        }
        // 6.2.4, 6.2.5, 6.2.7, 6.2.8: no alternate or smoothed images, no PostScript, no transfer functions.
        EXPECT_FALSE(each.hasKey("/Alternates") || each.hasKey("/OPI") || each.hasKey("/TR"));
        EXPECT_FALSE(each.getKey("/Interpolate").isBool() && each.getKey("/Interpolate").getBoolValue());
        EXPECT_FALSE(each.getKey("/Subtype").isNameAndEquals("/PS"));
    }
}

TEST_F(ArchiveTest, AnnotationsAndActions) {
    const std::vector<Object> annotations = of_type("/Annot");
    EXPECT_GE(annotations.size(), 5U);
    for (Object annotation : annotations) {
        EXPECT_TRUE(annotation.getKey("/Subtype").isNameAndEquals("/Link"));  // 6.5.2
        // 6.5.3: printed, and neither invisible (1), hidden (2) nor without view (32).
        EXPECT_EQ(annotation.getKey("/F").getIntValueAsInt() & (1 | 2 | 4 | 32), 4);
    }
    for (Object& each : dictionaries()) {
        EXPECT_FALSE(each.hasKey("/AA") || each.hasKey("/JS") || each.hasKey("/JavaScript"));  // 6.6.1, 6.6.2
        Object action = each.getKey("/S");
        for (const char* kind :
             {"/Launch", "/Sound", "/Movie", "/ResetForm", "/ImportData", "/JavaScript", "/URI"})
            EXPECT_FALSE(action.isNameAndEquals(kind)) << kind;  // 6.6.1
    }
    EXPECT_FALSE(pdf.getRoot().hasKey("/AcroForm"));  // 6.9
}

/// The text of every element of an XMP packet that holds any, by its qualified name; of a list, its item.
std::map<QString, QString> properties_in(const QByteArray& xmp) {
    std::map<QString, QString> found;
    QXmlStreamReader xml(xmp);
    QStringList path;
    while (!xml.atEnd()) {
        const auto token = xml.readNext();
        if (token == QXmlStreamReader::StartElement) path << xml.qualifiedName().toString();
        if (token == QXmlStreamReader::EndElement) path.removeLast();
        if (token != QXmlStreamReader::Characters || xml.isWhitespace()) continue;
        QStringList named = path.filter(QStringLiteral(":"));
        while (named.last().startsWith(QStringLiteral("rdf:"))) named.removeLast();
        found[named.last()] = xml.text().toString();
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return found;
}

TEST_F(ArchiveTest, Metadata) {
    Object metadata = pdf.getRoot().getKey("/Metadata");
    ASSERT_TRUE(metadata.isStream());  // 6.7.2
    EXPECT_FALSE(metadata.getDict().hasKey("/Filter"));
    const std::shared_ptr<Buffer> data = metadata.getStreamData();
    const QByteArray xmp(reinterpret_cast<const char*>(data->getBuffer()),
                         static_cast<qsizetype>(data->getSize()));
    const QByteArray header = xmp.left(xmp.indexOf("?>"));
    EXPECT_TRUE(header.startsWith("<?xpacket begin="));
    EXPECT_FALSE(header.contains("bytes=") || header.contains("encoding="));  // 6.7.5
    const auto properties = properties_in(xmp);
    EXPECT_EQ(properties.at(QStringLiteral("pdfaid:part")), QStringLiteral("1"));  // 6.7.11
    EXPECT_EQ(properties.at(QStringLiteral("pdfaid:conformance")), QStringLiteral("B"));
    // 6.7.3, table 1: the two say the same.
    Object information = pdf.getTrailer().getKey("/Info");
    for (const auto& [key, name] :
         std::map<std::string, QString>{{"/Title", QStringLiteral("dc:title")},
                                        {"/Author", QStringLiteral("dc:creator")},
                                        {"/Creator", QStringLiteral("xmp:CreatorTool")},
                                        {"/Producer", QStringLiteral("pdf:Producer")}}) {
        EXPECT_EQ(information.getKey(key).getUTF8Value(), properties.at(name).toStdString()) << key;
    }
    for (const auto& [key, name] :
         std::map<std::string, QString>{{"/CreationDate", QStringLiteral("xmp:CreateDate")},
                                        {"/ModDate", QStringLiteral("xmp:ModifyDate")}}) {
        const QDateTime said = QDateTime::fromString(properties.at(name), Qt::ISODate);
        EXPECT_EQ(information.getKey(key).getUTF8Value(),
                  said.toString(QStringLiteral("'D:'yyyyMMddHHmmss'Z'")).toStdString());
    }
}

/// What a validator of PDF/A-1b that is no part of this program says: empty if all is well. Nothing where it
/// is not installed (Debian: libpdfbox2-java libactivation-java libjaxb-api-java libcommons-io-java).
std::optional<QString> validator_says(const QByteArray& pdf) {
    QStringList classes;
    for (const char* jar : {"preflight", "pdfbox2", "xmpbox", "fontbox2", "commons-logging", "commons-io",
                            "javax.activation", "jaxb-api"}) {
        classes << QStringLiteral("/usr/share/java/%1.jar").arg(QLatin1String(jar));
        if (!QFile::exists(classes.last())) return std::nullopt;
    }
    const QTemporaryDir folder;
    QFile file(folder.filePath(QStringLiteral("pattern.pdf")));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(pdf) == pdf.size());
    file.close();
    QProcess validator;
    validator.setProcessChannelMode(QProcess::MergedChannels);
    validator.start(QStringLiteral("java"),
                    {QStringLiteral("-cp"), classes.join(QLatin1Char(':')),
                     QStringLiteral("org.apache.pdfbox.preflight.Validator_A1b"), file.fileName()});
    if (!validator.waitForStarted()) return std::nullopt;
    validator.waitForFinished(60'000);
    const QString said = QString::fromUtf8(validator.readAll()).trimmed();
    return said.endsWith(QStringLiteral("is a valid PDF/A-1b file")) ? QString() : said;
}

TEST_F(ArchiveTest, AnIndependentValidatorAgrees) {
    Toy hostile = testing::ball(4);
    hostile.title = "\xF0\x9F\x90\x99 <b>&amp; \xD7\x93\xD7\x92 ) >> endobj \xEF\xA3\xBF";
    for (const QByteArray& file : {bytes, testing::pdf_bytes(hostile), testing::pdf_bytes(Toy{})}) {
        const auto said = validator_says(file);
        if (!said) GTEST_SKIP() << "no validator of PDF/A is installed";
        EXPECT_EQ(said->toStdString(), "");
    }
}

}  // namespace
}  // namespace roundwright::render
