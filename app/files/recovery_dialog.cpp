#include "app/files/recovery_dialog.h"

#include <algorithm>

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/files/left_words.h"
#include "app/kept/same_file.h"
#include "app/kit/read_out.h"
#include "app/kit/true_focus.h"
#include "app/storage/disk_words.h"

namespace roundwright::app {
namespace {

constexpr int usual_width = 460;
constexpr int most_rows_seen = 6;

QLabel* plain_label(const QString& name, QWidget* parent) {
    auto* label = new ReadOut(name, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

RecoveryDialog::RecoveryDialog(const Autosave& autosave, std::vector<LeftBehind> left, QString document,
                               QWidget* parent)
    : QDialog(parent),
      autosave_(autosave),
      left_(std::move(left)),
      document_(std::move(document)),
      heading_(plain_label({}, this)),
      list_(new TrueFocus<QListWidget>(this)),
      details_(plain_label(tr("What is in this copy"), this)),
      back_(nullptr) {
    setObjectName(QStringLiteral("recovery"));
    setWindowTitle(tr("Unsaved changes were kept"));
    lay_out();
    for (const LeftBehind& each : left_) {
        const QString when = QLocale().toString(each.head.kept.toLocalTime(), QLocale::ShortFormat);
        list_->addItem(tr("%1, %2").arg(name_of(each), when));
    }
    connect(list_, &QListWidget::currentRowChanged, this, &RecoveryDialog::show_current);
    connect(list_, &QListWidget::itemActivated, this, &QDialog::accept);
    show_heading();
    list_->setCurrentRow(0);
}

void RecoveryDialog::lay_out() {
    QFont bold = heading_->font();
    bold.setBold(true);
    heading_->setFont(bold);
    list_->setAccessibleName(tr("Copies that were kept"));
    list_->setFixedHeight(list_->frameWidth() * 2 +
                          (list_->fontMetrics().height() + 6) *
                              std::clamp(static_cast<int>(left_.size()), 2, most_rows_seen));
    auto* buttons = new QDialogButtonBox(this);
    back_ = buttons->addButton(tr("&Bring it back"), QDialogButtonBox::AcceptRole);
    back_->setObjectName(QStringLiteral("bring-back"));
    back_->setDefault(true);
    auto* remove = buttons->addButton(tr("&Delete the copy…"), QDialogButtonBox::DestructiveRole);
    remove->setObjectName(QStringLiteral("delete-copy"));
    remove->setAutoDefault(false);
    auto* later = buttons->addButton(tr("&Later"), QDialogButtonBox::RejectRole);
    later->setObjectName(QStringLiteral("later"));
    later->setAutoDefault(false);
    later->setToolTip(tr("The copy stays, whatever you do meanwhile"));
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(remove, &QPushButton::clicked, this, &RecoveryDialog::ask_to_delete);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 16, 16, 12);
    layout->setSpacing(10);
    for (QWidget* each :
         {static_cast<QWidget*>(heading_), static_cast<QWidget*>(list_), static_cast<QWidget*>(details_)})
        layout->addWidget(each);
    layout->addStretch(1);
    layout->addWidget(buttons);
    setMinimumWidth(usual_width);
}

QString RecoveryDialog::heading() const { return heading_->text(); }
QString RecoveryDialog::details() const { return details_->text(); }

int RecoveryDialog::current() const { return list_->currentRow(); }

QString RecoveryDialog::document_of(const LeftBehind& left) const {
    return document_.isEmpty() ? left.head.document : document_;
}

QString RecoveryDialog::name_of(const LeftBehind& left) const {
    if (!left.head.document.isEmpty()) return left_name(left.head, nullptr);
    const auto copy = autosave_.look_into(left);
    return left_name(left.head, copy.problem ? nullptr : &copy.document.toy);
}

void RecoveryDialog::show_heading() {
    list_->setVisible(left_.size() > 1);
    heading_->setText(left_.size() == 1
                          ? tr("Roundwright stopped before changes to %1 were saved. A copy was kept.")
                                .arg(name_of(left_.front()))
                          : tr("Roundwright stopped before changes were saved. %n copy(ies) were kept.",
                               nullptr, static_cast<int>(left_.size())));
}

void RecoveryDialog::show_current() {
    const bool any = current() >= 0 && current() < static_cast<int>(left_.size());
    back_->setEnabled(any);
    if (!any) return details_->setText({});
    const LeftBehind& left = left_[static_cast<std::size_t>(current())];
    const auto copy = autosave_.look_into(left);
    back_->setEnabled(!copy.problem);
    if (copy.problem)
        return details_->setText(tr("This copy could not be read. %1").arg(copy.problem->message));
    const QString document = document_of(left);
    const auto saved = document.isEmpty() ? LoadedFile{{}, FileProblem{}, {}} : load_document_file(document);
    QString text = left_words(left.head, copy.document.toy, saved.problem ? nullptr : &saved.document.toy);
    if (!document.isEmpty() && saved.problem)
        text += u'\n' + tr("The file itself could not be opened: %1").arg(saved.problem->message);
    else if (!document.isEmpty() && was_changed_since(left.head, document))
        text +=
            u'\n' + tr("The file was changed after this copy was begun. Bringing the copy back leaves the "
                       "file as it is until you save.");
    details_->setText(text);
}

std::optional<LeftBehind> RecoveryDialog::take_chosen() {
    if (result() != Accepted || current() < 0) return std::nullopt;
    return std::move(left_[static_cast<std::size_t>(current())]);
}

void RecoveryDialog::ask_to_delete() {
    if (current() < 0) return;
    const auto at = static_cast<std::size_t>(current());
    QMessageBox question(QMessageBox::Warning, tr("Delete the copy"),
                         tr("Delete this copy of %1?").arg(name_of(left_[at])), QMessageBox::NoButton, this);
    question.setTextFormat(Qt::PlainText);
    question.setObjectName(QStringLiteral("delete-copy-question"));
    question.setInformativeText(
        tr("The changes in it were never saved anywhere else. Once it is deleted, they cannot be brought "
           "back."));
    const auto* remove = question.addButton(tr("&Delete it"), QMessageBox::DestructiveRole);
    auto* keep = question.addButton(tr("&Keep it"), QMessageBox::RejectRole);
    question.setDefaultButton(keep);
    question.setEscapeButton(keep);
    question.exec();
    if (question.clickedButton() != remove) return;
    if (const auto fault = autosave_.discard(left_[at]))
        return details_->setText(tr("The copy could not be deleted. %1").arg(disk_fault_words(*fault)));
    left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(at));
    if (left_.empty()) return reject();
    delete list_->takeItem(static_cast<int>(at));
    show_heading();
    show_current();
}

}  // namespace roundwright::app
