#include "app/print/print_pattern.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QPageRanges>
#include <QPrinter>
#include <QPushButton>

#include "app/print/pages_view.h"
#include "app/print/pattern_preview.h"
#include "core/study/piece_study.h"
#include "tests/app/app_testing.h"
#include "tests/render/pages/outline_reader.h"

namespace roundwright::app {
namespace {

using render::Paper;
using render::PatternPages;
using render::testing::ink_bounds;
using render::testing::mm_per_dot;
using render::testing::outline_pages;
using render::testing::outline_width_mm;
using render::testing::PdfReader;

Toy ball() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
    toy.pieces[0].end = End::drawn_closed;
    return toy;
}

PatternPages pages_of(const Toy& toy, Paper paper = Paper::a4) {
    render::PatternOptions options;
    options.paper = paper;
    auto pages = PatternPages::compose(toy, options);
    EXPECT_TRUE(pages);
    return *pages;
}

QByteArray bytes_of(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

/// A printer whose paper is a file.
class PrintPatternTest : public ::testing::Test {
  protected:
    void SetUp() override { to_file(printer); }
    void to_file(QPrinter& any) const {
        any.setOutputFormat(QPrinter::PdfFormat);
        any.setOutputFileName(path);
    }
    [[nodiscard]] PdfReader printed(const PatternPages& pages) {
        set_paper(printer, pages);
        EXPECT_TRUE(print_pages(printer, pages));
        return PdfReader(bytes_of(path));
    }

    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("printed.pdf"));
    QPrinter printer{QPrinter::HighResolution};
};

TEST_F(PrintPatternTest, PrintsEveryPageOnItsPaper) {
    // ISO 216; ANSI/ASME Y14.1.
    for (const auto& [paper, millimetres] :
         {std::pair{Paper::a4, QSizeF(210, 297)}, std::pair{Paper::letter, QSizeF(215.9, 279.4)}}) {
        const PatternPages pages = pages_of(ball(), paper);
        const PdfReader pdf = printed(pages);
        ASSERT_TRUE(pdf.opened());
        ASSERT_EQ(pdf.pages(), pages.count());
        for (int i = 0; i < pdf.pages(); ++i) {
            const QSizeF points = std::unique_ptr<Poppler::Page>(pdf.document().page(i))->pageSizeF();
            EXPECT_NEAR(points.width() / 72 * 25.4, millimetres.width(), 0.4);
            EXPECT_NEAR(points.height() / 72 * 25.4, millimetres.height(), 0.4);
        }
    }
}

TEST_F(PrintPatternTest, TheWordsArePrintedAsWords) {
    const PdfReader pdf = printed(pages_of(ball()));
    const QString said = pdf.flowing_text();
    for (const char* words : {"Seal pup", "Materials", "[sc 4, inc] x 6", "choking hazard", "1 of "})
        EXPECT_TRUE(said.contains(QLatin1String(words))) << words;
}

// The two things that a maker holds work and ruler against. Printers round to their own dots.
TEST_F(PrintPatternTest, OutlineAndBarKeepTheirTrueSize) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        const Toy toy = ball();
        const Shape shape = study_piece(toy, 0).revolved();
        const PdfReader pdf = printed(pages_of(toy, paper));
        const auto found = outline_pages(pdf, QStringLiteral("Head,"));
        ASSERT_EQ(found.size(), 1U);
        const double top = found[0].label.bottom() + 1;
        const QRectF words = found[0].bar_words;
        const QRectF outline = ink_bounds(pdf, found[0].page, QRectF(30, top, 500, words.top() - 6 - top));
        EXPECT_NEAR(outline.width() - outline_width_mm, shape.width_mm, 0.2);
        EXPECT_NEAR(outline.height() - outline_width_mm, shape.height_mm, 0.2);
        const QRectF bar = ink_bounds(pdf, found[0].page,
                                      QRectF(40, words.top() - 3, words.left() - 42, words.height() + 6));
        EXPECT_NEAR(bar.width() - 0.8 * 25.4 / 72, 50, 2 * mm_per_dot);
    }
}

TEST_F(PrintPatternTest, WhatIsPrintedLiesWhereThePdfHasIt) {
    const Toy toy = ball();
    const PdfReader print = printed(pages_of(toy));
    const PdfReader pdf(toy);
    const auto place = [](const PdfReader& read, const char* words) {
        for (int i = 0; i < read.pages(); ++i) {
            const std::unique_ptr<Poppler::Page> page(read.document().page(i));
            const auto places = page->search(QLatin1String(words));
            if (!places.isEmpty()) return places[0].topLeft() + QPointF(0, 1'000 * i);
        }
        return QPointF();
    };
    for (const char* words : {"Hook", "dec around", "50 mm (1.97 in)"}) {
        EXPECT_GT(place(print, words).y(), 0) << words;
        EXPECT_NEAR(place(print, words).x(), place(pdf, words).x(), 0.5) << words;
        EXPECT_NEAR(place(print, words).y(), place(pdf, words).y(), 0.5) << words;
    }
}

TEST_F(PrintPatternTest, PrintsThePagesThatAreAskedFor) {
    const PatternPages pages = pages_of(ball());
    ASSERT_GE(pages.count(), 5);
    printer.setPageRanges(QPageRanges::fromString(QStringLiteral("2,4-5")));
    EXPECT_EQ(pages_to_print(printer, pages.count()), (std::vector<int>{1, 3, 4}));
    const PdfReader pdf = printed(pages);
    ASSERT_EQ(pdf.pages(), 3);
    EXPECT_TRUE(pdf.text(0).contains(QStringLiteral("2 of ")));
    EXPECT_TRUE(pdf.text(1).contains(QStringLiteral("4 of ")));
    printer.setPageRanges({});
    printer.setPageOrder(QPrinter::LastPageFirst);
    EXPECT_EQ(pages_to_print(printer, 3), (std::vector<int>{2, 1, 0}));
}

TEST_F(PrintPatternTest, APrinterThatTakesNothingIsReported) {
    printer.setOutputFileName(QStringLiteral("/no/such/folder/printed.pdf"));
    EXPECT_FALSE(print_pages(printer, pages_of(ball())));
}

TEST_F(PrintPatternTest, CancellingPrintsNothing) {
    int asked = 0;
    print_pattern(nullptr, pages_of(ball()), [&](QPrinter& chosen, int count, QWidget*) {
        to_file(chosen);
        EXPECT_GT(count, 1);
        return ++asked < 1;
    });
    EXPECT_EQ(asked, 1);
    EXPECT_FALSE(QFile::exists(path));
}

TEST_F(PrintPatternTest, PrintsOnTheChosenPrinter) {
    const PatternPages pages = pages_of(ball(), Paper::letter);
    print_pattern(nullptr, pages, [&](QPrinter& chosen, int, QWidget*) {
        EXPECT_EQ(chosen.docName(), QStringLiteral("Seal pup"));
        EXPECT_TRUE(has_paper_of(chosen, pages));
        to_file(chosen);
        return true;
    });
    EXPECT_EQ(PdfReader(bytes_of(path)).pages(), pages.count());
}

TEST_F(PrintPatternTest, OtherPaperIsAskedAbout) {
    const PatternPages pages = pages_of(ball());
    const auto choose_letter = [&](QPrinter& chosen, int, QWidget*) {
        to_file(chosen);
        chosen.setPageSize(QPageSize(QPageSize::Letter));
        EXPECT_FALSE(has_paper_of(chosen, pages));
        return true;
    };
    QString said;
    answer_next_dialog(QStringLiteral("No"), &said);
    print_pattern(nullptr, pages, choose_letter);
    EXPECT_TRUE(said.contains(QStringLiteral("A4"))) << said.toStdString();
    EXPECT_FALSE(QFile::exists(path));
    answer_next_dialog(QStringLiteral("Yes"));
    print_pattern(nullptr, pages, choose_letter);
    EXPECT_EQ(PdfReader(bytes_of(path)).pages(), pages.count());
}

/// Rejects every dialog that opens, and keeps what they were.
struct RejectDialogs {
    RejectDialogs() {
        QObject::connect(&timer, &QTimer::timeout, &timer, [this] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr) return;
            kinds << QString::fromLatin1(dialog->metaObject()->className());
            dialog->reject();
        });
        timer.start(10);
    }
    QTimer timer;
    QStringList kinds;
};

TEST(PatternPreviewPrint, TheButtonOpensTheSystemsDialogAndCancelLeavesAllAsItWas) {
    DocumentSession session;
    session.start(ball());
    PatternPreview preview(session);
    preview.show();
    ASSERT_TRUE(wait_until([&] { return preview.pages_view().page_count() > 1; }));
    QPushButton* print = nullptr;
    for (auto* button : preview.findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Pr&int…")) print = button;
    }
    ASSERT_NE(print, nullptr);
    const RejectDialogs rejected;
    const QImage before = preview.pages_view().grab().toImage();
    QTest::mouseClick(print, Qt::LeftButton);
    EXPECT_EQ(rejected.kinds, QStringList(QStringLiteral("QPrintDialog")));
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_TRUE(preview.isVisible());
    EXPECT_EQ(preview.pages_view().grab().toImage(), before);
}

}  // namespace
}  // namespace roundwright::app
