#include "app/reshape/form_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

#include "app/panels/length_spin_box.h"
#include "app/reshape/outline_view.h"
#include "app/reshape/reshape_words.h"
#include "core/pattern/edits.h"
#include "core/reshape/piece_form.h"

namespace roundwright::app {
namespace {

constexpr FormKind kinds[] = {FormKind::ball,     FormKind::egg,  FormKind::pear,  FormKind::cone,
                              FormKind::cylinder, FormKind::bell, FormKind::gourd, FormKind::half_ball};
constexpr double least_mm = 5;
constexpr double most_mm = 2'000;
constexpr int picture_size = 28;

bool starts_at_top(FormKind kind) {
    return kind == FormKind::cone || kind == FormKind::bell || kind == FormKind::half_ball;
}

bool has_top(FormKind kind) {
    return kind == FormKind::pear || kind == FormKind::gourd || kind == FormKind::bell ||
           kind == FormKind::cone;
}

bool may_be_open(FormKind kind) {
    return kind == FormKind::cone || kind == FormKind::cylinder || kind == FormKind::bell ||
           kind == FormKind::half_ball;
}

QPixmap picture_of(const Silhouette& outline, bool at_top, const QColor& colour) {
    QPixmap pixmap(2 * picture_size, 2 * picture_size);
    pixmap.setDevicePixelRatio(2);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = (picture_size - 4) / std::max(width_mm(outline), height_mm(outline));
    painter.translate(picture_size / 2.0, picture_size / 2.0);
    painter.scale(scale, at_top ? scale : -scale);
    painter.translate(0, -height_mm(outline) / 2);
    QPolygonF polygon;
    for (const Vec2& p : outline.points) polygon << QPointF(p.x(), p.y());
    for (auto p = outline.points.rbegin(); p != outline.points.rend(); ++p)
        polygon << QPointF(-p->x(), p->y());
    painter.setPen(QPen(colour, 1.6 / scale));
    painter.drawPolygon(polygon);
    return pixmap;
}

/// The form as a small picture, in the colours of the list's text.
QIcon icon_of(FormKind kind, const QPalette& palette) {
    const Silhouette outline = silhouette_of(usual_form(kind, 60));
    QIcon icon(picture_of(outline, starts_at_top(kind), palette.color(QPalette::Text)));
    icon.addPixmap(picture_of(outline, starts_at_top(kind), palette.color(QPalette::HighlightedText)),
                   QIcon::Selected);
    return icon;
}

QString counts_in_words(const PieceForm& form) {
    QStringList words;
    const auto counts = stitch_counts(form.graph.graph);
    for (std::size_t i = 0; i < counts.size();) {
        std::size_t same = i;
        while (same < counts.size() && counts[same] == counts[i]) ++same;
        words << (same - i > 1 ? QStringLiteral("%1×%2").arg(counts[i]).arg(same - i)
                               : QString::number(counts[i]));
        i = same;
    }
    return words.join(QStringLiteral(", "));
}

}  // namespace

FormDialog::FormDialog(DocumentSession& session, QWidget* parent)
    : QDialog(parent), session_(session), form_(usual_form(FormKind::ball, 60)) {
    setWindowTitle(tr("New from a form"));
    build();
    kinds_->setCurrentRow(0);
}

void FormDialog::build() {
    outline_ = new OutlineView(session_.preferences());
    answer_ = new QLabel;
    rounds_ = new QLabel;
    for (auto* label : {answer_, rounds_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    }
    answer_->setAccessibleName(tr("Answer"));
    rounds_->setAccessibleName(tr("Stitches of the rounds"));
    rounds_->setMinimumHeight(3 * fontMetrics().lineSpacing());
    rounds_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* legend = new QLabel(tr("dashed: the form; filled: as it comes out, stuffed"));
    legend->setForegroundRole(QPalette::PlaceholderText);
    auto* right = new QVBoxLayout;
    right->addWidget(outline_, 1);
    right->addWidget(legend);
    right->addWidget(answer_);
    right->addWidget(rounds_);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(16);
    columns->addWidget(questions());
    columns->addLayout(right, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel);
    apply_ = buttons->addButton(tr("&Use this form"), QDialogButtonBox::AcceptRole);
    apply_->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &FormDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &FormDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons);
    resize(820, 620);
}

QWidget* FormDialog::questions() {
    const Preferences& preferences = session_.preferences();
    kinds_ = new QListWidget;
    kinds_->setAccessibleName(tr("Form"));
    kinds_->setIconSize(QSize(picture_size, picture_size));
    for (const FormKind kind : kinds) new QListWidgetItem(icon_of(kind, palette()), form_name(kind), kinds_);
    kinds_->setMinimumHeight(kinds_->sizeHintForRow(0) * kinds_->count() + 6);
    width_ = new LengthSpinBox(preferences, least_mm, most_mm);
    height_ = new LengthSpinBox(preferences, least_mm, most_mm);
    top_ = new LengthSpinBox(preferences, least_mm, most_mm);
    waist_ = new LengthSpinBox(preferences, least_mm, most_mm);
    tip_ = new QCheckBox(tr("Ends in a &tip"));
    closed_ = new QCheckBox(tr("The flat end is worked &too"));
    fields_ = new QFormLayout;
    fields_->addRow(tr("&Wide"), width_);
    fields_->addRow(tr("&Tall"), height_);
    fields_->addRow(tip_);
    fields_->addRow(tr("T&op"), top_);
    fields_->addRow(tr("Wa&ist"), waist_);
    fields_->addRow(closed_);
    as_new_ = new QRadioButton(tr("As a &new piece"));
    const Piece* piece = session_.piece();
    const QString name = piece != nullptr ? QString::fromStdString(piece->name) : QString();
    in_place_ = new QRadioButton(tr("In &place of the rounds of %1").arg(name));
    in_place_->setVisible(piece != nullptr);
    (piece != nullptr && piece->rounds.empty() ? in_place_ : as_new_)->setChecked(true);

    connect(kinds_, &QListWidget::currentRowChanged, this, [this](int row) { choose(kinds[row]); });
    for (auto* box : {width_, height_, top_, waist_})
        connect(box, &LengthSpinBox::edited, this, &FormDialog::work_out);
    connect(closed_, &QCheckBox::toggled, this, &FormDialog::work_out);
    connect(tip_, &QCheckBox::toggled, this, [this] {
        show_fields();
        work_out();
    });
    connect(in_place_, &QRadioButton::toggled, this, &FormDialog::work_out);

    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(kinds_);
    layout->addLayout(fields_);
    layout->addSpacing(8);
    layout->addWidget(as_new_);
    layout->addWidget(in_place_);
    layout->addStretch(1);
    side->setFixedWidth(std::max(240, side->sizeHint().width()));
    return side;
}

void FormDialog::choose(FormKind kind) {
    const double width = width_->millimetres() > least_mm ? width_->millimetres() : form_.width_mm;
    form_ = usual_form(kind, width);
    width_->show_millimetres(form_.width_mm);
    height_->show_millimetres(form_.height_mm);
    const QSignalBlocker quiet_tip(tip_);
    const QSignalBlocker quiet_closed(closed_);
    tip_->setChecked(kind == FormKind::cone);
    top_->show_millimetres(form_.top_width_mm > 0 ? form_.top_width_mm : width / 3);
    waist_->show_millimetres(form_.waist_width_mm);
    closed_->setChecked(form_.closed);
    outline_->set_starts_at_top(starts_at_top(kind));
    show_fields();
    work_out();
}

void FormDialog::show_fields() {
    const auto show = [this](QWidget* field, bool shown) {
        field->setVisible(shown);
        if (auto* label = fields_->labelForField(field)) label->setVisible(shown);
    };
    show(height_, form_.kind != FormKind::half_ball);
    show(tip_, form_.kind == FormKind::cone);
    show(top_, has_top(form_.kind) && !(form_.kind == FormKind::cone && tip_->isChecked()));
    show(waist_, form_.kind == FormKind::gourd);
    show(closed_, may_be_open(form_.kind));
}

Form FormDialog::form() const {
    Form form = form_;
    form.width_mm = width_->millimetres();
    form.height_mm = height_->millimetres();
    form.top_width_mm = top_->millimetres();
    if (form.kind == FormKind::cone && tip_->isChecked()) form.top_width_mm = 0;
    form.waist_width_mm = waist_->millimetres();
    form.closed = closed_->isChecked();
    return form;
}

double FormDialog::area_stretch() const {
    return in_place_->isChecked() && session_.piece() != nullptr ? session_.piece()->area_stretch
                                                                 : Piece{}.area_stretch;
}

void FormDialog::work_out() {
    const Form wanted = form();
    const FormCode code = form_code(wanted);
    made_.reset();
    apply_->setEnabled(false);
    if (code != FormCode::good) {
        task_.cancel();
        outline_->set_old(std::nullopt);
        outline_->set_new(std::nullopt);
        answer_->setText(form_problem_words(code));
        rounds_->clear();
        return;
    }
    outline_->set_old(silhouette_of(wanted));
    task_.start([this, wanted, gauge = gauge_of(session_.toy()),
                 stretch = area_stretch()](const std::stop_token& stop) -> LatestTask::Delivery {
        Reshaped made = piece_from_form(wanted, gauge, stretch, FormCounts::size,
                                        {ReshapeOptions{}.tidiness, stop});
        return [this, made = std::move(made)]() mutable { take(std::move(made)); };
    });
}

void FormDialog::take(Reshaped made) {
    answer_->setText(outcome_words(made, session_.preferences().units()));
    const bool usable = has_piece(made.code);
    outline_->set_new(usable ? std::optional(made.form.outline()) : std::nullopt);
    rounds_->setText(usable ? counts_in_words(made.form) : QString());
    if (usable) made_ = std::move(made);
    apply_->setEnabled(usable && !session_.read_only());
}

QString FormDialog::answer() const { return answer_->text(); }

bool FormDialog::put_in_place(const Piece& made) {
    return session_.edit_piece(
        tr("Make %1 a %2").arg(QString::fromStdString(session_.piece()->name), form_name(form_.kind)),
        [&made](Piece& piece) {
            piece.start = made.start;
            piece.rounds = made.rounds;
            piece.end = made.end;
            piece.starts_at_top = made.starts_at_top;
            piece.features.clear();
            piece.worked = {};
        });
}

bool FormDialog::add(const Piece& made) {
    const int at = session_.current_piece() + 1;
    auto edited = insert_piece(session_.toy(), static_cast<std::size_t>(at), made);
    if (edited.refusal) {
        session_.refuse(tr("A toy cannot have more pieces than this one has."));
        return false;
    }
    if (!session_.edit(tr("Add a %1").arg(form_name(form_.kind)), std::move(edited.value))) return false;
    session_.set_current_piece(at);
    return true;
}

void FormDialog::accept() {
    if (!made_ || task_.busy()) return;
    Piece piece = made_->form.piece;
    piece.name = form_name(form_.kind).toStdString();
    if (in_place_->isChecked())
        put_in_place(piece);
    else
        add(piece);
    QDialog::accept();
}

}  // namespace roundwright::app
