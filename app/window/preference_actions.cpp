#include "app/window/preference_actions.h"

#include <tuple>

#include "app/window/action_maker.h"

namespace roundwright::app {

PreferenceActions::PreferenceActions(Preferences& preferences, QWidget* window)
    : QObject(window), preferences_(preferences), window_(window) {}

void PreferenceActions::fill_edit_menu(QMenu* menu) {
    fill_units(menu->addMenu(tr("&Lengths in")));
    fill_look(menu->addMenu(tr("Loo&k")));
}

void PreferenceActions::fill_units(QMenu* menu) {
    auto* group = new QActionGroup(window_);
    const std::tuple<QString, Qt::Key, LengthUnit> choices[] = {
        {tr("&Millimetres"), Qt::Key_M, LengthUnit::millimetres},
        {tr("&Inches"), Qt::Key_I, LengthUnit::inches}};
    for (const auto& [text, key, units] : choices) {
        auto* choice = make_choice(window_, text, Qt::CTRL | Qt::ALT | key, group);
        choice->setChecked(preferences_.units() == units);
        connect(choice, &QAction::triggered, this, [this, units = units] { preferences_.set_units(units); });
        menu->addAction(choice);
    }
}

void PreferenceActions::fill_look(QMenu* menu) {
    auto* group = new QActionGroup(window_);
    const std::tuple<QString, Qt::Key, Appearance> choices[] = {
        {tr("As the &system"), Qt::Key_Y, Appearance::system},
        {tr("&Light"), Qt::Key_L, Appearance::light},
        {tr("&Dark"), Qt::Key_D, Appearance::dark}};
    for (const auto& [text, key, appearance] : choices) {
        auto* choice = make_choice(window_, text, Qt::CTRL | Qt::ALT | key, group);
        choice->setChecked(preferences_.appearance() == appearance);
        connect(choice, &QAction::triggered, this,
                [this, appearance = appearance] { preferences_.set_appearance(appearance); });
        menu->addAction(choice);
    }
    menu->addSeparator();
    auto* motion = make_choice(window_, tr("Less &motion"), Qt::CTRL | Qt::ALT | Qt::Key_R);
    motion->setChecked(preferences_.reduced_motion());
    connect(motion, &QAction::toggled, &preferences_, &Preferences::set_reduced_motion);
    menu->addAction(motion);
}

void PreferenceActions::fill_pattern_menu(QMenu* menu) {
    auto* group = new QActionGroup(window_);
    const std::tuple<QString, Qt::Key, Terms> choices[] = {{tr("&US terms"), Qt::Key_U, Terms::us},
                                                           {tr("U&K terms"), Qt::Key_K, Terms::uk}};
    for (const auto& [text, key, terms] : choices) {
        auto* choice = make_choice(window_, text, Qt::CTRL | Qt::ALT | key, group);
        choice->setChecked(preferences_.terms() == terms);
        connect(choice, &QAction::triggered, this, [this, terms = terms] { preferences_.set_terms(terms); });
        menu->addAction(choice);
    }
}

}  // namespace roundwright::app
