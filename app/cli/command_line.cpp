#include "app/cli/command_line.h"

#include <algorithm>
#include <array>
#include <memory>

#include <QCoreApplication>
#include <QFileInfo>
#include <QGuiApplication>

#include "app/cli/command.h"
#include "app/cli/command_line_text.h"
#include "app/cli/output.h"
#include "app/kit/out_of_memory.h"
#include "render/background/fault_words.h"
#include "render/wording/translations.h"

namespace roundwright::app {
namespace {

constexpr Option help_option{"help", 'h', nullptr, nullptr,
                             QT_TRANSLATE_NOOP("CommandLine", "show this help")};

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
    print_line(CommandLine::tr("Usage: roundwright %1 [OPTION...] %2")
                   .arg(QLatin1String(command.name), QLatin1String(command.operands)));
    print_line(CommandLine::tr(command.summary));
    print_line(QString());
    for (const Option& option : command.options)
        print_two_columns(option_text(option), CommandLine::tr(option.what));
    print_two_columns(option_text(help_option), CommandLine::tr(help_option.what));
}

void print_help() {
    print_line(CommandLine::tr("Usage: roundwright [FILE]                          open the window"));
    print_line(CommandLine::tr("       roundwright COMMAND [OPTION...] FILE...    work without a window"));
    print_line(QString());
    for (const Command* command : commands()) {
        print_two_columns(QLatin1String(command->name), CommandLine::tr(command->summary));
    }
    print_line(QString());
    print_line(CommandLine::tr("roundwright help COMMAND lists the options of a command."));
    print_line(CommandLine::tr(
        "Exit code: 0 fine; 1 a check found an error, no settled shape was found, or memory ran out; 2 a "
        "command that is not understood, or a file that cannot be read or written."));
}

int complain(const Command& command, const QString& problem) {
    print_problem(problem);
    print_problem(CommandLine::tr("See roundwright %1 --help.").arg(QLatin1String(command.name)));
    return exit_bad_input;
}

/// An empty name is a slip of a script ("$file" that was never set), never a file.
std::optional<QString> problem_with_names(const Arguments& arguments) {
    if (arguments.operands().isEmpty()) return CommandLine::tr("No file was named.");
    if (arguments.operands().contains(QString())) return CommandLine::tr("The name of a file is empty.");
    const QString output = QStringLiteral("output");
    if (arguments.has(output) && arguments.value(output).isEmpty())
        return CommandLine::tr("-o needs the name of a file.");
    return std::nullopt;
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
    if (const auto problem = problem_with_names(parsed.arguments)) return complain(command, *problem);
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
bool opens_the_window(const QString& word) {
    static const QStringList own{QStringLiteral("help"), QStringLiteral("--help"), QStringLiteral("-h"),
                                 QStringLiteral("--version")};
    if (own.contains(word) || find_command(word) != nullptr) return false;
    return word.startsWith(QLatin1Char('-')) || QFileInfo::exists(word);
}

int refuse(const QString& word) {
    print_problem(word.isEmpty() ? CommandLine::tr("The name of a file is empty.")
                                 : CommandLine::tr("There is no command and no file %1.").arg(word));
    print_problem(CommandLine::tr("See roundwright --help."));
    return exit_bad_input;
}

/// "help", or "help COMMAND".
int help_with(const QStringList& topics) {
    if (topics.isEmpty()) {
        print_help();
        return exit_fine;
    }
    if (const Command* command = find_command(topics[0])) {
        print_help_of(*command);
        return exit_fine;
    }
    print_problem(CommandLine::tr("There is no command %1.").arg(topics[0]));
    print_problem(CommandLine::tr("See roundwright --help."));
    return exit_bad_input;
}

/// Drawing needs the fonts of a platform, though nothing is shown; computing does not.
std::unique_ptr<QCoreApplication> application_for(const Command* command, int& argc, char** argv) {
    // GLib ends the program where memory is short, and no command needs its event loop.
    qputenv("QT_NO_GLIB", "1");
    if (command == nullptr || !command->draws) return std::make_unique<QCoreApplication>(argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    return std::make_unique<QGuiApplication>(argc, argv);
}

QStringList words_of(int argc, char** argv) {
    QStringList words;
    for (int i = 1; i < argc; ++i) words += QString::fromLocal8Bit(argv[i]);
    return words;
}

int run_words(const Command* command, const QStringList& words) {
    const QString& first = words[0];
    if (first == QLatin1String("help")) return help_with(words.mid(1));
    if (first == QLatin1String("--help") || first == QLatin1String("-h")) return help_with({});
    if (first == QLatin1String("--version")) {
        print_line(QStringLiteral("roundwright " ROUNDWRIGHT_VERSION));
        return exit_fine;
    }
    return command == nullptr ? refuse(first) : run_command(*command, words.mid(1));
}

int answer(const Command* command, const QStringList& words) {
    try {
        return run_words(command, words);
    } catch (...) {
        print_problem(render::fault_words(std::current_exception()));
        return exit_checks_failed;
    }
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
    if (words.isEmpty() || opens_the_window(words[0])) return std::nullopt;
    const Command* command = find_command(words[0]);
    int count = 1;
    const auto application = application_for(command, count, argv);
    QCoreApplication::setApplicationName(QStringLiteral("roundwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(ROUNDWRIGHT_VERSION));
    speak_language_of_system();
    render::keep_memory_for_words();
    end_in_words_without_memory(exit_checks_failed);
    const int exit_code = answer(command, words);
    const auto problem = finish_output();
    if (!problem) return exit_code;
    print_problem(CommandLine::tr("The answer could not be written: %1").arg(*problem));
    return exit_bad_input;
}

}  // namespace roundwright::app
