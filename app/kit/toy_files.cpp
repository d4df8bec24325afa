#include "app/kit/toy_files.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct ToyFile {
    Q_DECLARE_TR_FUNCTIONS(ToyFile)
};

}  // namespace

QString toy_ending() { return QStringLiteral("roundwright"); }

QString toy_file_filter() { return ToyFile::tr("Toys (*.roundwright);;All files (*)"); }

}  // namespace roundwright::app
