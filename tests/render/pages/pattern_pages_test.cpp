#include "render/pages/pattern_pages.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QRegularExpression>

#include "render/pages/pattern_study.h"
#include "render/pages/piece_figure.h"
#include "render/pages/text_export.h"
#include "render/wording/pattern/pattern_words.h"
#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::ball_counts;
using testing::PdfReader;
using testing::piece_of;
using testing::puffin;

/// With a wing sewn to its body.
Toy joined_puffin() {
    Toy toy = puffin();
    toy.joins = {{.piece = {toy.pieces.id(1), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .seam = Seam::closed,
                  .at = {.round = 4, .stitches_right = 6}}};
    return toy;
}

QImage preview(const PatternPages& pages, int page, double dots_per_inch) {
    const double scale = dots_per_inch / units_per_inch;
    QImage image((pages.size() * scale).toSize(), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(scale, scale);
    pages.paint(painter, page);
    return image;
}

double mean_difference(const QImage& a, const QImage& b) {
    double sum = 0;
    const QSize size = a.size().boundedTo(b.size());
    for (int y = 0; y < size.height(); ++y) {
        for (int x = 0; x < size.width(); ++x) sum += std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y)));
    }
    return sum / (size.width() * size.height());
}

TEST(PatternPages, ThePreviewIsThePrintedPage) {
    const auto pages = PatternPages::compose(puffin(), {});
    ASSERT_TRUE(pages);
    const PdfReader pdf(puffin());
    ASSERT_EQ(pages->count(), pdf.pages());
    for (int i = 0; i < pages->count(); ++i) {
        const std::unique_ptr<Poppler::Page> page(pdf.document().page(i));
        pdf.document().setRenderHint(Poppler::Document::Antialiasing);
        pdf.document().setRenderHint(Poppler::Document::TextAntialiasing);
        const QImage printed = page->renderToImage(72, 72);
        // An empty page differs by about 10 grey levels on average.
        EXPECT_LT(mean_difference(preview(*pages, i, 72), printed), 4) << "page " << i + 1;
    }
}

// A round that cannot be read ends the fabric: what sits above it has no place on the outline.
TEST(PatternPages, AnEyeAboveARoundThatIsNoneIsNotDrawn) {
    for (const int broken : {0, 1, 3, 4, 5}) {
        Toy toy = ball(4);
        Piece& head = toy.pieces[0];
        head.rounds[static_cast<std::size_t>(broken)].working = AsWritten{"what the maker meant"};
        Feature eyes;
        eyes.round = 4;
        Feature mouth;
        mouth.kind = FeatureKind::stitched_line;
        mouth.round = 1;
        mouth.end_round = 6;
        head.features = {eyes, mouth};
        const auto pages = PatternPages::compose(toy, {});
        ASSERT_TRUE(pages);
        for (int page = 0; page < pages->count(); ++page) static_cast<void>(preview(*pages, page, 20));
    }
}

// Drawing every stitch of very many pieces would take minutes and gigabytes.
TEST(PatternPages, NotEveryPieceOfVeryManyIsPictured) {
    Toy toy = ball(20);
    const std::size_t stitches = 20 * 120 + 2 * 6 * 190;
    while (toy.pieces.size() * stitches < 200'000) toy.pieces.push_back(toy.pieces[0]);
    toy.pieces.front().name = "First";
    toy.pieces.back().name = "Last";
    const PdfReader pdf(toy);
    const QString text = pdf.flowing_text();
    EXPECT_TRUE(text.contains(QStringLiteral("There are too many stitches to picture every piece")));
    EXPECT_TRUE(text.contains(QStringLiteral("There are too many stitches to chart every piece")));
    toy.pieces.erase(toy.pieces.begin() + 5, toy.pieces.end());
    EXPECT_FALSE(PdfReader(toy).flowing_text().contains(QStringLiteral("There are too many stitches")));
}

// What is printed is its own shape, with every stitch in its place.
TEST(PatternPages, AnOvalHasItsThreeSizes) {
    Toy toy = ball(4);
    toy.pieces[0] = piece_of("Sole", {26, 32, 38, 44}, End::left_open);
    toy.pieces[0].start = OvalChain{10};
    toy.pieces[0].area_stretch = 0;
    const QString said = PdfReader(toy).flowing_text();
    EXPECT_TRUE(said.contains(QStringLiteral(" deep"))) << said.toStdString();
    EXPECT_FALSE(said.contains(QStringLiteral("drawn round")));
    EXPECT_FALSE(said.contains(QStringLiteral("a round piece with the same")));
}

TEST(PatternPages, APieceThatCannotBeSolvedStitchByStitchIsSaidToBeDrawnRound) {
    Toy toy = ball(4);
    toy.pieces[0] = piece_of("Rug", {1300, 1306, 1312, 1318}, End::left_open);  // too many stitches
    toy.pieces[0].start = OvalChain{648};
    toy.pieces[0].area_stretch = 0;
    const QString said = PdfReader(toy).flowing_text();
    EXPECT_TRUE(said.contains(QStringLiteral("Rug, drawn round"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("a round piece with the same stitches.")));
    EXPECT_FALSE(PdfReader(puffin()).flowing_text().contains(QStringLiteral("a round piece with the same")));
}

TEST(PatternPages, TheCoverSaysTheSizeOfEveryPiece) {
    const QString cover = PdfReader(puffin()).text(0).replace(QChar::Nbsp, QLatin1Char(' '));
    EXPECT_TRUE(cover.contains(QStringLiteral("SIZE OF EACH PIECE"))) << cover.toStdString();
    EXPECT_TRUE(cover.contains(QRegularExpression(QStringLiteral("Body: \\d+ × \\d+ mm"))))
        << cover.toStdString();
    EXPECT_TRUE(cover.contains(QRegularExpression(QStringLiteral("Wing: \\d+ × \\d+ mm"))));
    EXPECT_TRUE(PdfReader(ball(4)).text(0).contains(QStringLiteral("FINISHED SIZE")));
    Toy many = ball(2);
    for (int i = 0; i < 9; ++i) many.pieces.push_back(many.pieces[0]);
    EXPECT_TRUE(PdfReader(many).text(0).contains(QStringLiteral("and 4 more")));
}

TEST(PatternPages, TheCoverSaysTheWidthHeightAndDepthOfAToyThatIsJoinedWithTheirRanges) {
    for (const LengthUnit units : {LengthUnit::millimetres, LengthUnit::inches}) {
        PatternOptions options;
        options.units = units;
        const Toy toy = joined_puffin();
        QString cover = PdfReader(toy, options).text(0).replace(QChar::Nbsp, QLatin1Char(' '));
        cover = cover.simplified();
        const auto study = study_pattern(toy, options);
        const auto said = [&](const SizeEstimate& size) { return length_words(size, units); };
        const QString whole = QStringLiteral("%1 wide, %2 tall, %3 deep")
                                  .arg(said(study->measures.width_mm), said(study->measures.height_mm),
                                       said(study->measures.depth_mm))
                                  .replace(QChar::Nbsp, QLatin1Char(' '));
        EXPECT_TRUE(whole.contains(QStringLiteral(" to ")));
        EXPECT_TRUE(cover.contains(whole)) << cover.toStdString() << "\n" << whole.toStdString();
        EXPECT_TRUE(cover.contains(QStringLiteral("FINISHED SIZE")));
        EXPECT_TRUE(pattern_text(toy, options, TextForm::plain)
                        .simplified()
                        .replace(QChar::Nbsp, QLatin1Char(' '))
                        .contains(whole));
    }
}

TEST(PatternPages, NotesToOneselfAreNotPrinted) {
    Toy toy = puffin();
    toy.notes = "For the harbour fair.";
    toy.private_notes = "Sell for more than last year.";
    const QString text = PdfReader(toy).flowing_text();
    EXPECT_TRUE(text.contains(QStringLiteral("For the harbour fair.")));
    EXPECT_FALSE(text.contains(QStringLiteral("last year")));
    toy.notes.clear();
    EXPECT_FALSE(PdfReader(toy).flowing_text().contains(QStringLiteral("Notes")));
}

TEST(PatternPages, AFlatPieceIsShownFromTheTopAndARuffledOneWithItsWaves) {
    const auto view_of = [](const std::vector<int>& counts) {
        Toy toy = ball(1);
        toy.pieces[0] = piece_of("Base", counts, End::left_open);
        toy.pieces[0].area_stretch = 0;
        return measured_view(study_piece(toy, 0));
    };
    EXPECT_EQ(view_of({6, 12, 18, 24, 30, 36}), FigureView::top);
    EXPECT_EQ(view_of({8, 16, 24, 32, 40, 48}), FigureView::above);  // as on the cover
    EXPECT_EQ(view_of(ball_counts(5)), FigureView::front);
}

TEST(PatternPages, EverySectionIsInTheOutlineInItsOrder) {
    const auto pages = PatternPages::compose(puffin(), {});
    QStringList titles;
    int page = 0;
    double top = 0;
    for (const Bookmark& bookmark : pages->outline()) {
        titles += bookmark.title;
        EXPECT_TRUE(bookmark.page > page || (bookmark.page == page && bookmark.top > top));
        page = bookmark.page;
        top = bookmark.top;
    }
    EXPECT_EQ(titles.join(QLatin1Char(',')).toStdString(),
              "Materials,Gauge,Abbreviations and stitches,Rounds,Body,Wing,Assembly,Finishing,Safety,"
              "Charts,Full-size outlines");
}

TEST(PatternPages, TheFileHasTheOutlineAndTheLinks) {
    const PdfReader pdf(puffin());
    const auto outline = pdf.document().outline();
    ASSERT_FALSE(outline.isEmpty());
    EXPECT_EQ(outline[0].name().toStdString(), "Materials");
    bool pieces = false;
    for (const auto& item : outline) pieces = pieces || item.hasChildren();
    EXPECT_TRUE(pieces);
    const std::unique_ptr<Poppler::Page> cover(pdf.document().page(0));
    int links = 0;
    for (const auto& link : cover->links()) {
        ASSERT_EQ(link->linkType(), Poppler::Link::Goto);
        const auto* jump = static_cast<const Poppler::LinkGoto*>(link.get());
        EXPECT_GT(jump->destination().pageNumber(), 1);
        ++links;
    }
    EXPECT_EQ(links, 9);  // the sections; pieces are within theirs
}

TEST(PatternPages, PropertiesOfTheFile) {
    const PdfReader pdf(puffin());
    EXPECT_EQ(pdf.document().title().toStdString(), "Puffin of the outer mole");
    EXPECT_EQ(pdf.document().author().toStdString(), "Harbour Hooks (invented)");
    EXPECT_EQ(pdf.document().creationDate(), testing::fixed_date());
    EXPECT_TRUE(
        pdf.document().metadata().contains(QStringLiteral("<pdfaid:conformance>B</pdfaid:conformance>")));
}

TEST(PatternPages, NoHeadingIsTheLastThingOnAPage) {
    // Every page count of rounds once, so that page ends fall everywhere.
    for (int n = 4; n <= 40; n += 3) {
        Toy toy = puffin();
        std::vector<int> counts;
        for (int i = 0; i < n; ++i) counts.push_back(6 + 2 * (i % 7));
        toy.pieces.insert(toy.pieces.begin(), piece_of("Trial", counts));
        const auto pages = PatternPages::compose(toy, {});
        const double lowest = mm(297 - 24 - 12);  // a heading and a line under it need more than 12 mm
        for (const Bookmark& bookmark : pages->outline())
            EXPECT_LT(bookmark.top, lowest) << bookmark.title.toStdString();
    }
}

TEST(PatternPages, ContentsCanBeLeftOut) {
    PatternOptions options;
    options.contents.cover = options.contents.materials = options.contents.abbreviations = false;
    options.contents.silhouette = false;
    const QString text = PdfReader(puffin(), options).flowing_text();
    EXPECT_FALSE(text.contains(QStringLiteral("Materials")));
    EXPECT_FALSE(text.contains(QStringLiteral("Full-size outlines")));
    EXPECT_TRUE(text.contains(QStringLiteral("6 sc in magic ring")));
    EXPECT_TRUE(text.contains(QStringLiteral("Safety")));  // always
    options.contents.teaching_sheet = true;
    EXPECT_TRUE(PdfReader(puffin(), options).flowing_text().contains(QStringLiteral("Teaching sheet")));
}

TEST(PatternPages, AnEmptyToyHasAPatternToo) {
    const auto pages = PatternPages::compose(Toy{}, {});
    ASSERT_TRUE(pages);
    EXPECT_GE(pages->count(), 2);
    Toy toy;
    toy.pieces.resize(2);
    EXPECT_TRUE(PdfReader(toy).flowing_text().contains(QStringLiteral("no rounds that can be printed")));
}

TEST(PatternPages, WorkCanBeWatchedAndStopped) {
    std::vector<int> seen;
    const auto pages =
        PatternPages::compose(puffin(), {}, {[&](int done, int) { seen.push_back(done); }, {}});
    EXPECT_TRUE(std::is_sorted(seen.begin(), seen.end()));
    EXPECT_GE(seen.size(), 3u);
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(PatternPages::compose(puffin(), {}, {{}, stop.get_token()}));
    EXPECT_FALSE(pdf_of(*pages, {}, nullptr, {{}, stop.get_token()}));
}

TEST(PatternPages, ALongPieceIsPrintedWhole) {
    Toy toy = ball(4);
    std::vector<int> counts;
    for (int i = 0; i < 400; ++i) counts.push_back(6 + i % 5);
    toy.pieces = {piece_of("Eel", counts)};
    const PdfReader pdf(toy);
    const QString text = pdf.flowing_text();
    for (int round = 1; round <= 400; round += 57) {
        EXPECT_TRUE(text.contains(QRegularExpression(QStringLiteral("\\b%1\\b").arg(round))));
    }
    EXPECT_TRUE(text.contains(QStringLiteral("Eel, continued")));
}

}  // namespace
}  // namespace roundwright::render
