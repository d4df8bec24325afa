#include "app/cli/command_line.h"

#include <algorithm>
#include <array>
#include <memory>

#include <QCoreApplication>
#include <QFileInfo>
#include <QGuiApplication>

#include "app/cli/command.h"
#include "app/cli/output.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

constexpr Option help_option{"help", 'h', nullptr, nullptr, "this text"};

QString option_text(const Option& option) {
    QString text = QStringLiteral("--") + QLatin1String(option.name);
    if (option.letter != 0) text = QStringLiteral("-%1, ").arg(QLatin1Char(option.letter)) + text;
    if (option.choices != nullptr) return text + QLatin1Char(' ') + QLatin1String(option.choices);
    return option.value == nullptr ? text : text + QLatin1Char(' ') + QLatin1String(option.value);
}

void print_two_columns(const QString& left, const QString& right) {
    print_line(QStringLiteral("  %1  %2").arg(left.leftJustified(24), right));
}

void print_help_of(const Command& command) {
    print_line(tr("Usage: roundwright %1 [OPTION...] %2")
                   .arg(QLatin1String(command.name), QLatin1String(command.operands)));
    print_line(tr(command.summary));
    print_line(QString());
    for (const Option& option : command.options) print_two_columns(option_text(option), tr(option.what));
    print_two_columns(option_text(help_option), tr(help_option.what));
}

void print_help() {
    print_line(tr("Usage: roundwright [FILE]                          open the window"));
    print_line(tr("       roundwright COMMAND [OPTION...] FILE...    work without a window"));
    print_line(QString());
    for (const Command* command : commands()) {
        print_two_columns(QLatin1String(command->name), tr(command->summary));
    }
    print_line(QString());
    print_line(tr("roundwright COMMAND --help tells the options of a command."));
    print_line(
        tr("Exit code: 0 fine, 1 a check found an error or a shape did not come to rest, 2 bad usage or a "
           "file that cannot be read or written."));
}

int complain(const Command& command, const QString& problem) {
    print_problem(problem);
    print_problem(tr("See roundwright %1 --help.").arg(QLatin1String(command.name)));
    return exit_bad_input;
}

int run_command(const Command& command, const QStringList& words) {
    std::vector<Option> options(command.options.begin(), command.options.end());
    options.push_back(help_option);
    const ParsedArguments parsed = parse_arguments(words, options);
    if (parsed.arguments.has(QLatin1String(help_option.name))) {
        print_help_of(command);
        return exit_fine;
    }
    if (parsed.problem) return complain(command, *parsed.problem);
    if (parsed.arguments.operands().isEmpty()) return complain(command, tr("No file was named."));
    return command.run(parsed.arguments);
}

const Command* find_command(const QString& name) {
    const auto all = commands();
    const auto found = std::find_if(all.begin(), all.end(), [&name](const Command* command) {
        return name == QLatin1String(command->name);
    });
    return found == all.end() ? nullptr : *found;
}

/// A word that is no command is a file to open, or an option of the window.
std::optional<int> refuse_or_open(const QString& word) {
    if (word.startsWith(QLatin1Char('-')) || QFileInfo::exists(word)) return std::nullopt;
    print_problem(tr("There is no command and no file %1.").arg(word));
    print_problem(tr("See roundwright --help."));
    return exit_bad_input;
}

/// Drawing needs the fonts of a platform, though nothing is shown; computing does not.
std::unique_ptr<QCoreApplication> application_for(const Command& command, int& argc, char** argv) {
    if (!command.draws) return std::make_unique<QCoreApplication>(argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    return std::make_unique<QGuiApplication>(argc, argv);
}

QStringList words_of(int argc, char** argv) {
    QStringList words;
    for (int i = 1; i < argc; ++i) words += QString::fromLocal8Bit(argv[i]);
    return words;
}

}  // namespace

std::span<const Command* const> commands() {
    static const std::array all{&check_command(), &shape_command(),  &read_command(),
                                &write_command(), &resize_command(), &gauge_command(),
                                &pdf_command(),   &image_command(),  &mesh_command()};
    return all;
}

std::optional<int> run_command_line(int argc, char** argv) {
    const QStringList words = words_of(argc, argv);
    if (words.isEmpty()) return std::nullopt;
    if (words[0] == QLatin1String("--help") || words[0] == QLatin1String("-h")) {
        print_help();
        return exit_fine;
    }
    if (words[0] == QLatin1String("--version")) {
        print_line(QStringLiteral("roundwright " ROUNDWRIGHT_VERSION));
        return exit_fine;
    }
    const Command* command = find_command(words[0]);
    if (command == nullptr) return refuse_or_open(words[0]);
    int count = 1;
    const auto application = application_for(*command, count, argv);
    QCoreApplication::setApplicationName(QStringLiteral("roundwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(ROUNDWRIGHT_VERSION));
    return run_command(*command, words.mid(1));
}

}  // namespace roundwright::app
