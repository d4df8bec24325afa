#include "tests/torture/options.h"

#include <functional>
#include <iostream>
#include <map>
#include <sstream>
#include <stdexcept>

#include "tests/torture/chain.h"

namespace roundwright::torture {
namespace {

constexpr auto usage = R"(usage: torture [options]
  --minutes M      how long (1)
  --kills N        stop after so many windows that were ended by force
  --chains N       stop after so many chains
  --seed S         of the first chain (1); each further one has the next
  --lives N        windows, one after another, in a chain (10)
  --at-once N      chains at the same time (4)
  --only A,B       only these ways to end: kill, kill-at-start, kill-in-save, kill-in-open, kill-stopped, term, hang-up,
                   quit, full-state, full-toys, full-both, read-only, changed, two-windows, later, planted-link,
                   display-gone, several
  --windows WHERE  memory, display or both (both)
  --folder DIR     for the harbours (the folder for temporary files)
)";

std::set<std::string> names_in(const std::string& list) {
    std::set<std::string> names;
    std::istringstream in(list);
    for (std::string name; std::getline(in, name, ',');) {
        if (!Chain::has_way(name)) throw std::invalid_argument("--only " + name);
        names.insert(name);
    }
    return names;
}

std::optional<bool> place_of_windows(const std::string& word) {
    if (word == "both") return std::nullopt;
    if (word != "memory" && word != "display") throw std::invalid_argument("--windows " + word);
    return word == "display";
}

}  // namespace

std::optional<Options> read_options(int argc, char** argv) {
    Options options;
    const std::map<std::string, std::function<void(const std::string&)>> known{
        {"--minutes", [&](const std::string& value) { options.minutes = std::stod(value); }},
        {"--kills", [&](const std::string& value) { options.kills = std::stoi(value); }},
        {"--chains", [&](const std::string& value) { options.chains = std::stoi(value); }},
        {"--seed",
         [&](const std::string& value) { options.seed = static_cast<std::uint32_t>(std::stoul(value)); }},
        {"--lives", [&](const std::string& value) { options.lives = std::stoi(value); }},
        {"--at-once", [&](const std::string& value) { options.at_once = std::stoi(value); }},
        {"--only", [&](const std::string& value) { options.only = names_in(value); }},
        {"--windows", [&](const std::string& value) { options.on_a_display = place_of_windows(value); }},
        {"--folder", [&](const std::string& value) { options.folder = value; }}};
    try {
        for (int at = 1; at < argc; at += 2) {
            if (at + 1 == argc) throw std::invalid_argument(argv[at]);
            known.at(argv[at])(argv[at + 1]);
        }
    } catch (const std::logic_error&) {
        std::cerr << usage;
        return std::nullopt;
    }
    return options;
}

}  // namespace roundwright::torture
