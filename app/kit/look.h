#pragma once

#include <QObject>

#include "app/kit/theme.h"

namespace roundwright::app {

/// What the maker wishes of this program where the desktop has no such setting, or for this program alone.
/// Kept in QSettings as it changes. The desktop's own wishes (SystemWishes) hold besides.
class ReadingAids : public QObject {
    Q_OBJECT
  public:
    [[nodiscard]] static ReadingAids& instance();

    [[nodiscard]] bool more_contrast() const { return more_contrast_; }
    /// Of the system's size of text, 100 to 200.
    [[nodiscard]] int text_percent() const { return text_percent_; }

    void set_more_contrast(bool more);
    void set_text_percent(int percent);

  Q_SIGNALS:
    void changed();

  private:
    explicit ReadingAids(QObject* parent);

    bool more_contrast_ = false;
    int text_percent_ = 100;
};

/// The look in more contrast: text at 7 to 1 and more (WCAG 2.2, 1.4.6).
[[nodiscard]] QPalette contrast_palette(bool dark);
[[nodiscard]] ThemeColours contrast_colours(bool dark);

/// Of the mark around what has the keyboard, px.
[[nodiscard]] int ring_width();

/// The desktop or the maker asks for less motion, as last told to Theme.
[[nodiscard]] bool less_motion();

}  // namespace roundwright::app
