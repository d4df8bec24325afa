#include "app/chart/chart_window.h"

#include <algorithm>

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/kit/room_on_screen.h"
#include "app/kit/save_bytes.h"
#include "app/kit/save_path.h"
#include "app/kit/spoken_roles.h"
#include "app/rounds/rounds_in_words.h"
#include "render/chart/round_chart.h"
#include "render/chart/round_chart_view.h"
#include "render/pages/chart_words.h"
#include "render/wording/printable.h"

namespace roundwright::app {

namespace {

render::ChartOptions options_for(const Toy& toy) {
    render::ChartOptions options;
    if (toy.yarns.size() > 1) {
        for (const Yarn& yarn : toy.yarns) options.yarns.push_back(yarn.colour);
    }
    return options;
}

QString part_name(const render::ChartPart& part) {
    const QString rounds =
        ChartWindow::tr("Rounds %1 to %2").arg(part.first + 1).arg(part.first + part.rounds);
    return part.inwards ? ChartWindow::tr("%1, closing inwards").arg(rounds) : rounds;
}

}  // namespace

ChartWindow::ChartWindow(DocumentSession& session, QWidget* parent)
    : QDialog(parent, Qt::Window),
      session_(session),
      part_(new QComboBox),
      view_(new render::RoundChartView) {
    setWindowTitle(tr("Round chart"));
    resize(room_on_screen(*this, {720, 760}));
    build();
    connect(&session_, &DocumentSession::study_ready, this, &ChartWindow::follow);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ChartWindow::follow);
    connect(&session_, &DocumentSession::selection_changed, view_, &render::RoundChartView::set_lit_rounds);
    connect(view_, &render::RoundChartView::clicked, this, [this](int round, int) {
        if (round >= 0) session_.select_rounds({round});
    });
    connect(part_, &QComboBox::currentIndexChanged, this, &ChartWindow::show_part);
    follow();
}

void ChartWindow::build() {
    view_->setFocusPolicy(Qt::StrongFocus);
    speak_as(*view_, QAccessible::Graphic);
    view_->setAccessibleName(tr("Symbol chart"));
    auto* label = new QLabel(tr("&Part"));
    label->setBuddy(part_);
    part_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    part_->setMinimumContentsLength(10);
    auto* save = new QPushButton(tr("&Save as SVG…"), this);
    save->setDefault(true);
    auto* in_words = new QPushButton(tr("In &words…"));
    auto* close = new QPushButton(tr("Close"));
    connect(in_words, &QPushButton::clicked, this, [this] { show_rounds_in_words(session_, this); });
    connect(save, &QPushButton::clicked, this, &ChartWindow::save_svg);
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    auto* row = new QHBoxLayout;
    row->addWidget(label);
    row->addWidget(part_, 1);
    row->addWidget(in_words);
    row->addWidget(save);
    row->addWidget(close);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(view_, 1);
    layout->addLayout(row);
}

void ChartWindow::follow() {
    const auto study = session_.study(session_.current_piece());
    const QSignalBlocker quiet(part_);
    const int shown = part_->currentIndex();
    part_->clear();
    parts_.clear();
    if (session_.piece() != nullptr && study != nullptr) {
        parts_ = render::chart_parts(*session_.piece(), study->graph().graph);
    }
    for (const render::ChartPart& part : parts_) part_->addItem(part_name(part));
    part_->setCurrentIndex(std::clamp(shown, parts_.empty() ? -1 : 0, parts() - 1));
    show_part();
}

void ChartWindow::show_part() {
    const auto study = session_.study(session_.current_piece());
    const int index = part_->currentIndex();
    if (index < 0 || index >= parts() || study == nullptr || session_.piece() == nullptr) {
        view_->set_chart({}, {});
        return view_->setAccessibleDescription(tr("No rounds to show"));
    }
    const auto& part = parts_[static_cast<std::size_t>(index)];
    view_->set_chart(render::chart_layout(*session_.piece(), study->graph().graph, part),
                     options_for(session_.toy()));
    view_->set_lit_rounds(session_.selection());
    const QString shown = tr("%1. To read it round by round, press In words.").arg(part_name(part));
    if (shown != view_->accessibleDescription()) view_->setAccessibleDescription(shown);
}

QByteArray ChartWindow::svg() const {
    const auto study = session_.study(session_.current_piece());
    const int index = part_->currentIndex();
    if (index < 0 || index >= parts() || study == nullptr || session_.piece() == nullptr) return {};
    const Terms terms = session_.preferences().terms();
    const auto words = [terms](render::ChartSymbol symbol) {
        return render::chart_symbol_words(symbol, terms);
    };
    const auto& part = parts_[static_cast<std::size_t>(index)];
    return render::chart_svg(render::chart_layout(*session_.piece(), study->graph().graph, part),
                             options_for(session_.toy()), words,
                             tr("%1: %2").arg(printable_line(session_.piece()->name), part_name(part)));
}

void ChartWindow::save_svg() {
    const QByteArray picture = svg();
    if (picture.isEmpty()) return;
    const QString path =
        ask_save_path(this, tr("Save the chart"), tr("chart.svg"), tr("SVG (*.svg)"), QStringLiteral("svg"));
    if (path.isEmpty()) return;
    const SavedBytes saved = save_bytes(path, picture);
    if (!saved.problem) return session_.remark(path, saved.remarks);
    QMessageBox::warning(this, tr("Save the chart"),
                         tr("%1 could not be written: %2").arg(path, *saved.problem));
}

}  // namespace roundwright::app
