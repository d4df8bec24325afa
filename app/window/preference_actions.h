#pragma once

#include <QObject>

#include "app/kit/preferences.h"

class QMenu;
class QWidget;

namespace roundwright::app {

/// The maker's own choices, in the menus where they are looked for: units and look under Edit, the terms of
/// the trade under Pattern.
class PreferenceActions : public QObject {
    Q_OBJECT
  public:
    PreferenceActions(Preferences& preferences, QWidget* window);

    void fill_edit_menu(QMenu* menu);
    void fill_pattern_menu(QMenu* menu);

  private:
    void fill_units(QMenu* menu);
    void fill_look(QMenu* menu);
    void fill_text_sizes(QMenu* menu);

    Preferences& preferences_;
    QWidget* window_;
};

}  // namespace roundwright::app
