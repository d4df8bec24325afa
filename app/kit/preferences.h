#pragma once

#include <QObject>

#include "core/language/words/terms.h"
#include "render/wording/length_unit.h"

namespace roundwright::app {

enum class Appearance { system, light, dark };

/// What the maker prefers, whichever toy is open. Kept in QSettings as it changes.
class Preferences : public QObject {
    Q_OBJECT
  public:
    explicit Preferences(QObject* parent = nullptr);

    [[nodiscard]] LengthUnit units() const { return units_; }
    [[nodiscard]] Terms terms() const { return terms_; }
    [[nodiscard]] Appearance appearance() const { return appearance_; }
    [[nodiscard]] bool reduced_motion() const { return reduced_motion_; }

    void set_units(LengthUnit units);
    void set_terms(Terms terms);
    void set_appearance(Appearance appearance);
    void set_reduced_motion(bool reduced);

  Q_SIGNALS:
    void units_changed(roundwright::LengthUnit units);
    void terms_changed(roundwright::Terms terms);
    void appearance_changed(roundwright::app::Appearance appearance);
    void reduced_motion_changed(bool reduced);

  private:
    LengthUnit units_ = LengthUnit::millimetres;
    Terms terms_ = Terms::us;
    Appearance appearance_ = Appearance::system;
    bool reduced_motion_ = false;
};

}  // namespace roundwright::app
