#include "app/print/print_pattern.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QCoreApplication>
#include <QMessageBox>
#include <QPageLayout>
#include <QPageRanges>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>

namespace roundwright::app {

namespace {

struct PrintPatternText {
    Q_DECLARE_TR_FUNCTIONS(PrintPattern)
};

QPageSize page_size(const render::PatternPages& pages) {
    return QPageSize(pages.options().paper == render::Paper::a4 ? QPageSize::A4 : QPageSize::Letter);
}

bool wants_other_paper(QWidget* parent, const QPrinter& printer, const render::PatternPages& pages) {
    const auto answer = QMessageBox::question(
        parent, PrintPatternText::tr("Print"),
        PrintPatternText::tr(
            "The printer is set to %1, but the pattern is laid out for %2 and will not fit at actual size. "
            "Print it anyway?")
            .arg(printer.pageLayout().pageSize().name(), page_size(pages).name()));
    return answer == QMessageBox::Yes;
}

}  // namespace

void set_paper(QPrinter& printer, const render::PatternPages& pages) {
    printer.setPageLayout(
        QPageLayout(page_size(pages), QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter));
    printer.setFullPage(true);
}

bool has_paper_of(const QPrinter& printer, const render::PatternPages& pages) {
    constexpr double tolerance_mm = 1;
    const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
    const QSizeF wanted = pages.size() / render::units_per_mm;
    return std::abs(paper.width() - wanted.width()) < tolerance_mm &&
           std::abs(paper.height() - wanted.height()) < tolerance_mm;
}

std::vector<int> pages_to_print(const QPrinter& printer, int count) {
    const QPageRanges ranges = printer.pageRanges();
    std::vector<int> pages;
    for (int page = 0; page < count; ++page) {
        if (ranges.isEmpty() || ranges.contains(page + 1)) pages.push_back(page);
    }
    if (printer.pageOrder() == QPrinter::LastPageFirst) std::ranges::reverse(pages);
    return pages;
}

bool print_pages(QPrinter& printer, const render::PatternPages& pages) {
    QPainter painter;
    if (!painter.begin(&printer)) return false;
    const double scale = static_cast<double>(printer.resolution()) / render::units_per_inch;
    bool first = true;
    for (const int page : pages_to_print(printer, pages.count())) {
        if (!std::exchange(first, false) && !printer.newPage()) return false;
        painter.save();
        painter.scale(scale, scale);
        pages.paint(painter, page);
        painter.restore();
    }
    return painter.end();
}

bool choose_printer(QPrinter& printer, int pages, QWidget* parent) {
    QPrintDialog dialog(&printer, parent);
    dialog.setMinMax(1, pages);
    return dialog.exec() == QDialog::Accepted;
}

void print_pattern(QWidget* parent, const render::PatternPages& pages, const ChoosePrinter& choose) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(pages.title());
    set_paper(printer, pages);
    if (!choose(printer, pages.count(), parent)) return;
    if (!has_paper_of(printer, pages) && !wants_other_paper(parent, printer, pages)) return;
    printer.setFullPage(true);
    if (!print_pages(printer, pages)) {
        QMessageBox::warning(parent, PrintPatternText::tr("Print"),
                             PrintPatternText::tr("The pattern could not be sent to the printer."));
    }
}

}  // namespace roundwright::app
