#pragma once

#include <QCoreApplication>

namespace roundwright::app {

/// What the command line says, in the language of the program: `CommandLine::tr("Name one file.")`.
struct CommandLine {
    Q_DECLARE_TR_FUNCTIONS(CommandLine)
};

}  // namespace roundwright::app
