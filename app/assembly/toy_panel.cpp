#include "app/assembly/toy_panel.h"

#include <algorithm>
#include <cmath>

#include <QAction>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/assembly/join_edits.h"
#include "app/assembly/toy_units.h"
#include "app/kit/field_widgets.h"
#include "app/kit/flow_layout.h"
#include "app/kit/spoken_roles.h"
#include "app/kit/theme.h"
#include "app/session/assembled_toy.h"
#include "app/shape/picture_keyboard.h"
#include "app/shape/shape_actions.h"
#include "render/scene/stepping_ground.h"
#include "render/wording/as_sentence.h"
#include "render/wording/feature_name.h"
#include "render/wording/join_place.h"
#include "render/wording/measure_words.h"
#include "render/wording/toy_words.h"

namespace roundwright::app {
namespace {

constexpr int apart_steps = 100;
constexpr int apart_width = 110;
constexpr int words_margin = 13;
constexpr double larger_size = 1.2;
constexpr int least_size_lines = 2;
constexpr int around_words = 18;  // the layout's spacing and margins above and below them

QToolButton* button_for(QAction* action) {
    auto* button = new QToolButton;
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setFocusPolicy(Qt::TabFocus);
    return button;
}

QWidget* labelled(const QString& text, QWidget* field) {
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(6, 0, 0, 0);
    auto* label = new QLabel(text);
    label->setBuddy(field);
    row->addWidget(label);
    row->addWidget(field);
    return both;
}

/// Large where each of the sizes fits on a line, else as the other words are.
QFont size_font(const QString& sizes, const QFont& usual, int across) {
    const QFont large = larger_font(usual, larger_size, QFont::DemiBold);
    const QFontMetrics metrics(large);
    const auto phrases = sizes.split(QStringLiteral(", "));
    const bool fits = std::ranges::all_of(phrases, [&](const QString& phrase) {
        return metrics.horizontalAdvance(phrase + QLatin1Char(',')) <= across;
    });
    return fits ? large : usual;
}

bool anything_in(const AssembledToy* toy) {
    return toy != nullptr &&
           std::ranges::any_of(toy->surfaces(), [](const auto& surface) { return surface != nullptr; });
}

}  // namespace

ToyPanel::ToyPanel(DocumentSession& session, ToyState& state, const ShapeActions& actions, QWidget* parent)
    : QWidget(parent),
      session_(session),
      state_(state),
      stack_(new QStackedWidget(this)),
      controls_(new QScrollArea(this)),
      message_(new QLabel(this)),
      size_(new StillLabel(tr("Size of the toy"), this)),
      detail_(new StillLabel(tr("The toy in words"), this)),
      scale_bar_(new ScaleBar(session.preferences(), this)),
      apart_(new QSlider(Qt::Horizontal)),
      stance_(new QComboBox) {
    build(actions);
    follow_session();
    show_words();
}

void ToyPanel::build(const ShapeActions& actions) {
    message_->setAlignment(Qt::AlignCenter);
    message_->setWordWrap(true);
    message_->setMargin(24);
    stack_->addWidget(message_);
    stack_->setMinimumSize(160, 100);
    size_->setFont(larger_font(font(), larger_size, QFont::DemiBold));
    detail_->set_lines(2);
    apart_->setRange(0, apart_steps);
    apart_->setPageStep(apart_steps / 4);
    apart_->setMinimumWidth(apart_width);
    apart_->setMinimumHeight(24);
    for (const Stance stance : {Stance::standing, Stance::sitting, Stance::lying})
        stance_->addItem(stance_name(stance), static_cast<int>(stance));
    controls_->setFrameShape(QFrame::NoFrame);
    controls_->setWidgetResizable(true);
    controls_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    controls_->setFocusPolicy(Qt::NoFocus);
    controls_->setWidget(controls_for(actions));
    auto* words = new QVBoxLayout;
    words->setContentsMargins(words_margin, 2, 0, 0);  // room for the longest size in large type
    words->setSpacing(2);
    words->addWidget(size_);
    words->addWidget(detail_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 6);
    layout->setSpacing(4);
    layout->addWidget(stack_, 1);
    layout->addWidget(controls_);
    layout->addLayout(words);
}

QWidget* ToyPanel::controls_for(const ShapeActions& actions) {
    auto* controls = new QWidget;
    auto* flow = new FlowLayout(controls);
    flow->setContentsMargins(6, 2, 4, 0);
    flow->setSpacing(2);
    for (QAction* action : {actions.front, actions.side, actions.top, actions.fit})
        flow->addWidget(button_for(action));
    flow->addWidget(labelled(tr("Apart"), apart_));
    flow->addWidget(labelled(tr("Stance"), stance_));
    flow->addWidget(scale_bar_);
    return controls;
}

void ToyPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    share_height();
}

/// A row and a half, so that it is seen that there are more.
int ToyPanel::least_controls() const { return stance_->sizeHint().height() * 3 / 2; }

/// The picture keeps its least height; the controls have a row at least, and no more than they fill.
void ToyPanel::share_height() {
    constexpr int most_lines = 4;
    constexpr double room_for_breaks = 1.2;
    const int across = std::max(1, width() - 2 * words_margin);
    size_->setFont(size_font(size_text_, font(), across));
    const double wanted = room_for_breaks * size_->fontMetrics().horizontalAdvance(size_text_) / across;
    const int fitting = (height() - stack_->minimumHeight() - least_controls() -
                         detail_->sizeHint().height() - around_words) /
                        size_->fontMetrics().lineSpacing();
    size_->set_lines(std::clamp(static_cast<int>(std::ceil(wanted)), 1, std::clamp(fitting, 1, most_lines)));
    const int words = size_->sizeHint().height() + detail_->sizeHint().height();
    const int filled = controls_->widget()->layout()->heightForWidth(controls_->viewport()->width());
    const int room = height() - stack_->minimumHeight() - words - around_words;
    controls_->setFixedHeight(std::min(filled, std::max(least_controls(), room)));
}

void ToyPanel::follow_session() {
    connect(&session_, &DocumentSession::assembled_changed, this, &ToyPanel::show_words);
    connect(&session_, &DocumentSession::toy_changed, this, &ToyPanel::show_words);
    connect(&session_, &DocumentSession::file_changed, this, &ToyPanel::show_words);
    connect(&session_.preferences(), &Preferences::units_changed, this, &ToyPanel::show_words);
    connect(&state_, &ToyState::picked_changed, this, &ToyPanel::show_words);
    connect(&state_, &ToyState::hidden_changed, this, &ToyPanel::show_words);
    connect(&state_, &ToyState::apart_changed, this, [this] {
        const QSignalBlocker quiet(apart_);
        apart_->setValue(static_cast<int>(state_.apart() * apart_steps));
    });
    connect(apart_, &QSlider::valueChanged, this,
            [this](int value) { state_.set_apart(static_cast<double>(value) / apart_steps); });
    connect(stance_, &QComboBox::activated, this, [this](int row) {
        JoinEdits(session_).set_stance(static_cast<Stance>(stance_->itemData(row).toInt()));
    });
}

void ToyPanel::make_scene() {
    if (scene_ != nullptr) return;
    scene_ = render::make_scene_view(stack_);
    speak_as_picture(*scene_->widget(), tr("The whole toy"));
    stack_->addWidget(scene_->widget());
    render::set_stepping_ground(*scene_, Theme::colours().scene);
    session_.set_most_triangles_together(scene_->comfortable_triangles());
    pictured_ = new ToyScene(session_, state_, *scene_, this);
    // After the picture has moved its pieces.
    connect(&state_, &ToyState::apart_changed, scene_, &render::SceneView::fit);
    connect(pictured_, &ToyScene::hovered, this, &ToyPanel::show_hover);
    connect(pictured_, &ToyScene::opened, this, &ToyPanel::opened);
    connect(pictured_, &ToyScene::feature_picked, this, &ToyPanel::feature_picked);
    connect(scene_, &render::SceneView::camera_changed, this,
            [this] { scale_bar_->set_pixels_per_mm(scene_->pixels_per_mm()); });
    scale_bar_->set_pixels_per_mm(scene_->pixels_per_mm());
    show_words();
}

void ToyPanel::look_at_overlap(std::size_t overlap) {
    if (pictured_ != nullptr) pictured_->look_at_overlap(overlap);
}

bool ToyPanel::take_keyboard() {
    return give_keyboard_to_picture(stack_->currentIndex() == 1 ? scene_ : nullptr, this);
}

void ToyPanel::set_scene_colour(const QColor& colour) {
    if (scene_ == nullptr) return;
    render::set_stepping_ground(*scene_, colour);
    pictured_->recolour();
}

QSize ToyPanel::minimumSizeHint() const {
    const int sizes = least_size_lines * size_->fontMetrics().lineSpacing() + 2;
    return {stack_->minimumWidth(),
            stack_->minimumHeight() + least_controls() + sizes + detail_->sizeHint().height() + around_words};
}

QString ToyPanel::message() const {
    if (session_.toy().pieces.empty())
        return tr("This toy has no piece yet. Add one with Piece ▸ New piece.");
    const bool is_known = session_.assembled() != nullptr && session_.assembled_is_up_to_date();
    return is_known ? tr("No piece has a shape yet. Type the rounds of one: the toy appears here.")
                    : tr("Putting the toy together…");
}

void ToyPanel::show_words() {
    const auto toy = session_.assembled();
    message_->setText(message());
    stack_->setCurrentIndex(anything_in(toy.get()) && scene_ != nullptr ? 1 : 0);
    // While a piece is dragged, the size of the place before stays until the new one is known.
    if (toy == nullptr || !anything_in(toy.get())) size_text_.clear();
    if (toy != nullptr && toy->measures != nullptr && toy->measures->usable())
        size_text_ = toy_size_words(*toy->measures, session_.preferences().units());
    share_height();
    size_->say(sizes_kept_whole(size_text_));
    detail_->say(hover_.isEmpty() ? detail_words() : hover_);
    stance_->setCurrentIndex(stance_->findData(static_cast<int>(session_.toy().stance)));
    stance_->setEnabled(!session_.read_only());
    if (scene_ != nullptr) describe_picture(*scene_->widget(), picture_words());
}

void ToyPanel::show_hover(const std::optional<ToyScene::Pointed>& at) {
    hover_ = at ? as_sentence(tr("%1: round %2, stitch %3")
                                  .arg(copy_name(session_.toy(), at->copy), QString::number(at->round + 1),
                                       QString::number(at->stitch + 1)))
                : QString();
    detail_->say(hover_.isEmpty() ? detail_words() : hover_);
}

/// How it stands, what is hidden, what runs into each other.
QString ToyPanel::detail_words() const {
    const auto assembled = session_.assembled();
    if (assembled == nullptr) return {};
    const Toy& toy = *assembled->toy;
    QStringList sentences;
    for (const HiddenFeature& hidden : assembled->hidden) {
        const PlacedPiece& own = assembled->placed().pieces[hidden.placed];
        const Piece& piece = *assembled->solved()[own.solved].piece;
        sentences << tr("%1 of %2 hidden by %3")
                         .arg(as_sentence(
                                  feature_name(piece.features[static_cast<std::size_t>(hidden.feature)])),
                              copy_name(toy, own.copy),
                              copy_name(toy, assembled->placed().pieces[hidden.by].copy));
    }
    if (assembled->measures != nullptr && assembled->measures->usable()) {
        sentences.prepend(as_sentence(toy_standing_words(*assembled->measures, toy.stance)));
        for (const PieceOverlap& overlap : assembled->measures->overlaps) {
            const auto& pieces = assembled->placed().pieces;
            sentences << as_sentence(tr("%1 and %2 run into each other")
                                         .arg(copy_name(toy, pieces[overlap.one].copy),
                                              copy_name(toy, pieces[overlap.other].copy)));
        }
    }
    if (state_.any_hidden()) sentences << tr("Some pieces are not shown");
    return sentences.join(QStringLiteral(". "));
}

QString ToyPanel::joins_in_words() const {
    const Toy& toy = session_.toy();
    QStringList sentences;
    for (const ToyUnit& unit : units_of(toy)) {
        if (unit.join)
            sentences << as_sentence(tr("%1: %2").arg(join_title(toy, toy.joins[*unit.join]),
                                                      join_place_words(toy, toy.joins[*unit.join])));
        else
            sentences << as_sentence(tr("%1 stands by itself").arg(copy_name(toy, unit.copies.front())));
    }
    return sentences.join(QStringLiteral(". "));
}

QString ToyPanel::picture_words() const {
    const QString keys = tr(
        "The arrow keys turn it, plus and minus zoom, Home fits it, Enter goes to the rounds of the picked "
        "piece");
    QStringList sentences{size_text_, joins_in_words(), detail_words(), keys};
    sentences.removeAll(QString());
    return tr("%1.").arg(sentences.join(QStringLiteral(". ")));
}

}  // namespace roundwright::app
