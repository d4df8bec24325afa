#include "render/drawing/ink.h"

#include "render/drawing/contrast.h"

namespace roundwright::render {

QColor readable_ink(const QColor& colour, const QColor& paper, double contrast) {
    const bool on_dark = relative_luminance(paper) < 0.18;
    QColor ink = colour;
    for (int step = 0; step < 24 && contrast_ratio(ink, paper) < contrast; ++step) {
        const auto moved = [&](int channel) {
            return on_dark ? 255 - (255 - channel) * 9 / 10 : channel * 9 / 10;
        };
        ink = QColor(moved(ink.red()), moved(ink.green()), moved(ink.blue()));
    }
    return ink;
}

}  // namespace roundwright::render
