#include "app/cli/arguments.h"

#include <algorithm>

#include "app/cli/command_line_text.h"

namespace roundwright::app {

QString Arguments::value(const QString& option, const QString& usual) const {
    const auto found = options_.find(option);
    return found == options_.end() ? usual : found->second;
}

struct ArgumentParser {
    std::span<const Option> options;
    ParsedArguments parsed{};

    void fail(const QString& problem) {
        if (!parsed.problem) parsed.problem = problem;
    }

    [[nodiscard]] const Option* find(const QString& word) const {
        const auto named = [&word](const Option& option) {
            if (word.startsWith(QLatin1String("--"))) return word.mid(2) == QLatin1String(option.name);
            return option.letter != 0 && word == QLatin1String("-") + QLatin1Char(option.letter);
        };
        const auto option = std::find_if(options.begin(), options.end(), named);
        return option == options.end() ? nullptr : &*option;
    }

    void take_value(const Option& option, const QString& value) {
        const QString choices = QString::fromLatin1(option.choices);
        if (option.choices != nullptr && !choices.split(QLatin1Char('|')).contains(value)) {
            fail(CommandLine::tr("--%1 takes %2, not \"%3\".")
                     .arg(QLatin1String(option.name), one_of(choices.split(QLatin1Char('|'))), value));
        }
        parsed.arguments.options_[QLatin1String(option.name)] = value;
    }

    /// Reads the option at `words[index]` and gives the index of the word after it.
    qsizetype read_option(const QStringList& words, qsizetype index) {
        const QString word = words[index];
        const qsizetype equals = word.startsWith(QLatin1String("--")) ? word.indexOf(QLatin1Char('=')) : -1;
        const QString name = equals < 0 ? word : word.left(equals);
        const Option* option = find(name);
        if (option == nullptr) {
            fail(CommandLine::tr("There is no option %1.").arg(name));
        } else if (option->value == nullptr) {
            if (equals >= 0) fail(CommandLine::tr("%1 takes no value.").arg(name));
            parsed.arguments.options_[QLatin1String(option->name)] = QString();
        } else if (equals >= 0) {
            take_value(*option, word.mid(equals + 1));
        } else if (index + 1 < words.size()) {
            take_value(*option, words[index + 1]);
            return index + 2;
        } else {
            fail(CommandLine::tr("%1 needs a value: %2.").arg(name, QLatin1String(option->value)));
        }
        return index + 1;
    }

    void read(const QStringList& words) {
        for (qsizetype index = 0; index < words.size();) {
            const QString& word = words[index];
            if (word == QLatin1String("--")) {
                parsed.arguments.operands_ += words.mid(index + 1);
                return;
            }
            if (word.startsWith(QLatin1Char('-')) && word.size() > 1) {
                index = read_option(words, index);
            } else {
                parsed.arguments.operands_ += word;
                ++index;
            }
        }
    }
};

ParsedArguments parse_arguments(const QStringList& words, std::span<const Option> options) {
    ArgumentParser parser{options};
    parser.read(words);
    return parser.parsed;
}

}  // namespace roundwright::app
