#pragma once

#include <functional>
#include <vector>

#include <QPointF>
#include <QRectF>
#include <QString>

#include "render/pages/layout/page_layout.h"

class QPainter;

namespace roundwright::render {

/// What a block may ask when it is painted, since only then the pages are known.
struct PageNumbers {
    std::function<int(const QString& anchor)> page_of;  ///< from 1; 0: no such place
};

/// A link from an area of a block, relative to its top left corner, to an anchor.
struct BlockLink {
    QRectF area;
    QString anchor;
};

/// One block of the pattern: it is laid out by its shape and paints itself.
struct Block {
    BlockShape shape;
    std::function<void(QPainter&, QPointF top_left, const PageNumbers&)> paint;
    std::function<void(QPainter&, QPointF top_left)>
        paint_repeated;  ///< besides, where it is a header put again
    QString anchor;      ///< where links lead; empty: nowhere
    QString heading;     ///< entry in the outline; empty: none
    int level = 1;       ///< of the entry, from 1
    std::vector<BlockLink> links;
};

using Blocks = std::vector<Block>;

}  // namespace roundwright::render
