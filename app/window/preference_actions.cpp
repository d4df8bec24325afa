#include "app/window/preference_actions.h"

#include <functional>
#include <vector>

#include "app/kit/action_maker.h"
#include "app/kit/look.h"

namespace roundwright::app {

namespace {

template <class Value>
struct Choice {
    QString text;
    Qt::Key key;  ///< with Ctrl and Alt
    Value value;
};

/// One of several, the present one checked.
template <class Value>
void add_choices(QMenu* menu, QWidget* window, Value now, const std::vector<Choice<Value>>& choices,
                 const std::function<void(Value)>& choose) {
    auto* group = new QActionGroup(window);
    for (const auto& [text, key, value] : choices) {
        auto* action = make_choice(window, text, Qt::CTRL | Qt::ALT | key, group);
        action->setChecked(value == now);
        QObject::connect(action, &QAction::triggered, window, [choose, value = value] { choose(value); });
        menu->addAction(action);
    }
}

}  // namespace

PreferenceActions::PreferenceActions(Preferences& preferences, QWidget* window)
    : QObject(window), preferences_(preferences), window_(window) {}

void PreferenceActions::fill_edit_menu(QMenu* menu) {
    fill_units(menu->addMenu(tr("&Lengths in")));
    fill_look(menu->addMenu(tr("Loo&k")));
}

void PreferenceActions::fill_units(QMenu* menu) {
    add_choices<LengthUnit>(menu, window_, preferences_.units(),
                            {{tr("&Millimetres"), Qt::Key_M, LengthUnit::millimetres},
                             {tr("&Inches"), Qt::Key_I, LengthUnit::inches}},
                            [this](LengthUnit units) { preferences_.set_units(units); });
}

void PreferenceActions::fill_look(QMenu* menu) {
    add_choices<Appearance>(menu, window_, preferences_.appearance(),
                            {{tr("Same as the &system"), Qt::Key_Y, Appearance::system},
                             {tr("&Light"), Qt::Key_L, Appearance::light},
                             {tr("&Dark"), Qt::Key_D, Appearance::dark}},
                            [this](Appearance appearance) { preferences_.set_appearance(appearance); });
    menu->addSeparator();
    auto* contrast = make_choice(window_, tr("More &contrast"), Qt::CTRL | Qt::ALT | Qt::Key_B);
    contrast->setChecked(ReadingAids::instance().more_contrast());
    connect(contrast, &QAction::toggled, &ReadingAids::instance(), &ReadingAids::set_more_contrast);
    menu->addAction(contrast);
    fill_text_sizes(menu->addMenu(tr("&Text size")));
    auto* motion = make_choice(window_, tr("Reduce &motion"), Qt::CTRL | Qt::ALT | Qt::Key_R);
    motion->setChecked(preferences_.reduced_motion());
    connect(motion, &QAction::toggled, &preferences_, &Preferences::set_reduced_motion);
    menu->addAction(motion);
}

void PreferenceActions::fill_text_sizes(QMenu* menu) {
    auto* group = new QActionGroup(window_);
    int key = Qt::Key_1;
    for (const int percent : {100, 125, 150, 200}) {
        const QString text = percent == 100 ? tr("Same as the &system") : tr("%1 %").arg(percent);
        const QKeySequence keys(QKeyCombination(Qt::CTRL | Qt::ALT | Qt::SHIFT, static_cast<Qt::Key>(key++)));
        auto* action = make_choice(window_, text, keys, group);
        action->setChecked(ReadingAids::instance().text_percent() == percent);
        connect(action, &QAction::triggered, this,
                [percent] { ReadingAids::instance().set_text_percent(percent); });
        menu->addAction(action);
    }
}

void PreferenceActions::fill_pattern_menu(QMenu* menu) {
    add_choices<Terms>(menu, window_, preferences_.terms(),
                       {{tr("&US terms"), Qt::Key_U, Terms::us}, {tr("U&K terms"), Qt::Key_K, Terms::uk}},
                       [this](Terms terms) { preferences_.set_terms(terms); });
}

}  // namespace roundwright::app
