#include "app/reshape/reshape_dialog.h"

#include <algorithm>

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "app/kit/announcer.h"
#include "app/kit/field_widgets.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/scroll_to_fit.h"
#include "app/reshape/hand_sculpting.h"
#include "app/reshape/preview_stack.h"
#include "app/reshape/reshape_answers.h"
#include "core/reshape/carry_joins.h"
#include "core/study/study_surface.h"
#include "render/wording/plain_text.h"
#include "render/wording/reshape_words.h"

namespace roundwright::app {
namespace {

const auto answer_topic = QStringLiteral("answer");

std::shared_ptr<const PieceForm> form_of(const DocumentSession& session) {
    const auto study = session.study(session.current_piece());
    const Shape* warm = study && study->round_solved().usable() ? &study->round_solved() : nullptr;
    auto form = std::make_shared<PieceForm>(piece_form(*session.piece(), gauge_of(session.toy()), warm));
    if (study) form->fidelity = round_stage(*study->shape).measures.fidelity;
    return form;
}

/// Old and new are compared, so both are the round solver's.
std::shared_ptr<const StitchSurface> old_surface(const DocumentSession& session, int piece) {
    const auto study = session.study(piece);
    if (!study || !study->shape->stitched) return session.surface(piece);
    return std::make_shared<const StitchSurface>(study_surface(
        session.toy(), static_cast<std::size_t>(piece), as_round_solved(*study), {.relief = Relief::shaded}));
}

}  // namespace

ReshapeDialog::ReshapeDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent),
      session_(session),
      piece_(session.current_piece()),
      form_(form_of(session)),
      announcer_(new Announcer(this)),
      questions_(new ReshapeQuestions(session.preferences(), session.toy(), *form_)),
      answers_(new ReshapeAnswers(session.preferences())),
      preview_(new PreviewStack(session.preferences())),
      sculpting_(new HandSculpting(preview_->outline(), form_, this)) {
    setWindowTitle(tr("Reshape %1").arg(name_in_words(form_->piece.name)));
    build();
    connect_all();
    preview_->set_old_surface(old_surface(session_, piece_));
    preview_->outline().set_starts_at_top(form_->piece.starts_at_top);
    preview_->outline().set_old(form_->outline());
    if (form_->usable())
        answers_->show_now(
            tr("Now %1: %2.").arg(size_words(*form_, session_.preferences().units()), count_words(*form_)));
    change_wish();
}

// --- layout

void ReshapeDialog::build() {
    auto* columns = new QHBoxLayout;
    columns->setSpacing(16);
    columns->addWidget(scrolled_column(questions_));
    if (has_room_for_three()) {
        columns->addLayout(picture(), 1);
        columns->addWidget(answers_);
    } else {
        columns->addWidget(picture_over_answers(), 1);
    }

    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Use these rounds"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &ReshapeDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &ReshapeDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons);
    resize(room_on_screen(*this, {1120, 660}));
}

/// Questions, picture and answers beside each other.
bool ReshapeDialog::has_room_for_three() const {
    constexpr int around = 60;  // margins, spacing and a scroll bar
    const int wanted = questions_->minimumWidth() + preview_->outline().minimumSizeHint().width() +
                       ReshapeAnswers::most_width(*this) + around;
    return wanted <= room_on_screen(*this, {QWIDGETSIZE_MAX, QWIDGETSIZE_MAX}).width();
}

QWidget* ReshapeDialog::picture_over_answers() {
    auto* both = new QWidget;
    auto* layout = new QVBoxLayout(both);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(picture(), 1);
    layout->addWidget(answers_);
    answers_->stand_under_the_picture();
    auto* area = new QScrollArea;
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(both);
    area->setMinimumWidth(preview_->outline().minimumSizeHint().width() +
                          area->verticalScrollBar()->sizeHint().width());
    return area;
}

QVBoxLayout* ReshapeDialog::picture() {
    as_fabric_ = new QPushButton(tr("Show &fabric"));
    as_fabric_->setCheckable(true);
    as_fabric_->setAutoDefault(false);
    as_fabric_->setToolTip(tr("The stuffed piece in 3D, with the old one behind it"));
    handle_words_ = words_label(tr("Handle you are moving"));
    legend_ = new QLabel;
    legend_->setWordWrap(true);
    legend_->setForegroundRole(QPalette::PlaceholderText);
    auto* under = new QHBoxLayout;
    under->addWidget(legend_, 1);
    under->addWidget(as_fabric_);
    auto* picture = new QVBoxLayout;
    picture->addWidget(preview_, 1);
    picture->addWidget(handle_words_);
    picture->addLayout(under);
    return picture;
}

void ReshapeDialog::connect_all() {
    connect(&task_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { show_nothing(why); });
    connect(questions_, &ReshapeQuestions::wish_changed, this, &ReshapeDialog::change_wish);
    connect(questions_, &ReshapeQuestions::edited, this, &ReshapeDialog::ask);
    connect(questions_, &ReshapeQuestions::started_over, this, &ReshapeDialog::start_by_hand);
    connect(answers_, &ReshapeAnswers::way_chosen, this, [this](const WayOn& way) {
        propose({way.made, way.back, std::nullopt, {}});
    });
    connect(sculpting_, &HandSculpting::sculpted, this, &ReshapeDialog::take_sculpted);
    connect(&preview_->outline(), &OutlineView::handle_changed, this,
            [this] { handle_words_->setText(preview_->outline().handle_words()); });
    connect(as_fabric_, &QPushButton::toggled, this, [this](bool fabric) {
        preview_->set_shows_fabric(fabric);
        show_legend();
    });
    say_again_by_key(*this, *announcer_);
    connect(preview_, &PreviewStack::failed, this, [this](const QString& why) {
        as_fabric_->setChecked(false);
        legend_->setText(why);
    });
}

// --- the question

void ReshapeDialog::change_wish() {
    handle_words_->setVisible(by_hand());
    show_legend();
    off_line_mm_.reset();
    if (by_hand()) {
        as_fabric_->setChecked(false);
        start_by_hand();
    } else {
        sculpting_->stop();
        ask();
    }
    QWidget* const first = by_hand() ? &preview_->outline() : questions_->first_field();
    if (!questions_->is_choosing()) first->setFocus();
}

void ReshapeDialog::show_legend() {
    if (preview_->shows_fabric())
        legend_->setText(tr("Wire: now. Fabric: new."));
    else if (by_hand())
        legend_->setText(tr("Dashed: now. With handles: the line you pull. Filled: what you get."));
    else
        legend_->setText(tr("Dashed: now. Filled: new."));
}

void ReshapeDialog::start_by_hand() {
    task_.cancel();
    answers_->show_ways({});
    sculpting_->set_reach(questions_->reach_mm());
    if (!sculpting_->start_over()) show_nothing(tr("This piece has no shape yet. Fix its rounds first."));
}

ReshapeQuestion ReshapeDialog::question() const {
    ReshapeQuestion question{session_.toy(),
                             *form_,
                             questions_->target(),
                             {},
                             questions_->keeps_rounds(),
                             questions_->for_all_pieces(),
                             {questions_->tidiness(), {}},
                             static_cast<std::size_t>(piece_)};
    if (questions_->wish() == Wish::yarn_and_hook) question.worked_as = questions_->worked_as();
    question.form.piece.worked = questions_->worked();
    question.toy.pieces[question.piece].worked = question.form.piece.worked;
    return question;
}

void ReshapeDialog::ask() {
    if (by_hand()) {
        sculpting_->set_reach(questions_->reach_mm());
        sculpting_->set_tidiness(questions_->tidiness());
        return;
    }
    task_.start_latest(render::Lane::longer,
                       [this, asked = question()](const render::TaskRun& run) mutable -> render::Delivery {
                           asked.options.stop = run.stop;
                           return [this, answer = answer_to(asked)]() mutable { take(std::move(answer)); };
                       });
}

// --- the answer

void ReshapeDialog::take(ReshapeAnswer answer) {
    // With nothing to undo there is only one way on.
    if (answer.ways.size() <= 1) answer.ways.clear();
    if (!answer.ways.empty() && answer.ways.back().shape_error_mm > 0)
        answer.ways.push_back({answer.proposal.back, answer.proposal.made, 0});
    std::reverse(answer.ways.begin(), answer.ways.end());
    answers_->show_ways(std::move(answer.ways));
    propose(std::move(answer.proposal));
}

void ReshapeDialog::take_sculpted(const Sculpted& sculpted) {
    handle_words_->setText(preview_->outline().handle_words());
    if (!sculpted.usable) return show_nothing(tr("No rounds can make this outline."));
    ReshapeProposal proposal;
    Reshaped& made = proposal.made;
    made.code = sculpted.piece == form_->piece ? ReshapeCode::unchanged : ReshapeCode::met;
    made.form = {sculpted.piece, form_->gauge, piece_graph(sculpted.piece), {}, sculpted.shape};
    made.form.problem = shape_problem(sculpted.piece, made.form.graph.graph, form_->gauge);
    PieceForm old = *form_;
    old.piece.worked = questions_->worked();
    proposal.back = frog_back_for(session_.toy(), old, made.form);
    off_line_mm_ = sculpted.apart_mm;
    propose(std::move(proposal));
}

void ReshapeDialog::propose(ReshapeProposal proposal) {
    if (!has_piece(proposal.made.code))
        return show_nothing(outcome_words(proposal.made, session_.preferences().units()));
    proposal_ = std::move(proposal);
    show_proposal();
}

void ReshapeDialog::show_nothing(const QString& why) {
    proposal_.reset();
    answers_->show_nothing(why);
    announcer_->say(answer_topic, why, Weight::answer);
    preview_->outline().set_new(std::nullopt);
    apply_->setEnabled(false);
}

QString ReshapeDialog::answer_words() const {
    const LengthUnit units = session_.preferences().units();
    const QString words = outcome_words(proposal_->made, units);
    if (!off_line_mm_) return words;
    if (proposal_->made.code == ReshapeCode::unchanged)
        return tr(
            "Drag a handle, or use the keys: Up and Down choose one, Left and Right move it in and out, "
            "Page Up and Page Down move it along. Ctrl+Z undoes.");
    return tr("%1 %2").arg(words, off_line_words(*off_line_mm_, units));
}

bool ReshapeDialog::same_rounds() const {
    return questions_->wish() == Wish::yarn_and_hook && questions_->keeps_rounds();
}

QString ReshapeDialog::remarks() const {
    QStringList words{freed_yarn_words(proposal_->back, session_.preferences().units()),
                      rewritten_words(proposal_->made.rewritten)};
    if (proposal_->whole_toy && session_.toy().pieces.size() > 1)
        words << whole_toy_words(static_cast<int>(session_.toy().pieces.size()), questions_->keeps_rounds());
    words.removeAll(QString());
    return words.join(QLatin1Char(' '));
}

void ReshapeDialog::show_proposal() {
    const Reshaped& made = proposal_->made;
    const QString back = frog_back_words(proposal_->back);
    answers_->show_answer({answer_words(), back, remarks()}, compare(*form_, made.form));
    announcer_->say(answer_topic, joined_sentences({answer_words(), back}), Weight::answer);
    preview_->outline().set_new(made.form.outline());
    auto toy = std::make_shared<Toy>(proposal_->whole_toy ? *proposal_->whole_toy : session_.toy());
    toy->pieces[static_cast<std::size_t>(piece_)] = made.form.piece;
    preview_->set_piece(std::move(toy), static_cast<std::size_t>(piece_));
    apply_->setEnabled(!session_.read_only() && made.code != ReshapeCode::unchanged);
}

QString ReshapeDialog::answer() const { return answers_->answer(); }

QString ReshapeDialog::frog_back() const { return answers_->frog_back(); }

// --- the end

void ReshapeDialog::accept() {
    if (!proposal_ || task_.busy()) return;
    const QString name = name_in_words(form_->piece.name);
    Piece piece = proposal_->made.form.piece;
    piece.worked = progress_kept(questions_->worked(), proposal_->back);
    const auto index = static_cast<std::size_t>(piece_);
    // Of the whole toy the joins are carried over already, the piece's with the rest.
    Toy toy = proposal_->whole_toy ? *proposal_->whole_toy : with_piece_remade(session_.toy(), index, piece);
    toy.pieces[index] = std::move(piece);
    session_.edit(by_hand()              ? tr("Reshape %1").arg(name)
                  : same_rounds()        ? tr("Change yarn or hook")
                  : proposal_->whole_toy ? tr("Resize all pieces")
                                         : tr("Resize %1").arg(name),
                  std::move(toy));
    QDialog::accept();
}

}  // namespace roundwright::app
