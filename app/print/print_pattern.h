#pragma once

#include <functional>
#include <vector>

#include "render/pages/pattern_pages.h"

class QPrinter;
class QWidget;

namespace roundwright::app {

/// Sets a printer to the paper of the pages, upright and without margins: they have white of their own, and
/// at the edge of the paper nothing is moved or scaled, so that outlines come out at their true size.
void set_paper(QPrinter& printer, const render::PatternPages& pages);

/// Whether the printer's paper is that of the pages, to a millimetre.
[[nodiscard]] bool has_paper_of(const QPrinter& printer, const render::PatternPages& pages);

/// The pages a printer is set to print, from 0, in the order it wants them.
[[nodiscard]] std::vector<int> pages_to_print(const QPrinter& printer, int count);

/// Prints them at their true size. False if the printer does not take the job.
[[nodiscard]] bool print_pages(QPrinter& printer, const render::PatternPages& pages);

/// Lets the maker choose and set up a printer; false: print nothing.
using ChoosePrinter = std::function<bool(QPrinter& printer, int pages, QWidget* parent)>;
/// By the system's dialog.
[[nodiscard]] bool choose_printer(QPrinter& printer, int pages, QWidget* parent);

/// Prints on a printer that the maker chooses, and says what went wrong. Asks before other paper is used.
void print_pattern(QWidget* parent, const render::PatternPages& pages,
                   const ChoosePrinter& choose = choose_printer);

}  // namespace roundwright::app
