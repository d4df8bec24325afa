#include "app/read_pattern/review_model.h"

#include "app/kit/cell_words.h"
#include "app/kit/icons.h"

namespace roundwright::app {

namespace {

QString kind_name(const ReadLine& line) {
    switch (line.kind) {
        case ReadLineKind::title:
            return ReviewModel::tr("title");
        case ReadLineKind::heading:
            return ReviewModel::tr("piece");
        case ReadLineKind::terms:
            return ReviewModel::tr("terms");
        case ReadLineKind::yarn:
            return ReviewModel::tr("yarn");
        case ReadLineKind::start:
            return ReviewModel::tr("start");
        case ReadLineKind::note:
            return ReviewModel::tr("note");
        case ReadLineKind::section:
            return ReviewModel::tr("section");
        case ReadLineKind::materials:
            return ReviewModel::tr("materials");
        case ReadLineKind::abbreviation:
            return ReviewModel::tr("abbreviation");
        case ReadLineKind::assembly:
            return ReviewModel::tr("assembly");
        case ReadLineKind::not_read:
            return ReviewModel::tr("not read");
        case ReadLineKind::like_piece:
        case ReadLineKind::round:
            break;
    }
    if (line.last_round <= line.first_round) return ReviewModel::tr("round %1").arg(line.first_round + 1);
    return ReviewModel::tr("rounds %1–%2").arg(line.first_round + 1).arg(line.last_round + 1);
}

}  // namespace

void ReviewModel::set_pattern(const ReadPattern& pattern) {
    beginResetModel();
    lines_ = pattern.lines;
    endResetModel();
}

int ReviewModel::row_of_line(int text_line) const {
    for (std::size_t row = 0; row < lines_.size(); ++row) {
        if (text_line >= lines_[row].first_line && text_line <= lines_[row].last_line)
            return static_cast<int>(row);
    }
    return -1;
}

int ReviewModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

int ReviewModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : columns; }

QString ReviewModel::text(const ReadLine& line, int column) const {
    switch (column) {
        case place:
            return line.last_line > line.first_line ? tr("%1–%2").arg(line.first_line).arg(line.last_line)
                                                    : QString::number(line.first_line);
        case kind:
            return kind_name(line);
        case understood: {
            const QString words = QString::fromStdString(line.understood);
            return line.kind == ReadLineKind::like_piece ? tr("like “%1”").arg(words) : words;
        }
        case stitches:
            return line.first_round >= 0 ? QString::number(line.stitches) : QString();
        default:
            return {};
    }
}

QVariant ReviewModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const ReadLine& read = line(index.row());
    switch (role) {
        case Qt::DisplayRole:
        case Qt::ToolTipRole:
            return text(read, index.column());
        case Qt::DecorationRole:
            if (index.column() == kind && !read.proved) return icon(QStringLiteral("error"));
            return {};
        case Qt::AccessibleTextRole:
            if (index.column() == kind && !read.proved)
                return read.kind == ReadLineKind::not_read ? kind_name(read)
                                                           : tr("%1, does not work out").arg(kind_name(read));
            return cell_words(tr("Line %1").arg(text(read, place)),
                              headerData(index.column(), Qt::Horizontal, role).toString(),
                              text(read, index.column()));
        case Qt::TextAlignmentRole:
            if (index.column() == stitches || index.column() == place) {
                return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
            }
            return {};
        default:
            return {};
    }
}

QVariant ReviewModel::headerData(int section, Qt::Orientation orientation, int role) const {
    const bool spoken = role == Qt::AccessibleTextRole;
    if (orientation != Qt::Horizontal || (role != Qt::DisplayRole && !spoken)) return {};
    switch (section) {
        case place:
            return tr("line");
        case kind:
            return tr("type");
        case understood:
            return tr("understood");
        case stitches:
            return spoken ? tr("stitches") : tr("sts");
        default:
            return {};
    }
}

}  // namespace roundwright::app
