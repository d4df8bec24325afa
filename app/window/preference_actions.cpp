#include "app/window/preference_actions.h"

#include <functional>
#include <vector>

#include "app/kit/action_catalogue.h"
#include "app/kit/action_maker.h"
#include "app/kit/look.h"

namespace roundwright::app {

namespace {

template <class Value>
struct Choice {
    const char* id;
    Value value;
};

/// One of several, the present one checked.
template <class Value>
void add_choices(QMenu* menu, QActionGroup* group, QWidget* window, Value now,
                 const std::vector<Choice<Value>>& choices, const std::function<void(Value)>& choose) {
    for (const auto& [id, value] : choices) {
        auto* action = make_choice(window, id, group);
        action->setChecked(value == now);
        QObject::connect(action, &QAction::triggered, window, [choose, value = value] { choose(value); });
        menu->addAction(action);
    }
}

template <class Value>
void add_choices(QMenu* menu, QWidget* window, Value now, const std::vector<Choice<Value>>& choices,
                 const std::function<void(Value)>& choose) {
    add_choices(menu, new QActionGroup(window), window, now, choices, choose);
}

}  // namespace

PreferenceActions::PreferenceActions(Preferences& preferences, QWidget* window)
    : QObject(window), preferences_(preferences), window_(window) {}

void PreferenceActions::fill_edit_menu(QMenu* menu) {
    fill_units(menu->addMenu(place_text(ActionPlace::lengths)));
    fill_look(menu->addMenu(place_text(ActionPlace::look)));
}

void PreferenceActions::fill_units(QMenu* menu) {
    add_choices<LengthUnit>(menu, window_, preferences_.units(),
                            {{"lengths.mm", LengthUnit::millimetres}, {"lengths.inches", LengthUnit::inches}},
                            [this](LengthUnit units) { preferences_.set_units(units); });
}

void PreferenceActions::fill_look(QMenu* menu) {
    add_choices<Appearance>(menu, window_, preferences_.appearance(),
                            {{"look.system", Appearance::system},
                             {"look.light", Appearance::light},
                             {"look.dark", Appearance::dark}},
                            [this](Appearance appearance) { preferences_.set_appearance(appearance); });
    menu->addSeparator();
    auto* contrast = make_choice(window_, "look.more-contrast");
    contrast->setChecked(ReadingAids::instance().more_contrast());
    connect(contrast, &QAction::toggled, &ReadingAids::instance(), &ReadingAids::set_more_contrast);
    menu->addAction(contrast);
    fill_text_sizes(menu->addMenu(place_text(ActionPlace::text_size)));
    auto* motion = make_choice(window_, "look.reduce-motion");
    motion->setChecked(preferences_.reduced_motion());
    connect(motion, &QAction::toggled, &preferences_, &Preferences::set_reduced_motion);
    menu->addAction(motion);
}

void PreferenceActions::fill_text_sizes(QMenu* menu) {
    ReadingAids& aids = ReadingAids::instance();
    add_choices<int>(
        menu, window_, aids.text_percent(),
        {{"text-size.100", 100}, {"text-size.125", 125}, {"text-size.150", 150}, {"text-size.200", 200}},
        [&aids](int percent) { aids.set_text_percent(percent); });
}

void PreferenceActions::fill_pattern_menu(QMenu* menu) {
    auto* terms = new QActionGroup(window_);
    const auto choose = [this](Terms chosen) { preferences_.set_terms(chosen); };
    add_choices<Terms>(menu, terms, window_, preferences_.terms(),
                       {{"pattern.us-terms", Terms::us}, {"pattern.uk-terms", Terms::uk}}, choose);
    add_choices<Terms>(menu->addMenu(place_text(ActionPlace::languages)), terms, window_,
                       preferences_.terms(),
                       {{"languages.german", Terms::german},
                        {"languages.french", Terms::french},
                        {"languages.spanish", Terms::spanish},
                        {"languages.dutch", Terms::dutch},
                        {"languages.danish", Terms::danish},
                        {"languages.portuguese", Terms::portuguese},
                        {"languages.italian", Terms::italian}},
                       choose);
}

}  // namespace roundwright::app
