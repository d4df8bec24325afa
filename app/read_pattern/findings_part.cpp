#include "app/read_pattern/findings_part.h"

#include <algorithm>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QListView>
#include <QListWidget>

#include "app/kit/true_focus.h"
#include "app/read_pattern/mends_model.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright::app {
namespace {

constexpr int most_lines = 6;

bool is_enter(const QEvent& event) {
    if (event.type() != QEvent::KeyPress) return false;
    const auto& key = static_cast<const QKeyEvent&>(event);
    return key.modifiers() == (key.modifiers() & Qt::KeypadModifier) &&
           (key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter);
}

}  // namespace

QString finding_words(const ReadDiagnostic& finding) {
    return FindingsPart::tr("Line %1, column %2: %3")
        .arg(finding.where.line)
        .arg(finding.where.column)
        .arg(diagnostic_sentence(finding));
}

FindingsPart::FindingsPart(QWidget* parent)
    : QWidget(parent),
      list_(new TrueFocus<QListWidget>),
      mends_(new TrueFocus<QListView>),
      model_(new MendsModel(this)) {
    list_->setAccessibleName(tr("Findings in the text"));
    mends_->setAccessibleName(tr("Fixes for this finding"));
    mends_->setModel(model_);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    for (QListView* view : {static_cast<QListView*>(list_), mends_}) {
        view->setWordWrap(true);
        view->setTextElideMode(Qt::ElideNone);
        view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
        view->setResizeMode(QListView::Adjust);
        view->setMaximumHeight(fontMetrics().lineSpacing() * most_lines + 2 * view->frameWidth());
        view->installEventFilter(this);
        layout->addWidget(view, view == mends_ ? 2 : 3);
    }
    connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
        show_mends();
        if (row >= 0 && row < count()) Q_EMIT picked(row);
    });
    connect(mends_, &QListView::doubleClicked, this, &FindingsPart::fix_wanted);
}

void FindingsPart::set_findings(const std::vector<ReadDiagnostic>& findings) {
    const int row = list_->currentRow();
    findings_ = findings;
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const ReadDiagnostic& finding : findings_) list_->addItem(finding_words(finding));
        if (findings_.empty()) list_->addItem(tr("Every stitch works out."));
        list_->setCurrentRow(std::clamp(row, 0, list_->count() - 1));
    }
    show_mends();
}

int FindingsPart::current() const { return list_->currentRow() < count() ? list_->currentRow() : -1; }

void FindingsPart::set_current(int finding) {
    const QSignalBlocker quiet(list_);
    list_->setCurrentRow(finding);
    show_mends();
}

int FindingsPart::marked_mend() const { return mends_->currentIndex().row(); }

bool FindingsPart::go_to_mends() {
    if (model_->rowCount() == 0) return false;
    mends_->setFocus();
    return true;
}

void FindingsPart::show_mends() {
    const int finding = current();
    model_->set_mends(finding < 0 ? std::vector<Mend>{} : findings_[static_cast<std::size_t>(finding)].mends);
    mends_->setCurrentIndex(model_->index(0, 0));
}

bool FindingsPart::eventFilter(QObject* watched, QEvent* event) {
    if (!is_enter(*event)) return QWidget::eventFilter(watched, event);
    // A key that is held makes one mend, not all of them.
    if (static_cast<QKeyEvent*>(event)->isAutoRepeat()) return true;
    if (watched == mends_) {
        if (marked_mend() >= 0) Q_EMIT fix_wanted();
    } else if (!go_to_mends()) {
        Q_EMIT text_wanted();
    }
    return true;
}

}  // namespace roundwright::app
