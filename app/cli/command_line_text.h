#pragma once

#include <QCoreApplication>
#include <QStringList>

namespace roundwright::app {

/// What the command line says, in the language of the program: `CommandLine::tr("Name one file.")`.
struct CommandLine {
    Q_DECLARE_TR_FUNCTIONS(CommandLine)
};

/// "mm or in or inch"
[[nodiscard]] inline QString one_of(const QStringList& choices) {
    QString text = choices.value(0);
    for (const QString& choice : choices.mid(1)) text = CommandLine::tr("%1 or %2").arg(text, choice);
    return text;
}

}  // namespace roundwright::app
