#include <algorithm>

#include <QApplication>
#include <QSettings>

#include "app/kit/look.h"

namespace roundwright::app {

namespace {

const auto contrast_setting = QStringLiteral("more-contrast");
const auto text_setting = QStringLiteral("text-percent");
constexpr int least_percent = 100;
constexpr int most_percent = 200;

}  // namespace

ReadingAids& ReadingAids::instance() {
    static auto* aids = new ReadingAids(qApp);
    return *aids;
}

ReadingAids::ReadingAids(QObject* parent) : QObject(parent) {
    more_contrast_ = QSettings().value(contrast_setting, false).toBool();
    text_percent_ =
        std::clamp(QSettings().value(text_setting, least_percent).toInt(), least_percent, most_percent);
}

void ReadingAids::set_more_contrast(bool more) {
    if (more == more_contrast_) return;
    more_contrast_ = more;
    QSettings().setValue(contrast_setting, more);
    Q_EMIT changed();
}

void ReadingAids::set_text_percent(int percent) {
    percent = std::clamp(percent, least_percent, most_percent);
    if (percent == text_percent_) return;
    text_percent_ = percent;
    QSettings().setValue(text_setting, percent);
    Q_EMIT changed();
}

}  // namespace roundwright::app
