#include "app/shape/shape_panel.h"

#include <algorithm>

#include <QAction>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/kit/look.h"
#include "app/kit/spoken_roles.h"
#include "app/kit/theme.h"
#include "app/shape/picture_keyboard.h"
#include "app/shape/shape_actions.h"
#include "render/scene/stepping_ground.h"
#include "render/wording/as_sentence.h"
#include "render/wording/measure_words.h"
#include "render/wording/round_by_round.h"
#include "render/wording/round_phrases.h"
#include "render/wording/shape_words.h"

namespace roundwright::app {
namespace {

constexpr int words_margins = 26;  // left and right
constexpr QSize least_picture(240, 160);
constexpr QSize least_picture_folded(140, 84);
constexpr int around_words = 18;  // what the layouts leave above, below and between
constexpr int most_lines_folded = 4;
/// An edit that lights another round is seen with its shape, in one picture; a shape that takes longer than
/// this is not waited for.
constexpr int light_after_ms = 80;

QToolButton* button_for(QAction* action, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setFocusPolicy(Qt::TabFocus);
    return button;
}

/// Folded, a size may be parted from its range, but no range within.
QString size_shown(QString words, bool folded) {
    constexpr QChar joiner(0x2060), dash(0x2013);
    return folded ? words.replace(dash, QString(joiner) + dash + joiner) : sizes_kept_whole(words);
}

}  // namespace

ShapePanel::ShapePanel(DocumentSession& session, const ShapeActions& actions, QWidget* parent)
    : QWidget(parent),
      session_(session),
      stack_(new QStackedWidget(this)),
      message_(new QLabel(this)),
      size_(new StillLabel(tr("Size of the piece"), this)),
      detail_(new StillLabel(tr("Shape in words"), this)),
      sign_(new ShapeSign(session, this)),
      arrival_(new ShapeArrival(this)),
      scale_bar_(new ScaleBar(session.preferences(), this)),
      bar_(new QWidget(this)),
      controls_(new QBoxLayout(QBoxLayout::LeftToRight, bar_)),
      views_(new QHBoxLayout),
      tools_(new QHBoxLayout) {
    message_->setAlignment(Qt::AlignCenter);
    message_->setWordWrap(true);
    message_->setMargin(24);
    stack_->addWidget(message_);
    stack_->setMinimumSize(least_picture_folded);
    QFont large = size_->font();
    large.setPointSizeF(large.pointSizeF() * 1.2);
    large.setWeight(QFont::DemiBold);
    size_->setFont(large);
    QSizePolicy room_kept = scale_bar_->sizePolicy();
    room_kept.setRetainSizeWhenHidden(true);
    scale_bar_->setSizePolicy(room_kept);

    build_controls(actions);
    auto* words = new QVBoxLayout;
    words->setContentsMargins(words_margins / 2, 2, words_margins / 2, 0);
    words->setSpacing(2);
    words->addWidget(size_);
    words->addWidget(detail_);
    words->addWidget(sign_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 6);
    layout->setSpacing(4);
    layout->addWidget(stack_, 1);
    layout->addWidget(bar_);
    layout->addLayout(words);

    follow_session();
    show_words();
}

void ShapePanel::build_controls(const ShapeActions& actions) {
    views_->setSpacing(2);
    for (QAction* action : {actions.front, actions.side, actions.top, actions.fit, actions.stuffed}) {
        views_->addWidget(button_for(action, this));
    }
    views_->addStretch(1);
    tools_->addStretch(1);
    tools_->addWidget(scale_bar_);
    controls_->addLayout(views_, 1);
    controls_->addLayout(tools_);
    controls_->setSpacing(2);
    controls_->setContentsMargins(6, 2, 4, 0);
}

void ShapePanel::follow_session() {
    connect(&session_, &DocumentSession::surface_ready, this, &ShapePanel::show_surface);
    connect(&session_, &DocumentSession::study_ready, this, &ShapePanel::show_words);
    connect(&session_, &DocumentSession::toy_changed, this, &ShapePanel::show_words);
    connect(&session_, &DocumentSession::current_piece_changed, this,
            [this](int piece) { show_surface(piece); });
    connect(&session_, &DocumentSession::selection_changed, this, &ShapePanel::show_selection);
    connect(&session_.preferences(), &Preferences::units_changed, this, &ShapePanel::show_words);
    connect(&session_, &DocumentSession::study_ready, this, &ShapePanel::light_selection);
    connect(&session_, &DocumentSession::every_stitch_changed, sign_, &ShapeSign::follow);
    light_later_.setSingleShot(true);
    light_later_.setInterval(light_after_ms);
    connect(&light_later_, &QTimer::timeout, this, &ShapePanel::light_selection);
    turning_.setInterval(40);
    connect(&turning_, &QTimer::timeout, this, &ShapePanel::turn_a_little);
}

/// Where there is no room side by side, the controls stand in two rows.
void ShapePanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const QMargins margins = controls_->contentsMargins();
    const int side_by_side = views_->sizeHint().width() + tools_->sizeHint().width() + controls_->spacing() +
                             margins.left() + margins.right();
    const bool narrow = width() < side_by_side;
    controls_->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    fit_lines();
    fold_or_unfold();
}

/// The words get their lines by the room they have, not by what they say.
void ShapePanel::fit_lines() {
    const auto lines = [this](const QLabel& label, const QString& words) {
        return 1 + label.fontMetrics().horizontalAdvance(words) / std::max(width() - words_margins, 1);
    };
    size_->set_lines(lines(*size_, tr("888 mm wide (888–888), 888 mm tall (888–888), edge waves 88 mm")));
    detail_->set_lines(1 + lines(*detail_, tr("Wider than tall, widest at round 888, open at the last round; "
                                              "fabric about 8.8 mm thick, 888 mm wide inside")));
}

void ShapePanel::fold_or_unfold() {
    const int wanted = least_picture.height() + bar_->sizeHint().height() + size_->sizeHint().height() +
                       detail_->sizeHint().height() + sign_->sizeHint().height() + around_words;
    const bool folded = width() < unfolded_width() || height() < wanted;
    bar_->setVisible(!folded);
    detail_->setVisible(!folded);
    sign_->setVisible(!folded);
    if (folded) size_->set_lines(most_lines_folded);
    size_->say(size_shown(size_text_, bar_->isHidden()));
}

int ShapePanel::unfolded_width() const {
    const QMargins margins = controls_->contentsMargins();
    const int controls = std::max(views_->minimumSize().width(), tools_->minimumSize().width());
    return std::max(least_picture.width(), controls + margins.left() + margins.right());
}

QSize ShapePanel::minimumSizeHint() const {
    return {least_picture_folded.width(), least_picture_folded.height() + around_words +
                                              most_lines_folded * size_->fontMetrics().lineSpacing()};
}

void ShapePanel::offer(QAction* action) {
    auto* button = button_for(action, this);
    button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    tools_->insertWidget(0, button);
}

void ShapePanel::make_scene() {
    if (scene_) return;
    scene_ = render::make_scene_view(stack_);
    speak_as_picture(*scene_->widget(), tr("The stuffed shape"));
    stack_->addWidget(scene_->widget());
    render::set_stepping_ground(*scene_, Theme::colours().scene);
    session_.set_most_triangles(scene_->comfortable_triangles());
    connect(scene_, &render::SceneView::hovered, this, &ShapePanel::show_hover);
    connect(scene_, &render::SceneView::clicked, this,
            [this](int round, int) { Q_EMIT round_clicked(round); });
    connect(scene_, &render::SceneView::camera_changed, this,
            [this] { scale_bar_->set_pixels_per_mm(scene_->pixels_per_mm()); });
    show_surface(session_.current_piece());
    show_selection();
}

bool ShapePanel::take_keyboard() {
    return give_keyboard_to_picture(stack_->currentIndex() == 1 ? scene_ : nullptr, this);
}

void ShapePanel::set_scene_colour(const QColor& colour) {
    if (scene_) render::set_stepping_ground(*scene_, colour);
}

void ShapePanel::show_surface(int piece) {
    if (piece != session_.current_piece()) return;
    const auto surface = session_.surface(piece);
    if (scene_ && surface) {
        light_selection();
        arrival_->show(*scene_, surface, session_.shown_study(piece));
        scale_bar_->set_pixels_per_mm(scene_->pixels_per_mm());
    }
    show_words();
}

void ShapePanel::show_words() {
    const int piece = session_.current_piece();
    const auto shown = session_.shown_study(piece);
    const bool has_rounds = session_.piece() && (!session_.piece()->rounds.empty() || session_.shows_trial());
    const bool there = has_rounds && shown && shown->measures().usable();
    if (!session_.piece()) {
        message_->setText(tr("This toy has no piece yet. Add one with Piece ▸ New piece."));
    } else if (!has_rounds) {
        message_->setText(tr("Type the first round: 6, 12, 18 … The shape appears here."));
    } else {
        message_->setText(session_.is_up_to_date(piece) ? tr("No shape was found for these rounds.")
                                                        : tr("Working out the shape…"));
    }
    stack_->setCurrentIndex(there && scene_ ? 1 : 0);
    scale_bar_->setVisible(there);
    size_text_ = there ? as_sentence(size_words(*shown, session_.preferences().units())) : QString();
    size_->say(size_shown(size_text_, bar_->isHidden()));
    detail_->say(hover_.isEmpty() ? words() : hover_);
    sign_->follow();
    if (scene_) describe_picture(*scene_->widget(), picture_words());
}

QString ShapePanel::words() const {
    const auto shown = session_.shown_study(session_.current_piece());
    const bool trial = session_.shows_trial();
    const bool there = trial || (session_.piece() && !session_.piece()->rounds.empty());
    if (!there || !shown || !shown->measures().usable()) return {};
    const LengthUnit units = session_.preferences().units();
    QString text = QStringLiteral("%1; %2").arg(shape_words(*shown, units), fabric_words(*shown, units));
    if (trial) return tr("With the rounds being typed: %1").arg(text);
    if (!(shown->problem().area_stretch > 0)) text = tr("Not stuffed: %1").arg(text);
    if (session_.shows_last_good_shape(session_.current_piece())) {
        text = tr("The last good shape: %1").arg(text);
    }
    if (!session_.selection().empty())
        text = tr("%1; %2 selected").arg(text, rounds_phrase(session_.selection()));
    return as_sentence(text);
}

/// What the picture shows, and what its keys do.
QString ShapePanel::picture_words() const {
    const auto shown = session_.shown_study(session_.current_piece());
    const QString keys = tr("The arrow keys turn it, plus and minus zoom, Home fits it.");
    if (size_text_.isEmpty() || !shown) return keys;
    const QString profile = as_sentence(profile_words(*shown, session_.preferences().units()));
    return QStringLiteral("%1. %2. %3").arg(size_text_, profile, keys);
}

void ShapePanel::show_hover(int round, int stitch) {
    hover_ = round < 0 ? QString() : tr("Round %1, stitch %2").arg(round + 1).arg(stitch + 1);
    show_words();
}

void ShapePanel::show_selection() {
    const bool shape_is_coming = session_.piece() && !session_.is_up_to_date(session_.current_piece());
    shape_is_coming ? light_later_.start() : light_selection();
    show_words();
}

void ShapePanel::light_selection() {
    light_later_.stop();
    if (scene_) scene_->set_lit_rounds(session_.selection());
}

// --- the first slow turn

void ShapePanel::turn_once() {
    turned_degrees_ = 0;
    turning_.start();
}

void ShapePanel::turn_a_little() {
    constexpr double degrees_per_tick = 360.0 * 40 / 12'000;  // once around in twelve seconds
    if (!scene_ || stack_->currentIndex() == 0) return;
    const bool touched = QGuiApplication::mouseButtons() != Qt::NoButton;
    turned_degrees_ += degrees_per_tick;
    if (touched || turned_degrees_ >= 360 || less_motion()) {
        turning_.stop();
        return;
    }
    scene_->turn(degrees_per_tick, 0);
}

}  // namespace roundwright::app
