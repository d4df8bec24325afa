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
    /// Shapes are worked out stitch by stitch; false: by the round alone.
    [[nodiscard]] bool every_stitch() const { return every_stitch_; }

    void set_units(LengthUnit units);
    void set_terms(Terms terms);
    void set_appearance(Appearance appearance);
    void set_reduced_motion(bool reduced);
    void set_every_stitch(bool every);

  Q_SIGNALS:
    void units_changed(roundwright::LengthUnit units);
    void terms_changed(roundwright::Terms terms);
    void appearance_changed(roundwright::app::Appearance appearance);
    void reduced_motion_changed(bool reduced);
    void every_stitch_changed(bool every);

  private:
    LengthUnit units_ = LengthUnit::millimetres;
    Terms terms_ = Terms::us;
    Appearance appearance_ = Appearance::system;
    bool reduced_motion_ = false;
    bool every_stitch_ = true;
};

}  // namespace roundwright::app
