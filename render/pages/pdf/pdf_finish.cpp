#include "render/pages/pdf/pdf_finish.h"

#include <set>

// Shared pointers of the standard library throughout, in every release of the library.
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include "render/pages/layout/paper.h"

namespace roundwright::render {
namespace {

using Object = QPDFObjectHandle;

Object text(const QString& string) { return Object::newUnicodeString(string.toStdString()); }
Object number(double value) { return Object::newReal(value, 3); }

/// "D:20260131120000Z" (ISO 32000-1, 7.9.4).
std::string pdf_date(const QDateTime& date) {
    return date.toUTC().toString(QStringLiteral("'D:'yyyyMMddHHmmss'Z'")).toStdString();
}

class Finisher {
  public:
    Finisher(QPDF& pdf, const PdfProperties& properties)
        : pdf_(pdf), properties_(properties), pages_(QPDFPageDocumentHelper(pdf).getAllPages()) {}

    void run() {
        set_information();
        set_metadata();
        pdf_.getRoot().replaceKey("/Lang", Object::newString(properties_.language.toStdString()));
        set_outline();
        name_fonts();
        drop_cmyk();
        for (const PageLink& link : properties_.links) add_link(link);
    }

  private:
    /// Qt 6.8 names CMYK among the colour spaces of every page, which PDF/A-1 does not let stand beside an
    /// intent in RGB (ISO 19005-1, 6.2.3.3); nothing is drawn in it.
    void drop_cmyk() {
        for (auto& page : pages_) {
            Object spaces = page.getAttribute("/Resources", false).getKey("/ColorSpace");
            if (!spaces.isDictionary()) continue;
            for (const std::string& name : spaces.getKeys())
                if (spaces.getKey(name).unparseResolved().find("/DeviceCMYK") != std::string::npos)
                    spaces.removeKey(name);
        }
    }

    [[nodiscard]] double page_height(int page) {
        return pages_.at(static_cast<std::size_t>(page))
            .getAttribute("/MediaBox", false)
            .getArrayItem(3)
            .getNumericValue();
    }

    /// Layout units from the top as points from the bottom.
    [[nodiscard]] double up(int page, double top) { return page_height(page) - top / units_per_point; }

    [[nodiscard]] Object place(int page, double top) {
        Object destination = Object::newArray();
        destination.appendItem(pages_.at(static_cast<std::size_t>(page)).getObjectHandle());
        destination.appendItem(Object::newName("/XYZ"));
        destination.appendItem(Object::newNull());
        destination.appendItem(number(up(page, top)));
        destination.appendItem(Object::newNull());
        return destination;
    }

    void set_information() {
        Object information = pdf_.makeIndirectObject(Object::newDictionary());
        information.replaceKey("/Title", text(properties_.title));
        if (!properties_.author.isEmpty()) information.replaceKey("/Author", text(properties_.author));
        information.replaceKey("/Creator", text(properties_.creator));
        information.replaceKey("/Producer", text(properties_.creator));
        information.replaceKey("/CreationDate", Object::newString(pdf_date(properties_.date)));
        information.replaceKey("/ModDate", Object::newString(pdf_date(properties_.date)));
        pdf_.getTrailer().replaceKey("/Info", information);
        pdf_.getTrailer().removeKey("/ID");  // a new one is made from the contents
    }

    /// The same properties as XMP, as PDF/A-1 (ISO 19005-1, 6.7) wants them.
    [[nodiscard]] QString xmp() const {
        const QString date = properties_.date.toUTC().toString(Qt::ISODate);
        const QString creator = properties_.creator.toHtmlEscaped();
        QString author;
        if (!properties_.author.isEmpty()) {
            author = QStringLiteral("<dc:creator><rdf:Seq><rdf:li>%1</rdf:li></rdf:Seq></dc:creator>\n")
                         .arg(properties_.author.toHtmlEscaped());
        }
        return QStringLiteral(
                   "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
                   "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
                   "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
                   "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"\n"
                   " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\"\n"
                   " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n"
                   "<dc:format>application/pdf</dc:format>\n"
                   "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">") +
               properties_.title.toHtmlEscaped() + QStringLiteral("</rdf:li></rdf:Alt></dc:title>\n") +
               author + QStringLiteral("<xmp:CreatorTool>") + creator +
               QStringLiteral("</xmp:CreatorTool>\n<xmp:CreateDate>") + date +
               QStringLiteral("</xmp:CreateDate>\n<xmp:ModifyDate>") + date +
               QStringLiteral("</xmp:ModifyDate>\n<pdf:Producer>") + creator +
               QStringLiteral(
                   "</pdf:Producer>\n<pdfaid:part>1</pdfaid:part>\n"
                   "<pdfaid:conformance>B</pdfaid:conformance>\n"
                   "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"w\"?>\n");
    }

    void set_metadata() {
        Object metadata = Object::newStream(&pdf_, xmp().toStdString());
        metadata.getDict().replaceKey("/Type", Object::newName("/Metadata"));
        metadata.getDict().replaceKey("/Subtype", Object::newName("/XML"));
        pdf_.getRoot().replaceKey("/Metadata", metadata);
    }

    [[nodiscard]] Object entry(const Bookmark& bookmark) {
        Object item = pdf_.makeIndirectObject(Object::newDictionary());
        item.replaceKey("/Title", text(bookmark.title));
        item.replaceKey("/Dest", place(bookmark.page, bookmark.top));
        return item;
    }

    /// Chains siblings below a parent (ISO 32000-1, 12.3.3).
    static void chain(Object parent, const std::vector<Object>& siblings) {
        for (std::size_t i = 0; i < siblings.size(); ++i) {
            Object item = siblings[i];
            item.replaceKey("/Parent", parent);
            if (i > 0) item.replaceKey("/Prev", siblings[i - 1]);
            if (i + 1 < siblings.size()) item.replaceKey("/Next", siblings[i + 1]);
        }
        if (siblings.empty()) return;
        parent.replaceKey("/First", siblings.front());
        parent.replaceKey("/Last", siblings.back());
        parent.replaceKey("/Count", Object::newInteger(static_cast<long long>(siblings.size())));
    }

    void set_outline() {
        if (properties_.outline.empty()) return;
        Object root = pdf_.makeIndirectObject(Object::newDictionary());
        root.replaceKey("/Type", Object::newName("/Outlines"));
        std::vector<Object> sections;
        std::vector<std::vector<Object>> parts;
        for (const Bookmark& bookmark : properties_.outline) {
            if (bookmark.level > 1 && !sections.empty()) {
                parts.back().push_back(entry(bookmark));
            } else {
                sections.push_back(entry(bookmark));
                parts.emplace_back();
            }
        }
        chain(root, sections);
        root.replaceKey("/Count", Object::newInteger(static_cast<long long>(properties_.outline.size())));
        for (std::size_t i = 0; i < sections.size(); ++i) chain(sections[i], parts[i]);
        pdf_.getRoot().replaceKey("/Outlines", root);
        pdf_.getRoot().replaceKey("/PageMode", Object::newName("/UseOutlines"));
    }

    /// Names every font after its place in the pages: "AAAAAA+Name", "AAAAAB+Name" (ISO 32000-1, 9.6.4), the
    /// same in all its dictionaries. The writer's own tags change from run to run.
    void name_fonts() {
        std::set<QPDFObjGen> named;
        for (QPDFPageObjectHelper& page : pages_) {
            Object fonts = page.getAttribute("/Resources", false).getKey("/Font");
            if (!fonts.isDictionary()) continue;
            for (const std::string& key : fonts.getKeys()) {
                Object font = fonts.getKey(key);
                if (named.insert(font.getObjGen()).second) name_font(font, named.size() - 1);
            }
        }
    }

    static void name_font(Object font, std::size_t place) {
        Object descendants = font.getKey("/DescendantFonts");
        if (!descendants.isArray()) return;
        const std::string plain = font.getKey("/BaseFont").getName().substr(1);
        const Object name = Object::newName("/" + subset_tag(place) + "+" + plain);
        Object descendant = descendants.getArrayItem(0);
        font.replaceKey("/BaseFont", name);
        descendant.replaceKey("/BaseFont", name);
        descendant.getKey("/FontDescriptor").replaceKey("/FontName", name);
    }

    static std::string subset_tag(std::size_t place) {
        std::string tag(6, 'A');
        for (std::size_t i = tag.size(); i-- > 0; place /= 26) tag[i] = static_cast<char>('A' + place % 26);
        return tag;
    }

    void add_link(const PageLink& link) {
        Object page = pages_.at(static_cast<std::size_t>(link.page)).getObjectHandle();
        Object annotation = pdf_.makeIndirectObject(Object::newDictionary());
        annotation.replaceKey("/Type", Object::newName("/Annot"));
        annotation.replaceKey("/Subtype", Object::newName("/Link"));
        annotation.replaceKey("/Border", Object::parse("[0 0 0]"));
        annotation.replaceKey("/F", Object::newInteger(4));  // printed: PDF/A-1 (6.5.3) wants it
        Object rectangle = Object::newArray();
        rectangle.appendItem(number(link.area.left() / units_per_point));
        rectangle.appendItem(number(up(link.page, link.area.bottom())));
        rectangle.appendItem(number(link.area.right() / units_per_point));
        rectangle.appendItem(number(up(link.page, link.area.top())));
        annotation.replaceKey("/Rect", rectangle);
        annotation.replaceKey("/Dest", place(link.target_page, link.target_top));
        if (!page.hasKey("/Annots")) page.replaceKey("/Annots", Object::newArray());
        page.getKey("/Annots").appendItem(annotation);
    }

    QPDF& pdf_;
    const PdfProperties& properties_;
    std::vector<QPDFPageObjectHelper> pages_;
};

}  // namespace

QByteArray finish_pdf(const QByteArray& pdf, const PdfProperties& properties) {
    QPDF document;
    document.setSuppressWarnings(true);
    document.processMemoryFile("pattern", pdf.constData(), static_cast<std::size_t>(pdf.size()));
    Finisher(document, properties).run();
    QPDFWriter writer(document);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setNewlineBeforeEndstream(true);  // ISO 19005-1, 6.1.7
    writer.setObjectStreamMode(qpdf_o_disable);
    writer.setStreamDataMode(qpdf_s_compress);
    writer.write();
    const std::shared_ptr<Buffer> bytes = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(bytes->getBuffer()), static_cast<qsizetype>(bytes->getSize())};
}

}  // namespace roundwright::render
