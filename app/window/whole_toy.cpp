#include "app/window/whole_toy.h"

#include <QApplication>
#include <QMenu>

#include "app/face/face_panel.h"
#include "app/kit/action_catalogue.h"
#include "app/kit/announcer.h"
#include "app/rounds/fast_entry_line.h"
#include "app/shape/shape_actions.h"
#include "app/shape/shape_panel.h"
#include "app/window/panel_column.h"
#include "render/wording/as_sentence.h"
#include "render/wording/join_place.h"

namespace roundwright::app {
namespace {

const auto join_topic = QStringLiteral("join");
const auto whole_topic = QStringLiteral("whole-toy");

/// As small as what it shows, not as the largest of all.
class ShownStack : public QStackedWidget {
  public:
    using QStackedWidget::QStackedWidget;
    [[nodiscard]] QSize sizeHint() const override {
        return currentWidget() != nullptr ? currentWidget()->sizeHint() : QStackedWidget::sizeHint();
    }
    [[nodiscard]] QSize minimumSizeHint() const override {
        return currentWidget() != nullptr ? currentWidget()->minimumSizeHint()
                                          : QStackedWidget::minimumSizeHint();
    }
};

}  // namespace

WholeToy::WholeToy(DocumentSession& session, const Parts& parts, ShapeActions& shape_actions, QWidget* window)
    : QObject(window),
      session_(session),
      parts_(parts),
      shape_actions_(shape_actions),
      state_(new ToyState(session, this)),
      joins_(new JoinsPanel(session, *state_, window)),
      toy_(new ToyPanel(session, *state_, shape_actions, window)),
      actions_(new ToyActions(session, *state_, *joins_, window)),
      left_(new ShownStack(window)),
      picture_(new ShownStack(window)) {
    left_->addWidget(parts_.rounds);
    left_->addWidget(joins_);
    picture_->addWidget(parts_.shape);
    picture_->addWidget(toy_);
    connect(&session_, &DocumentSession::whole_toy_shown, this, &WholeToy::follow);
    connect(joins_, &JoinsPanel::opened, this, &WholeToy::rounds_wanted);
    connect(toy_, &ToyPanel::opened, this, &WholeToy::rounds_wanted);
}

void WholeToy::fill_piece_menu(QMenu* menu) {
    menu->addSeparator();
    actions_->fill(menu->addMenu(place_text(ActionPlace::toy)));
}

void WholeToy::share_keys(FacePanel& face, PanelColumn& panels) {
    face.set_other(
        {[this] { return actions_->can_move(); }, [this](int up, int right) { actions_->nudge(up, right); }});
    connect(actions_, &ToyActions::can_move_changed, &face, &FacePanel::update_nudges);
    connect(toy_, &ToyPanel::feature_picked, this, [&face, &panels](int feature) {
        face.select(feature);
        panels.open_section(QStringLiteral("face"));
    });
}

void WholeToy::announce_to(Announcer& announcer) {
    connect(&session_, &DocumentSession::toy_changed, this, [this, &announcer](const ChangeSet& changes) {
        if (changes.joins && session_.shows_whole_toy())
            announcer.say(join_topic, picked_in_words(), Weight::place);
    });
    connect(&session_, &DocumentSession::whole_toy_shown, this, [this, &announcer](bool whole) {
        announcer.say(whole_topic, whole ? tr("The whole toy is on show") : QString(), Weight::answer);
    });
}

QString WholeToy::picked_in_words() const {
    const ToyUnit* unit = joins_->unit();
    const Toy& toy = session_.toy();
    if (unit == nullptr) return {};
    if (!unit->join || *unit->join >= toy.joins.size())
        return as_sentence(tr("%1 stands by itself").arg(copy_name(toy, unit->copies.front())));
    const Join& join = toy.joins[*unit->join];
    return as_sentence(
        tr("%1: %2").arg(join_title(toy, join), join_words(toy, join, session_.preferences().units())));
}

/// The keyboard goes along, if it was in what is hidden now.
void WholeToy::follow(bool whole) {
    const QWidget* focus = QApplication::focusWidget();
    const bool goes_along =
        focus != nullptr &&
        (left_->isAncestorOf(focus) || picture_->isAncestorOf(focus) || parts_.line->isAncestorOf(focus));
    show_it(whole);
    if (goes_along && whole) joins_->take_keyboard();
    if (goes_along && !whole) Q_EMIT rounds_wanted();
}

void WholeToy::show_it(bool whole) {
    const bool first = whole && toy_->scene() == nullptr;
    if (first) toy_->make_scene();
    left_->setCurrentIndex(whole ? 1 : 0);
    picture_->setCurrentIndex(whole ? 1 : 0);
    parts_.line->setVisible(!whole);
    shape_actions_.drive(whole ? toy_->scene() : parts_.shape->scene());
    if (first) Q_EMIT scene_made();
}

bool WholeToy::take_left() { return joins_->take_keyboard(); }

bool WholeToy::take_picture() {
    return session_.shows_whole_toy() ? toy_->take_keyboard() : parts_.shape->take_keyboard();
}

void WholeToy::set_scene_colour(const QColor& colour) { toy_->set_scene_colour(colour); }

}  // namespace roundwright::app
