#include "app/reshape/reshape_dialog.h"

#include <algorithm>
#include <numbers>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSlider>
#include <QSpinBox>
#include <QTableView>
#include <QVBoxLayout>

#include "app/panels/field_widgets.h"
#include "app/panels/length_spin_box.h"
#include "app/reshape/preview_stack.h"
#include "app/reshape/reshape_words.h"
#include "app/reshape/rounds_comparison_model.h"
#include "app/reshape/ways_model.h"
#include "app/session/length_text.h"
#include "core/gauge/hook.h"

namespace roundwright::app {
namespace {

constexpr double most_mm = 2'000;
constexpr int tidiness_steps = 10;
constexpr int usual_answers_width = 390;
constexpr double usual_reach = 0.35;  // of the piece's height

QTableView* quiet_table(const QString& name, QAbstractItemModel* model) {
    auto* table = new QTableView;
    table->setModel(model);
    table->setAccessibleName(name);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setTabKeyNavigation(false);
    table->setShowGrid(false);
    table->setWordWrap(false);
    table->setStyleSheet(QStringLiteral("QTableView::item { padding: 0 6px; }"));
    table->verticalHeader()->hide();
    table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 6);
    table->horizontalHeader()->setHighlightSections(false);
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    return table;
}

QFont larger(QFont font, double factor, bool bold) {
    font.setPointSizeF(font.pointSizeF() * factor);
    if (bold) font.setWeight(QFont::DemiBold);
    return font;
}

std::shared_ptr<const PieceForm> form_of(const DocumentSession& session) {
    const auto study = session.study(session.current_piece());
    const Shape* warm = study && study->shape.usable() ? &study->shape : nullptr;
    return std::make_shared<PieceForm>(piece_form(*session.piece(), gauge_of(session.toy()), warm));
}

}  // namespace

ReshapeDialog::ReshapeDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent), session_(session), piece_(session.current_piece()), form_(form_of(session)) {
    setWindowTitle(tr("Reshape %1").arg(QString::fromStdString(form_->piece.name)));
    build();
    connect_all();
    show_fields();
    preview_->set_old_surface(session_.surface(piece_));
    preview_->outline().set_starts_at_top(form_->piece.starts_at_top);
    preview_->outline().set_old(form_->outline());
    work_out();
}

// --- layout

void ReshapeDialog::build() {
    preview_ = new PreviewStack(session_.preferences());
    as_fabric_ = new QPushButton(tr("As &fabric"));
    as_fabric_->setCheckable(true);
    as_fabric_->setAutoDefault(false);
    as_fabric_->setToolTip(tr("The stuffed piece in 3D, the old one as a ghost"));
    handle_words_ = words_label(tr("Handle"));
    auto* legend = new QLabel(tr("dashed: as it is; filled: new"));
    legend->setForegroundRole(QPalette::PlaceholderText);

    auto* under = new QHBoxLayout;
    under->addWidget(handle_words_, 1);
    under->addWidget(legend);
    under->addWidget(as_fabric_);
    auto* middle = new QVBoxLayout;
    middle->addWidget(preview_, 1);
    middle->addLayout(under);

    auto* columns = new QHBoxLayout;
    columns->setSpacing(16);
    columns->addWidget(questions());
    columns->addLayout(middle, 1);
    columns->addWidget(answers());

    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Use these rounds"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &ReshapeDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &ReshapeDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons);
    resize(1120, 660);
}

void ReshapeDialog::make_sizes() {
    const Preferences& preferences = session_.preferences();
    const Size size = form_->size();
    width_ = new LengthSpinBox(preferences, 1, most_mm);
    height_ = new LengthSpinBox(preferences, 1, most_mm);
    around_ = new LengthSpinBox(preferences, 1, most_mm * std::numbers::pi);
    width_->show_millimetres(size.width_mm);
    height_->show_millimetres(size.height_mm);
    around_->show_millimetres(size.width_mm * std::numbers::pi);
    for (auto* box : {width_, height_, around_}) box->setFont(larger(box->font(), 1.25, false));
    reach_ = new LengthSpinBox(preferences, 1, most_mm);
    reach_->show_millimetres(std::max(2 * form_->gauge.round_height_mm, usual_reach * size.height_mm));
    reach_->setToolTip(tr("How far along the outline a handle takes its neighbours with it"));
}

void ReshapeDialog::make_other_wishes() {
    wish_ = new QComboBox;
    wish_->addItems({tr("its width"), tr("its height"), tr("width and height"), tr("the way around it"),
                     tr("a scale"), tr("another hook, same size"), tr("its outline, by hand")});
    wish_->setAccessibleName(tr("What to give"));
    scale_ = new QDoubleSpinBox;
    scale_->setRange(1, 10'000);
    scale_->setDecimals(0);
    scale_->setSuffix(tr(" %"));
    scale_->setValue(100);
    hook_ = new QDoubleSpinBox;
    hook_->setRange(least_hook_mm, most_hook_mm);
    hook_->setDecimals(2);
    hook_->setSingleStep(0.25);
    hook_->setSuffix(tr(" mm"));
    hook_->setValue(session_.toy().hook_mm);
    for (auto* box : {scale_, hook_}) box->setKeyboardTracking(false);
    start_over_ = new QPushButton(tr("&Start over"));
    start_over_->setAutoDefault(false);
}

void ReshapeDialog::make_fields() {
    fields_ = new QFormLayout;
    fields_->setRowWrapPolicy(QFormLayout::WrapLongRows);
    fields_->addRow(tr("&Wide"), width_);
    fields_->addRow(tr("&Tall"), height_);
    fields_->addRow(tr("A&round"), around_);
    fields_->addRow(tr("S&cale"), scale_);
    fields_->addRow(tr("Hoo&k"), hook_);
    fields_->addRow(tr("&Reach of a handle"), reach_);
    fields_->addRow(start_over_);
}

QWidget* ReshapeDialog::progress_part() {
    worked_rounds_ = new QSpinBox;
    worked_rounds_->setRange(0, static_cast<int>(form_->piece.rounds.size()));
    worked_rounds_->setValue(form_->piece.worked.rounds);
    worked_stitches_ = new QSpinBox;
    worked_stitches_->setRange(0, 100'000);
    worked_stitches_->setValue(form_->piece.worked.stitches);
    auto* worked = new QGroupBox(tr("Worked so far"));
    auto* form = new QFormLayout(worked);
    form->addRow(tr("R&ounds"), worked_rounds_);
    form->addRow(tr("Stitches of the &next"), worked_stitches_);
    return worked;
}

QWidget* ReshapeDialog::tidiness_part() {
    tidiness_ = new QSlider(Qt::Horizontal);
    tidiness_->setRange(0, tidiness_steps);
    tidiness_->setValue(tidiness_steps / 2);
    tidiness_->setPageStep(1);
    tidiness_->setAccessibleName(tr("Likeness or tidy rounds"));
    tidiness_->setToolTip(
        tr("Left: nearest to the shape. Right: multiples of the first round, even repeats."));
    auto* ends = new QHBoxLayout;
    ends->addWidget(new QLabel(tr("likeness")));
    ends->addStretch(1);
    ends->addWidget(new QLabel(tr("tidy rounds")));
    auto* part = new QWidget;
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(tidiness_);
    layout->addLayout(ends);
    return part;
}

QWidget* ReshapeDialog::questions() {
    question_ = new QLabel;
    question_->setFont(larger(question_->font(), 1.25, true));
    question_->setWordWrap(true);
    make_sizes();
    make_other_wishes();
    make_fields();
    auto* by = new QFormLayout;
    by->addRow(tr("&Give"), wish_);
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(question_);
    layout->addLayout(fields_);
    layout->addLayout(by);
    layout->addSpacing(12);
    layout->addWidget(progress_part());
    layout->addSpacing(12);
    layout->addWidget(tidiness_part());
    layout->addStretch(1);
    side->setFixedWidth(std::max(230, side->sizeHint().width()));
    return side;
}

QWidget* ReshapeDialog::answers() {
    answer_ = words_label(tr("Answer"));
    frog_back_ = words_label(tr("What to undo"));
    frog_back_->setFont(larger(frog_back_->font(), 1.2, true));
    more_ = words_label(tr("Remarks"));
    more_->setForegroundRole(QPalette::PlaceholderText);
    ways_model_ = new WaysModel(session_.preferences(), this);
    ways_title_ = new QLabel(tr("Undo less, and come out otherwise:"));
    ways_ = quiet_table(tr("Ways on from what is worked"), ways_model_);
    rounds_model_ = new RoundsComparisonModel(this);
    rounds_ = quiet_table(tr("Rounds, now and new"), rounds_model_);
    rounds_->horizontalHeader()->setStretchLastSection(true);

    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(frog_back_);
    layout->addWidget(answer_);
    layout->addWidget(more_);
    layout->addWidget(ways_title_);
    layout->addWidget(ways_, 2);
    layout->addWidget(rounds_, 3);
    side->setMinimumWidth(usual_answers_width);
    return side;
}

void ReshapeDialog::connect_all() {
    connect(wish_, &QComboBox::currentIndexChanged, this, [this] {
        show_fields();
        work_out();
    });
    for (auto* box : {width_, height_, around_})
        connect(box, &LengthSpinBox::edited, this, &ReshapeDialog::work_out);
    for (auto* box : {scale_, hook_})
        connect(box, &QDoubleSpinBox::valueChanged, this, &ReshapeDialog::work_out);
    for (auto* box : {worked_rounds_, worked_stitches_})
        connect(box, &QSpinBox::valueChanged, this, &ReshapeDialog::work_out);
    connect(tidiness_, &QSlider::valueChanged, this, &ReshapeDialog::work_out);
    connect(as_fabric_, &QPushButton::toggled, preview_, &PreviewStack::set_shows_fabric);
    connect(start_over_, &QPushButton::clicked, this, &ReshapeDialog::begin_drawing);
    connect(ways_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { choose_way(current.row()); });
    OutlineView& outline = preview_->outline();
    connect(&outline, &OutlineView::drag_started, this,
            [this] { drag_base_ = *preview_->outline().drawn(); });
    connect(&outline, &OutlineView::dragged, this, &ReshapeDialog::drag_to);
    connect(&outline, &OutlineView::drag_cancelled, this, [this] { draw(drag_base_); });
    connect(&outline, &OutlineView::nudged, this, &ReshapeDialog::nudge);
    connect(&outline, &OutlineView::handle_changed, this,
            [this] { handle_words_->setText(preview_->outline().handle_words()); });
}

// --- the question

Wish ReshapeDialog::wish() const { return static_cast<Wish>(wish_->currentIndex()); }

void ReshapeDialog::set_wish(Wish wish) { wish_->setCurrentIndex(static_cast<int>(wish)); }

void ReshapeDialog::show_fields() {
    const auto show = [this](QWidget* field, bool shown) {
        field->setVisible(shown);
        if (auto* label = fields_->labelForField(field)) label->setVisible(shown);
    };
    const Wish asked = wish();
    show(width_, asked == Wish::width || asked == Wish::width_and_height);
    show(height_, asked == Wish::height || asked == Wish::width_and_height);
    show(around_, asked == Wish::around);
    show(scale_, asked == Wish::scale);
    show(hook_, asked == Wish::hook);
    show(reach_, asked == Wish::by_hand);
    show(start_over_, asked == Wish::by_hand);
    const QString questions[] = {tr("How wide should it be?"), tr("How tall should it be?"),
                                 tr("How wide and how tall?"), tr("How far around?"),
                                 tr("How much of its size?"),  tr("Which hook?"),
                                 tr("Pull the outline.")};
    question_->setText(questions[static_cast<int>(asked)]);
    handle_words_->setVisible(asked == Wish::by_hand);
    QWidget* const first[] = {width_, height_, width_, around_, scale_, hook_, &preview_->outline()};
    if (asked == Wish::by_hand) {
        as_fabric_->setChecked(false);
        begin_drawing();
    } else {
        preview_->outline().set_drawn(std::nullopt);
    }
    if (!wish_->hasFocus()) first[static_cast<int>(asked)]->setFocus();
}

Target ReshapeDialog::target() const {
    Target target;
    const Wish asked = wish();
    if (asked == Wish::width || asked == Wish::width_and_height) target.width_mm = width_->millimetres();
    if (asked == Wish::height || asked == Wish::width_and_height) target.height_mm = height_->millimetres();
    if (asked == Wish::around) target.circumference_mm = around_->millimetres();
    if (asked == Wish::scale) target.scale = scale_->value() / 100;
    return target;
}

WorkedSoFar ReshapeDialog::worked() const {
    WorkedSoFar worked = form_->piece.worked;
    worked.rounds = worked_rounds_->value();
    worked.stitches = worked_stitches_->value();
    return usable_progress(worked, form_->graph.graph);
}

ReshapeOptions ReshapeDialog::options() const { return {double(tidiness_->value()) / tidiness_steps, {}}; }

// --- the answer

void ReshapeDialog::work_out() {
    if (wish() == Wish::by_hand) {
        if (preview_->outline().drawn()) draw(*preview_->outline().drawn());
        return;
    }
    ReshapeQuestion question{
        session_.toy(), *form_, target(), {}, options(), static_cast<std::size_t>(piece_)};
    if (wish() == Wish::hook) question.hook_mm = hook_->value();
    question.form.piece.worked = worked();
    question.toy.pieces[question.piece].worked = worked();
    task_.start(
        [this, question = std::move(question)](const std::stop_token& stop) mutable -> LatestTask::Delivery {
            question.options.stop = stop;
            return [this, answer = answer_to(question)]() mutable { take(std::move(answer)); };
        });
}

void ReshapeDialog::take(ReshapeAnswer answer) {
    // With nothing to undo there is only one way on.
    if (answer.ways.size() <= 1) answer.ways.clear();
    if (!answer.ways.empty() && answer.ways.back().shape_error_mm > 0)
        answer.ways.push_back({answer.proposal.back, answer.proposal.made, 0});
    std::reverse(answer.ways.begin(), answer.ways.end());
    {
        const QSignalBlocker quiet(ways_->selectionModel());
        ways_model_->set_ways(answer.ways);
    }
    const bool choice = !answer.ways.empty();
    ways_title_->setVisible(choice);
    ways_->setVisible(choice);
    // Its columns are as wide as their words, and the table as wide as its columns.
    ways_->setMinimumWidth(ways_->horizontalHeader()->length() + 2 * ways_->frameWidth());
    propose(std::move(answer.proposal));
    if (choice) ways_->selectRow(0);
}

void ReshapeDialog::choose_way(int row) {
    if (row < 0 || row >= static_cast<int>(ways_model_->ways().size())) return;
    const WayOn& way = ways_model_->ways()[static_cast<std::size_t>(row)];
    propose({way.made, way.back, std::nullopt});
}

void ReshapeDialog::propose(ReshapeProposal proposal) {
    if (!has_piece(proposal.made.code))
        return show_nothing(outcome_words(proposal.made, session_.preferences().units()));
    proposal_ = std::move(proposal);
    show_proposal();
}

void ReshapeDialog::show_nothing(const QString& why) {
    proposal_.reset();
    answer_->setText(why);
    frog_back_->clear();
    more_->clear();
    preview_->outline().set_new(std::nullopt);
    rounds_model_->set_comparison({});
    apply_->setEnabled(false);
}

void ReshapeDialog::show_proposal() {
    const LengthUnit units = session_.preferences().units();
    const Reshaped& made = proposal_->made;
    answer_->setText(outcome_words(made, units));
    frog_back_->setText(frog_back_words(proposal_->back));
    frog_back_->setVisible(!frog_back_->text().isEmpty());
    QStringList more;
    for (const QString& words : {freed_yarn_words(proposal_->back, units), rewritten_words(made.rewritten)})
        if (!words.isEmpty()) more << words;
    if (proposal_->whole_toy && session_.toy().pieces.size() > 1)
        more << tr("All %1 pieces get new rounds: a toy has one hook.").arg(session_.toy().pieces.size());
    more_->setText(more.join(QLatin1Char(' ')));
    more_->setVisible(!more.isEmpty());
    preview_->outline().set_new(made.form.outline());
    rounds_model_->set_comparison(compare(*form_, made.form));
    auto toy = std::make_shared<Toy>(proposal_->whole_toy ? *proposal_->whole_toy : session_.toy());
    toy->pieces[static_cast<std::size_t>(piece_)] = made.form.piece;
    preview_->set_piece(std::move(toy), static_cast<std::size_t>(piece_));
    apply_->setEnabled(!session_.read_only() && made.code != ReshapeCode::unchanged);
}

QString ReshapeDialog::answer() const { return answer_->text(); }
QString ReshapeDialog::frog_back() const { return frog_back_->text(); }

// --- by hand

void ReshapeDialog::begin_drawing() {
    task_.cancel();
    if (!sculpt_ && form_->shape.usable()) sculpt_ = sculpt_start(*form_);
    if (!sculpt_)
        return show_nothing(tr("This piece has no shape yet to start from: mend its rounds first."));
    ways_title_->hide();
    ways_->hide();
    drawn_shape_.reset();
    draw(sculpt_->outline);
}

void ReshapeDialog::drag_to(const Vec2& by_mm) {
    draw(dragged(drag_base_, static_cast<std::size_t>(preview_->outline().handle()), by_mm,
                 reach_->millimetres()));
}

void ReshapeDialog::nudge(const Vec2& by_mm) {
    drag_base_ = *preview_->outline().drawn();
    drag_to(by_mm);
}

void ReshapeDialog::draw(const Silhouette& outline) {
    preview_->outline().set_drawn(outline);
    handle_words_->setText(preview_->outline().handle_words());
    const Shape* warm = drawn_shape_ ? &*drawn_shape_ : nullptr;
    const Sculpted sculpted = sculpt(*sculpt_, outline, options().tidiness, warm);
    if (!sculpted.usable) return show_nothing(tr("No rounds can be worked for this outline."));
    drawn_shape_ = sculpted.shape;
    ReshapeProposal proposal;
    Reshaped& made = proposal.made;
    made.code = sculpted.piece == form_->piece ? ReshapeCode::unchanged : ReshapeCode::met;
    made.form = {sculpted.piece, form_->gauge, piece_graph(sculpted.piece), {}, sculpted.shape};
    made.form.problem = shape_problem(sculpted.piece, made.form.graph.graph, form_->gauge);
    PieceForm old = *form_;
    old.piece.worked = worked();
    proposal.back = frog_back_for(session_.toy(), old, made);
    propose(std::move(proposal));
}

// --- the end

void ReshapeDialog::accept() {
    if (!proposal_ || task_.busy()) return;
    const QString name = QString::fromStdString(form_->piece.name);
    Toy toy = proposal_->whole_toy ? *proposal_->whole_toy : session_.toy();
    Piece& piece = toy.pieces[static_cast<std::size_t>(piece_)];
    piece = proposal_->made.form.piece;
    piece.worked = progress_kept(worked(), proposal_->back);
    session_.edit(wish() == Wish::by_hand ? tr("Sculpt %1").arg(name) : tr("Resize %1").arg(name),
                  std::move(toy));
    QDialog::accept();
}

}  // namespace roundwright::app
