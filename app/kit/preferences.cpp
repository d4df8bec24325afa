#include "app/kit/preferences.h"

#include <QLocale>
#include <QSettings>

namespace roundwright::app {
namespace {

constexpr auto units_key = "units";
constexpr auto terms_key = "terms";
constexpr auto appearance_key = "appearance";
constexpr auto motion_key = "reduced-motion";
constexpr auto stitches_key = "every-stitch";

QString stored(const char* key, const QString& otherwise) {
    return QSettings().value(QLatin1String(key), otherwise).toString();
}

void store(const char* key, const QVariant& value) { QSettings().setValue(QLatin1String(key), value); }

LengthUnit usual_units() {
    return QLocale::system().measurementSystem() == QLocale::ImperialUSSystem ? LengthUnit::inches
                                                                              : LengthUnit::millimetres;
}

Terms usual_terms() {
    return QLocale::system().territory() == QLocale::UnitedKingdom ? Terms::uk : Terms::us;
}

QString name_of(LengthUnit units) {
    return units == LengthUnit::inches ? QStringLiteral("in") : QStringLiteral("mm");
}

QString name_of(Terms terms) {
    const std::string_view code = terms_code(terms);
    return QString::fromLatin1(code.data(), static_cast<qsizetype>(code.size()));
}

QString name_of(Appearance appearance) {
    switch (appearance) {
        case Appearance::light:
            return QStringLiteral("light");
        case Appearance::dark:
            return QStringLiteral("dark");
        case Appearance::system:
            break;
    }
    return QStringLiteral("system");
}

Appearance appearance_named(const QString& name) {
    if (name == name_of(Appearance::light)) return Appearance::light;
    if (name == name_of(Appearance::dark)) return Appearance::dark;
    return Appearance::system;
}

}  // namespace

Preferences::Preferences(QObject* parent) : QObject(parent) {
    units_ = stored(units_key, name_of(usual_units())) == name_of(LengthUnit::inches)
                 ? LengthUnit::inches
                 : LengthUnit::millimetres;
    const std::string terms = stored(terms_key, name_of(usual_terms())).toStdString();
    terms_ = terms_of_code(terms).value_or(usual_terms());
    appearance_ = appearance_named(stored(appearance_key, {}));
    reduced_motion_ = QSettings().value(QLatin1String(motion_key), false).toBool();
    every_stitch_ = QSettings().value(QLatin1String(stitches_key), true).toBool();
}

void Preferences::set_units(LengthUnit units) {
    if (units == units_) return;
    units_ = units;
    store(units_key, name_of(units));
    Q_EMIT units_changed(units);
}

void Preferences::set_terms(Terms terms) {
    if (terms == terms_) return;
    terms_ = terms;
    store(terms_key, name_of(terms));
    Q_EMIT terms_changed(terms);
}

void Preferences::set_appearance(Appearance appearance) {
    if (appearance == appearance_) return;
    appearance_ = appearance;
    store(appearance_key, name_of(appearance));
    Q_EMIT appearance_changed(appearance);
}

void Preferences::set_reduced_motion(bool reduced) {
    if (reduced == reduced_motion_) return;
    reduced_motion_ = reduced;
    store(motion_key, reduced);
    Q_EMIT reduced_motion_changed(reduced);
}

void Preferences::set_every_stitch(bool every) {
    if (every == every_stitch_) return;
    every_stitch_ = every;
    store(stitches_key, every);
    Q_EMIT every_stitch_changed(every);
}

}  // namespace roundwright::app
