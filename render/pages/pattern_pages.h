#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QRectF>
#include <QSizeF>
#include <QString>

#include "core/toy/toy.h"
#include "render/pages/pattern_options.h"

class QPainter;

namespace roundwright::render {

/// An entry of the outline: a section, or a piece within one.
struct Bookmark {
    QString title;
    int level = 1;
    int page = 0;    ///< from 0
    double top = 0;  ///< layout units from the upper edge of the page
};

/// A link from an area of a page to a place on another.
struct PageLink {
    int page = 0;
    QRectF area;
    int target_page = 0;
    double target_top = 0;
};

/// A printed pattern, ready to be painted page by page: the same for a preview, a printer and a PDF. Copies
/// share what they hold; painting does not change it. Compose it in any thread, paint it in any thread, but
/// in one at a time.
class PatternPages {
  public:
    /// Works out everything the pattern tells and lays it out. Nothing if stopped.
    [[nodiscard]] static std::optional<PatternPages> compose(const Toy& toy, const PatternOptions& options,
                                                             const Progress& progress = {});

    [[nodiscard]] int count() const;
    /// Size of every page, layout units (`units_per_inch` to the inch).
    [[nodiscard]] QSizeF size() const;
    [[nodiscard]] const PatternOptions& options() const;

    /// Paints a page with its upper left corner at the painter's origin. Scale the painter from layout units
    /// to the device: by its dots per inch over `units_per_inch`.
    void paint(QPainter& painter, int page) const;

    [[nodiscard]] const std::vector<Bookmark>& outline() const;
    [[nodiscard]] const std::vector<PageLink>& links() const;
    /// Title, for the file's properties.
    [[nodiscard]] QString title() const;
    [[nodiscard]] QString author() const;

  private:
    struct Content;
    explicit PatternPages(std::shared_ptr<const Content> content);
    std::shared_ptr<const Content> content_;
};

}  // namespace roundwright::render
