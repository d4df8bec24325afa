#include "app/toy/toy_details.h"

#include <array>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTextCursor>
#include <QVBoxLayout>

#include "app/session/document_session.h"
#include "core/assembly/check_joins.h"
#include "core/checks/check_said_numbers.h"
#include "core/gauge/usual_gauge.h"
#include "render/wording/check_sentence.h"
#include "render/wording/pattern/assembly_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {
namespace {

constexpr std::array levels{Level::basic, Level::easy, Level::intermediate, Level::complex};

/// The first entry says none.
QComboBox* level_box(const std::optional<Level>& level) {
    auto* box = new QComboBox;
    box->addItem(ToyDetailsDialog::tr("Not given"));
    for (const Level each : levels) {
        box->addItem(render::level_words(each));
        if (level == each) box->setCurrentIndex(box->count() - 1);
    }
    return box;
}

QString steps_of_joins(const Toy& toy, Terms terms) {
    if (toy.joins.empty()) return {};
    const Gauge gauge = gauge_or_usual(toy.gauge, toy.hook_mm);
    const CountsOfPieces counts = counts_of_pieces(toy);
    return render::worked_out_assembly(toy, sewing_steps(toy, counts, gauge), terms).join(QLatin1Char('\n'));
}

/// What has changed since the words of assembly were written, one join a line.
QString changes_of_joins(const Toy& toy) {
    QStringList lines;
    for (const Check& check : check_joins(toy, counts_of_pieces(toy))) {
        if (check.code != CheckCode::joins_changed) continue;
        Check told = check;
        told.cures.clear();
        const QString sentence = check_sentence(told, LengthUnit::millimetres);
        lines += check.piece < 0 ? sentence
                                 : QStringLiteral("%1: %2").arg(
                                       piece_name(toy, static_cast<std::size_t>(check.piece)), sentence);
    }
    return lines.join(QLatin1Char('\n'));
}

std::string text_in(const QPlainTextEdit& box) { return box.toPlainText().trimmed().toStdString(); }

}  // namespace

ToyDetailsDialog::ToyDetailsDialog(const Toy& toy, QWidget* parent, Terms terms) : QDialog(parent) {
    setWindowTitle(tr("About this toy"));
    auto* tabs = new QTabWidget;
    tabs->addTab(toy_page(toy), tr("&Pattern"));
    tabs->addTab(making_page(toy, terms), tr("&Making up"));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(tabs);
    layout->addWidget(buttons);
    resize(560, 480);
    title_->setFocus();
}

QWidget* ToyDetailsDialog::toy_page(const Toy& toy) {
    auto* page = new QWidget;
    auto* form = new QFormLayout(page);
    form->addRow(tr("&Title"), title_ = new QLineEdit(QString::fromStdString(toy.title)));
    form->addRow(tr("&Designer"), designer_ = new QLineEdit(QString::fromStdString(toy.designer)));
    form->addRow(tr("&Level"), level_ = level_box(toy.text.level));
    introduction_ =
        text_box(form, tr("&Introduction"), toy.text.introduction, tr("A few lines for the cover"));
    notes_ = text_box(form, tr("Printed &notes"), toy.notes, tr("Printed at the end of the pattern"));
    copyright_ = text_box(form, tr("&Copyright"), toy.text.copyright,
                          tr("What may be done with the pattern, and with toys made from it"));
    private_notes_ =
        text_box(form, tr("Notes to &yourself"), toy.private_notes, tr("Saved with the toy, never printed"));
    return page;
}

QWidget* ToyDetailsDialog::making_page(const Toy& toy, Terms terms) {
    const PatternText& text = toy.text;
    auto* page = new QWidget;
    auto* form = new QFormLayout(page);
    worked_out_ = steps_of_joins(toy, terms);
    assembly_ =
        text_box(form, tr("&Assembly"), text.assembly,
                 worked_out_.isEmpty() ? tr("How the pieces go together and where: one step per line")
                                       : tr("One step per line. If empty: the steps that the joins give"));
    write_out_ = new QPushButton(tr("&Write the steps out"));
    write_out_->setToolTip(
        tr("Puts the steps that the joins give into the box, so that you can change them"));
    write_out_->setAutoDefault(false);
    write_out_->setVisible(!worked_out_.isEmpty());
    connect(write_out_, &QPushButton::clicked, this, &ToyDetailsDialog::write_out_steps);
    const QString changes = changes_of_joins(toy);
    changed_ = new QLabel(changes);
    changed_->setWordWrap(true);
    changed_->setVisible(!changes.isEmpty());
    form->addRow(QString(), changed_);
    form->addRow(QString(), write_out_);
    finishing_ = text_box(form, tr("&Finishing"), text.finishing,
                          tr("One step per line. If empty: how to brush a yarn that is brushed"));
    notions_ = text_box(form, tr("Noti&ons"), text.notions,
                        tr("One per line. If empty: tapestry needle, scissors, stitch marker"));
    return page;
}

QPlainTextEdit* ToyDetailsDialog::text_box(QFormLayout* form, const QString& label, const std::string& text,
                                           const QString& hint) {
    auto* box = new QPlainTextEdit(QString::fromStdString(text));
    box->setPlaceholderText(hint);
    box->setToolTip(hint);
    box->setTabChangesFocus(true);
    form->addRow(label, box);
    return box;
}

/// As if it was typed, so that Ctrl+Z brings back what stood there.
void ToyDetailsDialog::write_out_steps() {
    QTextCursor cursor(assembly_->document());
    cursor.select(QTextCursor::Document);
    cursor.insertText(worked_out_);
    assembly_->setFocus();
}

void ToyDetailsDialog::keep_in(DialogDraft& draft) {
    draft.follow(*title_, QStringLiteral("title"));
    draft.follow(*designer_, QStringLiteral("designer"));
    draft.follow(*introduction_, QStringLiteral("introduction"));
    draft.follow(*notes_, QStringLiteral("notes"));
    draft.follow(*private_notes_, QStringLiteral("private-notes"));
    draft.follow(*copyright_, QStringLiteral("copyright"));
    draft.follow(*assembly_, QStringLiteral("assembly"));
    draft.follow(*finishing_, QStringLiteral("finishing"));
    draft.follow(*notions_, QStringLiteral("notions"));
}

Toy ToyDetailsDialog::applied_to(Toy toy) const {
    toy.title = title_->text().trimmed().toStdString();
    toy.designer = designer_->text().trimmed().toStdString();
    toy.notes = text_in(*notes_);
    toy.private_notes = text_in(*private_notes_);
    const int level = level_->currentIndex();
    toy.text.level = level > 0 ? std::optional(levels[static_cast<std::size_t>(level - 1)]) : std::nullopt;
    toy.text.introduction = text_in(*introduction_);
    toy.text.copyright = text_in(*copyright_);
    toy.text.assembly = text_in(*assembly_);
    toy.text.finishing = text_in(*finishing_);
    toy.text.notions = text_in(*notions_);
    return toy;
}

void ask_toy_details(DocumentSession& session, QWidget* window) {
    DialogDraft draft(session.drafts(), toy_details_draft);
    ToyDetailsDialog dialog(session.toy(), window, session.preferences().terms());
    dialog.keep_in(draft);
    if (dialog.exec() != QDialog::Accepted) return;
    session.edit(ToyDetailsDialog::tr("Change what the pattern says"),
                 [&](Toy toy) { return dialog.applied_to(std::move(toy)); });
}

}  // namespace roundwright::app
