#include "app/print/pattern_preview.h"

#include <array>
#include <functional>

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QSettings>
#include <QStyle>
#include <QVBoxLayout>

#include "app/kit/action_maker.h"
#include "app/kit/announcer.h"
#include "app/kit/field_widgets.h"
#include "app/kit/icons.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/true_focus.h"
#include "app/print/pages_view.h"
#include "app/print/print_pattern.h"
#include "app/print/thumbnails_model.h"
#include "app/toy/toy_details.h"
#include "render/wording/counted.h"
#include "render/wording/open_question_words.h"
#include "render/wording/printable.h"
#include "render/wording/terms_words.h"

namespace roundwright::app {

namespace {

constexpr int follow_after_ms = 250;
const auto paper_setting = QStringLiteral("pattern/paper");
const auto contents_setting = QStringLiteral("pattern/contents");

/// The parts of a pattern that may be left out, as the check boxes name them.
struct Part {
    const char* name;
    bool render::PatternContents::*member;
};
constexpr std::array<Part, 11> parts{{
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Cover"), &render::PatternContents::cover},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Materials"),
     &render::PatternContents::materials},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "Sizes at other &gauges"),
     &render::PatternContents::gauge_table},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Abbreviations"),
     &render::PatternContents::abbreviations},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Rounds"), &render::PatternContents::rounds},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "Round c&hart"),
     &render::PatternContents::round_chart},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Face"), &render::PatternContents::face},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "Full-size &outlines"),
     &render::PatternContents::silhouette},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "Assem&bly and finishing"),
     &render::PatternContents::making},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Teaching sheet"),
     &render::PatternContents::teaching_sheet},
    {QT_TRANSLATE_NOOP("roundwright::app::PatternPreview", "&Notes"), &render::PatternContents::notes},
}};

/// On a small screen the choices scroll, so that the window need not be as high as they are.
QScrollArea* scrolled(QWidget* choices) {
    auto* area = new QScrollArea;
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(choices);
    area->setFixedWidth(choices->sizeHint().width() + area->style()->pixelMetric(QStyle::PM_ScrollBarExtent));
    return area;
}

QString file_name_of(const Toy& toy) {
    QString name = printable_line(toy.title);
    for (QChar& c : name) {
        if (QStringLiteral("/\\:*?\"<>|").contains(c)) c = QLatin1Char('-');
    }
    return name.isEmpty() ? PatternPreview::tr("pattern") : name.left(80);
}

}  // namespace

PatternPreview::PatternPreview(DocumentSession& session, QWidget* parent)
    : QDialog(parent, Qt::Window),
      session_(session),
      announcer_(new Announcer(this)),
      view_(new PagesView),
      thumbnails_(new ThumbnailsModel(this)),
      thumbnail_list_(new TrueFocus<QListView>),
      paper_(new QComboBox),
      terms_(new QComboBox),
      units_(new QComboBox),
      open_questions_(words_label(tr("What a reader might still ask"))),
      state_(new QLabel) {
    state_->setWordWrap(true);
    setWindowTitle(tr("Pattern"));
    resize(room_on_screen(*this, {1080, 720}));
    build();
    restore_choices();
    follow();
}

void PatternPreview::build() {
    thumbnail_list_->setModel(thumbnails_);
    thumbnail_list_->setViewMode(QListView::IconMode);
    thumbnail_list_->setFlow(QListView::TopToBottom);
    thumbnail_list_->setWrapping(false);
    thumbnail_list_->setMovement(QListView::Static);
    thumbnail_list_->setSpacing(8);
    thumbnail_list_->setFixedWidth(160);
    thumbnail_list_->setAccessibleName(tr("Page thumbnails"));

    auto* columns = new QHBoxLayout;
    columns->addWidget(thumbnail_list_);
    columns->addWidget(view_, 1);
    columns->addWidget(scrolled(choices()));
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons());
}

QWidget* PatternPreview::choices() {
    paper_->addItems({tr("A4"), tr("Letter")});
    terms_->addItems(terms_names());
    units_->addItems({tr("Millimetres"), tr("Inches")});
    auto* side = new QWidget;
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(3, 3, 3, 3);  // room for the mark of focus
    auto* form = new QFormLayout;
    form->addRow(tr("&Paper"), paper_);
    form->addRow(tr("T&erms"), terms_);
    form->addRow(tr("&Lengths in"), units_);
    auto* group = new QGroupBox(tr("Include"));
    auto* boxes = new QVBoxLayout(group);
    const render::PatternContents usual;
    for (const Part& part : parts) {
        auto* box = new QCheckBox(tr(part.name));
        box->setChecked(usual.*part.member);
        boxes->addWidget(box);
        contents_.push_back(box);
    }
    auto* words = new QPushButton(tr("Pattern &wording…"));
    words->setAutoDefault(false);
    connect(words, &QPushButton::clicked, this, [this] { ask_toy_details(session_, this); });
    auto* safety = new QLabel(tr("Safety notes are always included."));
    safety->setWordWrap(true);
    layout->addLayout(form);
    layout->addWidget(group);
    layout->addWidget(safety);
    layout->addWidget(words);
    layout->addSpacing(8);
    layout->addWidget(open_questions_);
    layout->addStretch(1);
    return side;
}

QWidget* PatternPreview::buttons() {
    auto* row = new QWidget;
    auto* layout = new QHBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* pdf = new QPushButton(tr("Save as P&DF…"), this);
    auto* look = new QPushButton(tr("&View"));
    look->setMenu(new QMenu(look));
    fill_view_menu(look->menu());
    auto* other = new QPushButton(tr("Other format&s"));
    auto* print = new QPushButton(tr("Pr&int…"));
    auto* close = new QPushButton(tr("Close"));
    pdf->setDefault(true);
    auto* menu = new QMenu(other);
    menu->addAction(tr("Plain &text…"), this, [this] { save(PatternForm::plain_text); });
    menu->addAction(tr("&Markdown…"), this, [this] { save(PatternForm::markdown); });
    menu->addAction(tr("&Rounds as a table (CSV)…"), this, [this] { save(PatternForm::rounds_table); });
    other->setMenu(menu);
    connect(pdf, &QPushButton::clicked, this, [this] { save(PatternForm::pdf); });
    connect(print, &QPushButton::clicked, this, [this] {
        if (pages_) print_pattern(this, *pages_);
    });
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    layout->addWidget(state_, 1);
    layout->addWidget(look);
    layout->addWidget(other);
    layout->addWidget(print);
    layout->addWidget(pdf);
    layout->addWidget(close);
    return row;
}

void PatternPreview::save(PatternForm form) {
    if (save_pattern(this, form, session_, options(), file_name_of(session_.toy())))
        announcer_->answer(tr("The pattern is saved"));
}

void PatternPreview::fill_view_menu(QMenu* menu) {
    const std::pair<const char*, std::function<void()>> actions[] = {
        {"preview.larger", [this] { view_->zoom_by(1.2); }},
        {"preview.smaller", [this] { view_->zoom_by(1 / 1.2); }},
        {"preview.fit-width", [this] { view_->set_zoom(0); }},
        {"preview.actual-size", [this] { view_->set_zoom(1); }},
        {"preview.next-page", [this] { view_->go_to(view_->current_page() + 1); }},
        {"preview.previous-page", [this] { view_->go_to(view_->current_page() - 1); }},
    };
    for (const auto& [id, act] : actions) {
        auto* action = make_action(this, id);
        connect(action, &QAction::triggered, this, act);
        menu->addAction(action);
    }
}

void PatternPreview::follow() {
    say_again_by_key(*this, *announcer_);
    soon_.setSingleShot(true);
    soon_.setInterval(follow_after_ms);
    connect(&soon_, &QTimer::timeout, this, &PatternPreview::compose);
    connect(&composing_, &render::Background::failed, this,
            [this](render::Background::Ticket, const QString& why) { state_->setText(why); });
    connect(&session_, &DocumentSession::toy_changed, this, &PatternPreview::compose_soon);
    connect(&session_, &DocumentSession::toy_changed, this, &PatternPreview::show_open_questions);
    for (QComboBox* box : {paper_, terms_, units_}) {
        connect(box, &QComboBox::currentIndexChanged, this, &PatternPreview::compose_soon);
    }
    for (QCheckBox* box : contents_) connect(box, &QCheckBox::toggled, this, &PatternPreview::compose_soon);
    connect(thumbnail_list_, &QListView::activated, this,
            [this](const QModelIndex& page) { view_->go_to(page.row()); });
    connect(thumbnail_list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& page) {
                if (page.isValid() && page.row() != view_->current_page()) view_->go_to(page.row());
            });
    connect(view_, &PagesView::page_changed, this, [this](int page) {
        const QSignalBlocker quiet(thumbnail_list_->selectionModel());
        thumbnail_list_->setCurrentIndex(thumbnails_->index(page));
        thumbnail_list_->viewport()->update();
    });
}

void PatternPreview::showEvent(QShowEvent* event) {
    QDialog::showEvent(event);
    show_open_questions();
    compose_soon();
}

void PatternPreview::compose_soon() {
    keep_choices();
    if (!isVisible()) return;
    state_->setText(tr("Laying out the pages…"));
    soon_.start();
}

void PatternPreview::compose() {
    composing_.start_latest(
        render::Lane::longer,
        [this, toy = session_.toy(), options = options()](const render::TaskRun& run) -> render::Delivery {
            const auto pages = render::PatternPages::compose(toy, options, {run.report, run.stop});
            if (!pages) return {};
            return [this, pages = *pages] { show_pages(pages); };
        });
}

void PatternPreview::show_open_questions() {
    if (!isVisible()) return;
    QStringList lines;
    for (const OpenQuestion& question : open_questions(session_.toy()))
        lines << tr("• %1").arg(open_question_words(question, session_.toy()));
    open_questions_->setText(tr("A reader might still ask\n%1").arg(lines.join(QLatin1Char('\n'))));
    open_questions_->setVisible(!lines.isEmpty());
}

render::PatternOptions PatternPreview::options() const {
    render::PatternOptions options;
    options.paper = static_cast<render::Paper>(paper_->currentIndex());
    options.terms = static_cast<roundwright::Terms>(terms_->currentIndex());
    options.units = static_cast<LengthUnit>(units_->currentIndex());
    for (std::size_t k = 0; k < parts.size(); ++k)
        options.contents.*parts[k].member = contents_[k]->isChecked();
    return options;
}

void PatternPreview::show_pages(const render::PatternPages& pages) {
    pages_ = pages;
    view_->set_pages(pages);
    thumbnails_->set_pages(pages, devicePixelRatioF());
    thumbnail_list_->setIconSize(thumbnails_->picture_size());
    state_->setText(pages_words(pages.count()));
    announcer_->say(QStringLiteral("pages"), state_->text(), Weight::answer);
}

void PatternPreview::keep_choices() const {
    QSettings settings;
    settings.setValue(paper_setting, paper_->currentIndex());
    QStringList left_out;
    const render::PatternContents contents = options().contents;
    for (const Part& part : parts) left_out << QString::number(contents.*part.member);
    settings.setValue(contents_setting, left_out);
}

void PatternPreview::restore_choices() {
    const QSettings settings;
    const bool letter_land = QLocale().measurementSystem() == QLocale::ImperialUSSystem;
    paper_->setCurrentIndex(settings.value(paper_setting, letter_land ? 1 : 0).toInt());
    terms_->setCurrentIndex(static_cast<int>(session_.preferences().terms()));
    units_->setCurrentIndex(static_cast<int>(session_.preferences().units()));
    const QStringList kept = settings.value(contents_setting).toStringList();
    if (static_cast<std::size_t>(kept.size()) != parts.size()) return;
    for (std::size_t k = 0; k < parts.size(); ++k) {
        contents_[k]->setChecked(kept[static_cast<qsizetype>(k)] == QStringLiteral("1"));
    }
}

}  // namespace roundwright::app
