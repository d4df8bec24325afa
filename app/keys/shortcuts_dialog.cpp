#include "app/keys/shortcuts_dialog.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

#include "app/keys/key_words.h"
#include "app/keys/keys_field.h"
#include "app/kit/action_keys.h"
#include "app/kit/room_on_screen.h"

namespace roundwright::app {
namespace {

bool is_plain(const QKeyEvent& key, Qt::Key of) {
    return key.key() == of && key.modifiers() == Qt::NoModifier;
}

bool is_enter(const QKeyEvent& key) { return is_plain(key, Qt::Key_Return) || is_plain(key, Qt::Key_Enter); }

QPushButton* quiet_button(const QString& words) {
    auto* button = new QPushButton(words);
    button->setAutoDefault(false);
    return button;
}

}  // namespace

ShortcutsDialog::ShortcutsDialog(QWidget* parent)
    : QDialog(parent),
      search_(new QLineEdit),
      table_(new QTableView),
      said_(new QLabel),
      keys_(new KeysField),
      use_(quiet_button(tr("&Use these keys"))),
      none_(quiet_button(tr("&No keys"))),
      usual_(quiet_button(tr("Usual &keys"))),
      all_usual_(quiet_button(tr("&All back to the usual…"))) {
    setWindowTitle(tr("Keyboard shortcuts"));
    build();
    connect_all();
    table_->setCurrentIndex(found_.index(0, 0));
    search_->setFocus();
    resize(room_on_screen(*this, {680, 620}));
}

void ShortcutsDialog::build() {
    found_.setSourceModel(&model_);
    found_.setFilterKeyColumn(-1);  // any column: a name, a menu or keys
    found_.setFilterCaseSensitivity(Qt::CaseInsensitive);
    table_->setModel(&found_);
    table_->setAccessibleName(tr("Shortcuts"));
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setShowGrid(false);
    table_->setWordWrap(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->resizeColumnsToContents();
    auto* label = new QLabel(tr("&Search"));
    label->setBuddy(search_);
    search_->setPlaceholderText(tr("A name, a menu or keys"));
    search_->setClearButtonEnabled(true);
    auto* top = new QHBoxLayout;
    top->addWidget(label);
    top->addWidget(search_, 1);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(top);
    layout->addWidget(table_, 1);
    layout->addWidget(change_row());
    layout->addWidget(said_);
    layout->addWidget(end_row());
}

QWidget* ShortcutsDialog::change_row() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* label = new QLabel(tr("N&ew keys"));
    label->setBuddy(keys_);
    keys_->setAccessibleName(tr("New keys: press them"));
    layout->addWidget(label);
    layout->addWidget(keys_, 1);
    for (QPushButton* button : {use_, none_, usual_}) layout->addWidget(button);
    said_->setWordWrap(true);
    said_->setMinimumHeight(2 * said_->fontMetrics().lineSpacing());
    said_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    return row;
}

QWidget* ShortcutsDialog::end_row() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* close = quiet_button(tr("&Close the list"));
    connect(close, &QPushButton::clicked, this, &QDialog::accept);
    layout->addWidget(all_usual_);
    layout->addStretch(1);
    layout->addWidget(close);
    return row;
}

void ShortcutsDialog::connect_all() {
    connect(search_, &QLineEdit::textChanged, this, &ShortcutsDialog::search);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &ShortcutsDialog::show_current);
    connect(table_, &QTableView::activated, this, [this] { keys_->setFocus(); });
    connect(keys_, &KeysField::keys_pressed, this, &ShortcutsDialog::look_at_keys);
    connect(keys_, &KeysField::ended, this, [this](bool with_enter) {
        if (with_enter) return use_->click();
        show_current();
        table_->setFocus();
    });
    connect(use_, &QPushButton::clicked, this, &ShortcutsDialog::use_keys);
    connect(none_, &QPushButton::clicked, this, [this] {
        if (const ActionEntry* entry = current()) ActionKeys::instance().choose(entry->id, {});
    });
    connect(usual_, &QPushButton::clicked, this, [this] {
        if (const ActionEntry* entry = current()) ActionKeys::instance().take_usual(entry->id);
    });
    connect(all_usual_, &QPushButton::clicked, this, [this] {
        const auto answer = QMessageBox::question(
            this, tr("Keyboard shortcuts"), tr("Give every action its usual keys again?"),
            QMessageBox::Yes | QMessageBox::Cancel, QMessageBox::Cancel);
        if (answer == QMessageBox::Yes) ActionKeys::instance().take_usual_for_all();
    });
    connect(&ActionKeys::instance(), &ActionKeys::changed, this, &ShortcutsDialog::show_current);
    search_->installEventFilter(this);
}

/// From the search, Down and Enter go to what was found.
bool ShortcutsDialog::eventFilter(QObject* watched, QEvent* event) {
    if (watched != search_ || event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    const auto& key = *static_cast<QKeyEvent*>(event);
    if (!is_enter(key) && !is_plain(key, Qt::Key_Down)) return false;
    table_->setFocus();
    return true;
}

const ActionEntry* ShortcutsDialog::current() const {
    const QModelIndex row = found_.mapToSource(table_->currentIndex());
    return row.isValid() ? &model_.entry(row.row()) : nullptr;
}

void ShortcutsDialog::show_action(const QString& id) {
    search_->clear();
    for (int row = 0; row < model_.rowCount(); ++row)
        if (model_.entry(row).id == id) table_->setCurrentIndex(found_.mapFromSource(model_.index(row, 0)));
    table_->setFocus();
}

void ShortcutsDialog::search(const QString& text) {
    found_.setFilterFixedString(text.trimmed());
    if (!table_->currentIndex().isValid()) table_->setCurrentIndex(found_.index(0, 0));
    show_current();
}

void ShortcutsDialog::show_current() {
    const ActionEntry* entry = current();
    keys_->forget();
    keys_->setEnabled(entry != nullptr);
    use_->setText(tr("&Use these keys"));
    use_->setEnabled(false);
    none_->setEnabled(entry != nullptr && !ActionKeys::instance().keys(entry->id).isEmpty());
    usual_->setEnabled(entry != nullptr && !ActionKeys::instance().is_usual(entry->id));
    if (entry == nullptr) return say(tr("Nothing is called like that."));
    const QString usual = entry->usual.isEmpty() ? tr("none") : keys_in_words(entry->usual);
    say(tr("“%1” usually has %2. Press the keys you would rather have.").arg(action_name(*entry), usual));
}

void ShortcutsDialog::look_at_keys() {
    const ActionEntry* entry = current();
    const QKeySequence wanted = keys_->keys();
    use_->setText(tr("&Use these keys"));
    use_->setEnabled(entry != nullptr && !wanted.isEmpty());
    if (entry == nullptr || wanted.isEmpty()) return;
    const auto fault = ActionKeys::instance().fault(entry->id, wanted);
    if (!fault) return say(tr("%1 is free.").arg(wanted.toString(QKeySequence::NativeText)));
    const bool taken = fault->code == KeyFault::Code::taken;
    use_->setEnabled(taken);
    if (taken) use_->setText(tr("Take them &over"));
    const QString why = key_fault_words(wanted, *fault);
    const auto owners = static_cast<int>(ActionKeys::instance().owners(entry->id, wanted).size());
    if (!taken) return say(why);
    say(owners > 1 ? tr("%1 Keys of %n action(s) begin so; they would have none.", nullptr, owners).arg(why)
                   : tr("%1 Take them over, and that one has none.").arg(why));
}

void ShortcutsDialog::use_keys() {
    const ActionEntry* entry = current();
    const QKeySequence wanted = keys_->keys();
    if (entry == nullptr || wanted.isEmpty()) return;
    take_over(*entry, wanted);
    ActionKeys::instance().choose(entry->id, {wanted});
    say(tr("“%1” has %2 now.").arg(action_name(*entry), wanted.toString(QKeySequence::NativeText)));
    table_->setFocus();
}

/// From everybody who has them: what begins alike may belong to several.
void ShortcutsDialog::take_over(const ActionEntry& entry, const QKeySequence& wanted) {
    ActionKeys& all = ActionKeys::instance();
    for (const ActionEntry* owner : all.owners(entry.id, wanted)) {
        KeyList left = all.keys(owner->id);
        left.removeIf([&](const QKeySequence& one) { return keys_clash(one, wanted); });
        all.choose(owner->id, left);
    }
}

void ShortcutsDialog::say(const QString& text) {
    said_->setText(text);
    keys_->setAccessibleDescription(text);
}

}  // namespace roundwright::app
