#include "app/reshape/form_dialog.h"

#include <algorithm>

#include <QButtonGroup>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

#include "app/kit/announcer.h"
#include "app/kit/field_widgets.h"
#include "app/kit/plain_texts.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/scroll_to_fit.h"
#include "app/kit/true_focus.h"
#include "app/reshape/form_fields.h"
#include "app/reshape/form_icon.h"
#include "app/reshape/outline_view.h"
#include "core/reshape/carry_joins.h"
#include "core/reshape/in_place_of.h"
#include "core/reshape/piece_form.h"
#include "core/reshape/reshape_toy.h"
#include "core/toy/edits.h"
#include "render/wording/plain_text.h"
#include "render/wording/reshape_words.h"

namespace roundwright::app {
namespace {

constexpr FormKind kinds[] = {FormKind::ball,     FormKind::egg,  FormKind::pear,  FormKind::cone,
                              FormKind::cylinder, FormKind::bell, FormKind::gourd, FormKind::half_ball};

}  // namespace

FormDialog::FormDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent), session_(session), announcer_(new Announcer(this)) {
    setWindowTitle(tr("New from a shape"));
    if (session_.piece() != nullptr) old_ = piece_form(*session_.piece(), gauge_of(session_.toy()));
    build();
    connect_all();
    kinds_->setCurrentRow(0);
}

void FormDialog::build() {
    auto* columns = new QHBoxLayout;
    columns->setSpacing(16);
    columns->addWidget(scrolled_column(questions()));
    columns->addWidget(answers(), 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    buttons->button(QDialogButtonBox::Cancel)->setAutoDefault(false);
    apply_ = buttons->addButton(tr("&Use this shape"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &FormDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &FormDialog::reject);
    connect(&task_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { show_nothing(why); });
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons);
    resize(room_on_screen(*this, {820, 620}));
}

QWidget* FormDialog::questions() {
    kinds_ = new TrueFocus<QListWidget>;
    kinds_->setAccessibleName(tr("Kind of shape"));
    kinds_->setIconSize(QSize(form_icon_size, form_icon_size));
    for (const FormKind kind : kinds)
        new QListWidgetItem(form_icon(kind, palette()), form_name(kind), kinds_);
    kinds_->setMinimumHeight(kinds_->sizeHintForRow(0) * kinds_->count() + 6);
    fields_ = new FormFields(session_.preferences());
    make_counts();
    make_places();
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(kinds_);
    layout->addWidget(fields_);
    layout->addSpacing(8);
    layout->addWidget(to_size_);
    layout->addWidget(to_form_);
    layout->addSpacing(8);
    layout->addWidget(as_new_);
    layout->addWidget(in_place_);
    layout->addStretch(1);
    side->setFixedWidth(std::max(240, side->sizeHint().width()));
    return side;
}

void FormDialog::make_counts() {
    to_size_ = new QRadioButton(tr("Tid&y rounds at this size"));
    to_size_->setToolTip(tr("Rounds that repeat evenly and come out at this size once stuffed"));
    to_form_ = new QRadioButton(tr("&Closest to the shape"));
    to_form_->setToolTip(tr("The nearest stitch count in every round, whatever size that comes to"));
    to_size_->setChecked(true);
    auto* counts = new QButtonGroup(this);
    counts->addButton(to_size_);
    counts->addButton(to_form_);
}

void FormDialog::make_places() {
    const Piece* piece = session_.piece();
    const QString name = piece != nullptr ? without_mnemonics(name_in_words(piece->name)) : QString();
    as_new_ = new QRadioButton(tr("As a &new piece"));
    in_place_ = new QRadioButton(tr("Re&place the rounds of %1").arg(name));
    in_place_->setVisible(piece != nullptr);
    auto* places = new QButtonGroup(this);
    places->addButton(as_new_);
    places->addButton(in_place_);
    (piece != nullptr && piece->rounds.empty() ? in_place_ : as_new_)->setChecked(true);
}

QWidget* FormDialog::answers() {
    outline_ = new OutlineView(session_.preferences());
    frog_back_ = words_label(tr("What to undo"));
    frog_back_->setFont(larger_font(frog_back_->font(), 1.1, QFont::DemiBold));
    answer_ = words_label(tr("What you get"));
    rounds_ = words_label(tr("Stitches of the rounds"));
    rounds_->setMinimumHeight(3 * fontMetrics().lineSpacing());
    rounds_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* legend = new QLabel(tr("Dashed: the shape you asked for. Filled: how it comes out, stuffed."));
    legend->setWordWrap(true);
    legend->setForegroundRole(QPalette::PlaceholderText);
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(outline_, 1);
    layout->addWidget(legend);
    layout->addWidget(frog_back_);
    layout->addWidget(answer_);
    layout->addWidget(rounds_);
    return side;
}

void FormDialog::connect_all() {
    connect(kinds_, &QListWidget::currentRowChanged, this, [this](int row) { fields_->choose(kinds[row]); });
    say_again_by_key(*this, *announcer_);
    connect(fields_, &FormFields::edited, this, &FormDialog::work_out);
    connect(to_form_, &QRadioButton::toggled, this, &FormDialog::work_out);
    connect(in_place_, &QRadioButton::toggled, this, &FormDialog::work_out);
}

FormCounts FormDialog::counts_wanted() const {
    return to_form_->isChecked() ? FormCounts::nearest_stitch : FormCounts::size;
}

double FormDialog::area_stretch() const {
    return in_place_->isChecked() && old_ ? old_->piece.area_stretch : Piece{}.area_stretch;
}

void FormDialog::work_out() {
    const Form wanted = fields_->form();
    const FormCode code = form_code(wanted);
    made_.reset();
    apply_->setEnabled(false);
    if (code != FormCode::good) return show_nothing(form_problem_words(code));
    outline_->set_old(silhouette_of(wanted));
    outline_->set_starts_at_top(starts_at_top(wanted.kind));
    task_.start_latest(render::Lane::longer,
                       [this, wanted, gauge = gauge_of(session_.toy()), counts = counts_wanted(),
                        stretch = area_stretch()](const render::TaskRun& run) -> render::Delivery {
                           ReshapeOptions options;
                           options.stop = run.stop;
                           Reshaped made = piece_from_form(wanted, gauge, stretch, counts, options);
                           return [this, made = std::move(made)]() mutable { take(std::move(made)); };
                       });
}

void FormDialog::show_nothing(const QString& why) {
    task_.cancel();
    outline_->set_old(std::nullopt);
    outline_->set_new(std::nullopt);
    answer_->setText(why);
    rounds_->setText({});
    show_frog_back();
    say_answer();
}

void FormDialog::take(Reshaped made) {
    answer_->setText(form_outcome_words(made, counts_wanted(), session_.preferences().units()));
    const bool usable = has_piece(made.code);
    outline_->set_new(usable ? std::optional(made.form.outline()) : std::nullopt);
    rounds_->setText(usable ? rounds_in_short(made.form) : QString());
    if (usable) made_ = std::move(made);
    show_frog_back();
    apply_->setEnabled(usable && !session_.read_only());
    say_answer();
}

void FormDialog::show_frog_back() {
    back_.reset();
    if (made_ && old_ && in_place_->isChecked()) back_ = frog_back_for(session_.toy(), *old_, made_->form);
    frog_back_->setText(back_ ? frog_back_words(*back_) : QString());
    frog_back_->setVisible(!frog_back_->text().isEmpty());
}

void FormDialog::say_answer() {
    announcer_->say(QStringLiteral("answer"), joined_sentences({answer(), frog_back()}), Weight::answer);
}

QString FormDialog::answer() const { return answer_->text(); }
QString FormDialog::frog_back() const { return frog_back_->text(); }

bool FormDialog::put_in_place() {
    if (!back_) return false;
    return session_.edit(
        tr("Turn %1 into a new shape: %2")
            .arg(name_in_words(session_.piece()->name), form_name(fields_->form().kind)),
        with_piece_remade(session_.said_toy(), static_cast<std::size_t>(session_.current_piece()),
                          in_place_of(*old_, made_->form, *back_)));
}

bool FormDialog::add(const Piece& made) {
    const int at = session_.current_piece() + 1;
    auto edited = insert_piece(session_.toy(), static_cast<std::size_t>(at), made);
    if (edited.refusal) {
        session_.refuse(tr("This toy already has as many pieces as it can hold."));
        return false;
    }
    if (!session_.edit(tr("Add %1").arg(form_name(fields_->form().kind)), std::move(edited.value)))
        return false;
    session_.set_current_piece(at);
    return true;
}

void FormDialog::accept() {
    if (!made_ || task_.busy()) return;
    Piece piece = made_->form.piece;
    piece.name = form_name(fields_->form().kind).toStdString();
    in_place_->isChecked() ? put_in_place() : add(piece);
    QDialog::accept();
}

}  // namespace roundwright::app
