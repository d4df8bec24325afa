#include "app/versions/versions_dialog.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QMessageBox>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableView>
#include <QVBoxLayout>

#include "app/kit/room_on_screen.h"
#include "app/kit/save_bytes.h"
#include "app/kit/save_path.h"
#include "app/kit/scroll_to_fit.h"
#include "app/kit/toy_files.h"
#include "app/kit/true_focus.h"
#include "app/storage/disk_words.h"
#include "app/versions/then_and_now.h"
#include "core/base/limits.h"
#include "core/differences/differences.h"
#include "render/wording/difference_words.h"
#include "render/wording/printable.h"
#include "render/wording/when_words.h"

namespace roundwright::app {
namespace {

/// A stack asks for the height that its pages would like, of words that wrap as if it were the least.
class Pages : public QStackedWidget {
  public:
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }
};

QString toy_file_name(const QString& path) { return printable_line(QFileInfo(path).completeBaseName()); }

/// Reads a version, and finds what the toy in the window has of it.
ReadVersion read_version(const VersionStore& store, const Version& version, const Toy& now,
                         const std::stop_token& stop) {
    ReadVersion read;
    const ReadFile file = store.read(version);
    if (file.fault) {
        read.problem = disk_fault_words(*file.fault);
        return read;
    }
    auto loaded = load_document(file);
    if (loaded.problem) {
        read.problem = loaded.problem->message;
        return read;
    }
    read.bytes = file.bytes;
    read.newer = loaded.document.newer;
    read.toy = std::make_shared<const Toy>(std::move(loaded.document.toy));
    read.totals = toy_totals(*read.toy);
    read.differences = differences(*read.toy, now, stop);
    return read;
}

}  // namespace

VersionsDialog::VersionsDialog(DocumentSession& session, VersionKeeper& keeper, QWidget* parent)
    : QDialog(parent),
      session_(session),
      keeper_(keeper),
      now_(std::make_shared<const Toy>(session.said_toy())),
      model_(new VersionsModel(this)) {
    setWindowTitle(session.path().isEmpty()
                       ? tr("Earlier versions")
                       : tr("Earlier versions of %1").arg(toy_file_name(session.path())));
    build();
    connect_all();
    load();
}

// --- layout

void VersionsDialog::build() {
    auto* content = new QWidget;
    auto* columns = new QHBoxLayout(content);
    columns->setContentsMargins(0, 0, 0, 0);
    columns->setSpacing(16);
    columns->addWidget(list_side(), 2);
    columns->addWidget(changes_side(), 3);
    empty_ = new QLabel;
    empty_->setTextFormat(Qt::PlainText);
    empty_->setWordWrap(true);
    empty_->setAlignment(Qt::AlignCenter);
    empty_->setFocusPolicy(Qt::NoFocus);
    pages_ = new Pages;
    pages_->addWidget(content);
    pages_->addWidget(empty_);
    make_buttons();
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(pages_, 1);
    layout->addWidget(buttons_);
    resize(room_on_screen(*this, {1040, 620}));
}

QWidget* VersionsDialog::list_side() {
    list_ = new TrueFocus<QTableView>;
    list_->setModel(model_);
    list_->setAccessibleName(tr("Earlier versions, newest first"));
    list_->setSelectionBehavior(QAbstractItemView::SelectRows);
    list_->setSelectionMode(QAbstractItemView::SingleSelection);
    list_->setTabKeyNavigation(false);
    list_->setShowGrid(false);
    list_->setWordWrap(false);
    list_->setStyleSheet(QStringLiteral("QTableView::item { padding: 0 9px; }"));
    list_->verticalHeader()->hide();
    list_->verticalHeader()->setDefaultSectionSize(list_->fontMetrics().height() + 10);
    list_->horizontalHeader()->setHighlightSections(false);
    list_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    list_->horizontalHeader()->setSectionResizeMode(static_cast<int>(VersionColumn::kind),
                                                    QHeaderView::Stretch);
    auto* title = new QLabel(tr("&Versions"));
    title->setBuddy(list_);
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(title);
    layout->addWidget(list_, 1);
    return side;
}

QWidget* VersionsDialog::changes_side() {
    changes_ = new TrueFocus<QListWidget>;
    changes_->setAccessibleName(tr("What has changed since then"));
    changes_->setWordWrap(true);
    changes_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    constexpr int lines_always_seen = 6;
    changes_->setMinimumHeight(lines_always_seen * (changes_->fontMetrics().height() + 4));
    since_ = new QLabel(tr("What has &changed since then"));
    since_->setBuddy(changes_);
    then_and_now_ = new ThenAndNow(session_.preferences());
    constexpr int characters_for_all = 138;
    const bool stacked = room_on_screen(*this, {QWIDGETSIZE_MAX, QWIDGETSIZE_MAX}).width() <
                         characters_for_all * fontMetrics().averageCharWidth();
    if (stacked) then_and_now_->stack();
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(since_);
    layout->addWidget(changes_, 1);
    layout->addWidget(then_and_now_, 2);
    if (!stacked) return side;
    QScrollArea* area = scrolled_column(side);
    area->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    return area;
}

void VersionsDialog::make_buttons() {
    buttons_ = new QDialogButtonBox(QDialogButtonBox::Close);
    buttons_->button(QDialogButtonBox::Close)->setAutoDefault(false);
    take_back_ = buttons_->addButton(tr("&Take it back"), QDialogButtonBox::AcceptRole);
    take_back_->setDefault(true);
    save_copy_ = buttons_->addButton(tr("&Save a copy…"), QDialogButtonBox::ActionRole);
    save_copy_->setAutoDefault(false);
    forget_ = buttons_->addButton(tr("&Forget earlier versions…"), QDialogButtonBox::ResetRole);
    forget_->setAutoDefault(false);
}

void VersionsDialog::connect_all() {
    connect(list_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &VersionsDialog::show_chosen);
    connect(model_, &QAbstractItemModel::dataChanged, this, [this](const QModelIndex& changed) {
        if (changed.row() == list_->currentIndex().row()) show_chosen();
    });
    connect(&reading_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { since_->setText(why); });
    connect(buttons_, &QDialogButtonBox::accepted, this, &VersionsDialog::accept);
    connect(buttons_, &QDialogButtonBox::rejected, this, &VersionsDialog::reject);
    connect(save_copy_, &QPushButton::clicked, this, &VersionsDialog::save_copy);
    connect(forget_, &QPushButton::clicked, this, &VersionsDialog::forget);
}

// --- the versions

void VersionsDialog::load() {
    if (session_.path().isEmpty())
        return show_empty(
            tr("This toy has no file yet. Once it is saved, each time you save it again its earlier "
               "versions stay here for you."));
    keeper_.settle();
    auto versions = keeper_.store().versions_of(session_.path());
    if (versions.empty())
        return show_empty(
            tr("There are no earlier versions of this toy yet. From now on, each time you save it, "
               "one stays here for you."));
    model_->set_versions(std::move(versions));
    list_->setCurrentIndex(model_->index(0, 0));
    list_->setFocus(Qt::OtherFocusReason);
    read_all();
}

void VersionsDialog::show_empty(const QString& words) {
    reading_.cancel();
    model_->set_versions({});
    empty_->setText(words);
    pages_->setCurrentWidget(empty_);
    for (auto* button : {take_back_, save_copy_, forget_}) button->hide();
    buttons_->button(QDialogButtonBox::Close)->setDefault(true);
    buttons_->button(QDialogButtonBox::Close)->setFocus(Qt::OtherFocusReason);
}

void VersionsDialog::read_all() {
    std::vector<Version> versions;
    for (int row = 0; row < model_->rowCount(); ++row)
        versions.push_back(model_->version(static_cast<std::size_t>(row)));
    reading_.start_latest(
        render::Lane::longer,
        [this, versions, now = now_,
         store = keeper_.store()](const render::TaskRun& run) -> render::Delivery {
            for (std::size_t row = 0; row < versions.size() && !run.stop.stop_requested(); ++row) {
                auto read =
                    std::make_shared<const ReadVersion>(read_version(store, versions[row], *now, run.stop));
                run.deliver([this, row, read] { model_->set_read(row, read); });
            }
            return {};
        });
}

bool VersionsDialog::busy() const { return reading_.busy() || then_and_now_->busy(); }

QString VersionsDialog::empty_words() const {
    return pages_->currentWidget() == empty_ ? empty_->text() : QString();
}

QString VersionsDialog::changes() const {
    QStringList lines;
    for (int row = 0; row < changes_->count(); ++row) lines << changes_->item(row)->text();
    return lines.join(QLatin1Char('\n'));
}

// --- the chosen one

std::shared_ptr<const ReadVersion> VersionsDialog::chosen() const {
    const int row = list_->currentIndex().row();
    return row < 0 ? nullptr : model_->read(static_cast<std::size_t>(row));
}

QString VersionsDialog::chosen_when() const {
    return when_words(model_->version(static_cast<std::size_t>(list_->currentIndex().row())).when);
}

void VersionsDialog::show_chosen() {
    const auto read = chosen();
    show_changes(read.get());
    update_buttons(read.get());
    if (read && read->toy)
        then_and_now_->show_toys(read->toy, now_);
    else
        then_and_now_->show_nothing();
}

void VersionsDialog::show_changes(const ReadVersion* read) {
    changes_->clear();
    if (read == nullptr) return;
    if (!read->toy) {
        changes_->addItem(tr("This version cannot be read. %1").arg(read->problem));
        return;
    }
    if (read->newer)
        changes_->addItem(tr("A newer version of Roundwright wrote this. Save a copy, and open it there."));
    for (const Difference& difference : read->differences) changes_->addItem(difference_words(difference));
    if (read->differences.empty()) changes_->addItem(tr("Nothing: the toy in the window is the same."));
}

void VersionsDialog::update_buttons(const ReadVersion* read) {
    const bool is_readable = read != nullptr && read->toy;
    save_copy_->setEnabled(is_readable);
    take_back_->setEnabled(is_readable && !read->newer && !read->differences.empty() &&
                           !session_.read_only());
    take_back_->setToolTip(session_.read_only() ? tr("This toy is read-only. Save a copy instead.")
                                                : QString());
}

void VersionsDialog::accept() {
    const auto read = chosen();
    if (!take_back_->isEnabled() || !read || !read->toy) return;
    session_.edit(tr("Take back the version of %1").arg(chosen_when()), *read->toy);
    QDialog::accept();
}

/// Beside the toy, with the time in its name.
QString VersionsDialog::ask_copy_path() {
    const QFileInfo file(session_.path());
    const auto& when = model_->version(static_cast<std::size_t>(list_->currentIndex().row())).when;
    const QString time = when.toLocalTime().toString(QStringLiteral("yyyy-MM-dd, HH.mm"));
    const QString name = QStringLiteral("%1 %2.%3").arg(file.completeBaseName(), time, toy_ending());
    return ask_save_path(this, tr("Save a copy of this version"), file.dir().filePath(name),
                         toy_file_filter(), toy_ending());
}

void VersionsDialog::save_copy() {
    const auto read = chosen();
    if (!read || !read->toy) return;
    const QString path = ask_copy_path();
    if (path.isEmpty()) return;
    const QString name = printable_line(QFileInfo(path).fileName());
    if (canonical_toy_path(path) == canonical_toy_path(session_.path()))
        return tell(tr("“%1” is the toy in the window.").arg(name),
                    tr("Choose another name, or take the version back."));
    (void)keeper_.store().keep_what_stands_in(path);  // another toy's file may be replaced
    const auto saved = save_bytes(path, read->bytes);
    if (saved.problem) return tell(tr("“%1” could not be saved.").arg(name), *saved.problem);
    if (!saved.remarks.isEmpty()) tell(tr("“%1” is saved.").arg(name), saved.remarks);
}

void VersionsDialog::tell(const QString& what, const QString& why) {
    QMessageBox message(QMessageBox::Warning, windowTitle(), what, QMessageBox::Ok, this);
    message.setTextFormat(Qt::PlainText);
    message.setInformativeText(why);
    message.exec();
}

void VersionsDialog::forget() {
    QMessageBox question(QMessageBox::Question, windowTitle(), tr("Forget all earlier versions of this toy?"),
                         QMessageBox::NoButton, this);
    question.setTextFormat(Qt::PlainText);
    question.setInformativeText(
        tr("The toy and its file stay as they are. The earlier versions cannot be brought back."));
    const auto* yes = question.addButton(tr("&Forget them"), QMessageBox::DestructiveRole);
    auto* no = question.addButton(tr("&Keep them"), QMessageBox::RejectRole);
    question.setDefaultButton(no);
    question.exec();
    if (question.clickedButton() != yes) return;
    if (const auto fault = keeper_.forget()) {
        tell(tr("Some versions could not be removed."), disk_fault_words(*fault));
        return load();
    }
    show_empty(
        tr("The earlier versions of this toy are forgotten. From now on, each time you save it, one stays "
           "here for you."));
}

}  // namespace roundwright::app
