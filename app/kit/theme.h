#pragma once

#include <QColor>
#include <QObject>
#include <QPalette>

#include "app/kit/preferences.h"

namespace roundwright::app {

/// Colours that a palette has no role for. All text colours meet WCAG 2.1 AA (4.5 to 1) on the window and
/// base colours of their theme.
struct ThemeColours {
    QColor quiet_text;    ///< second in rank: units, hints
    QColor line;          ///< between panels
    QColor rim;           ///< around what is filled in or ticked: 3 to 1 on its grounds (WCAG 2.1, 1.4.11)
    QColor soft_accent;   ///< behind selected rows
    QColor accent;        ///< the one accent
    QColor warning_text;  ///< beside a sign and a word, never alone
    QColor error_text;
    QColor scene;  ///< behind the shape
};

/// The look of the whole program: Fusion, a palette of our own in light and dark, and a few rules of style.
class Theme : public QObject {
    Q_OBJECT
  public:
    explicit Theme(Preferences& preferences, QObject* parent = nullptr);

    [[nodiscard]] bool dark() const { return dark_; }
    [[nodiscard]] static const ThemeColours& colours();

  Q_SIGNALS:
    void changed();

  private:
    void apply();

    Preferences& preferences_;
    bool dark_ = false;
};

[[nodiscard]] QPalette theme_palette(bool dark);
[[nodiscard]] ThemeColours theme_colours(bool dark);

}  // namespace roundwright::app
