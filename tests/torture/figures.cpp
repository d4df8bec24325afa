#include "tests/torture/figures.h"

#include <algorithm>
#include <iomanip>
#include <iostream>
#include <numeric>

namespace roundwright::torture {
namespace {

constexpr const char* fault_words[fault_kinds] = {"torn",        "never there", "lost",        "foreign",
                                                  "left beside", "readable",    "for nothing", "overwritten",
                                                  "silent",      "hung",        "crashed"};

}  // namespace

const char* words(Fault fault) { return fault_words[static_cast<int>(fault)]; }

void Figures::end(const std::string& blow) {
    const std::lock_guard lock(mutex_);
    ++rows_[blow].ends;
}

void Figures::came_back(const std::string& blow, double seconds, double by_the_clock, int keys,
                        bool was_offered) {
    const std::lock_guard lock(mutex_);
    Row& row = rows_[blow];
    row.seconds.push_back(seconds);
    row.worst_by_the_clock = std::max(row.worst_by_the_clock, by_the_clock);
    row.most_keys = std::max(row.most_keys, keys);
    row.offered += was_offered ? 1 : 0;
}

void Figures::fault(const std::string& blow, Fault fault, const std::string& what,
                    const std::string& replay) {
    const std::lock_guard lock(mutex_);
    ++rows_[blow].faults[static_cast<int>(fault)];
    std::cout << "FAULT (" << words(fault) << ", " << blow << "): " << what << "\n      " << replay
              << std::endl;
}

int Figures::ends() const {
    const std::lock_guard lock(mutex_);
    return std::accumulate(rows_.begin(), rows_.end(), 0,
                           [](int sum, const auto& row) { return sum + row.second.ends; });
}

int Figures::kills() const {
    const std::lock_guard lock(mutex_);
    return std::accumulate(rows_.begin(), rows_.end(), 0, [](int sum, const auto& row) {
        return sum + (row.first == "quit" ? 0 : row.second.ends);
    });
}

int Figures::faults() const {
    const std::lock_guard lock(mutex_);
    int sum = 0;
    for (const auto& [name, row] : rows_)
        sum = std::accumulate(std::begin(row.faults), std::end(row.faults), sum);
    return sum;
}

void Figures::print(std::ostream& out, const std::string& name, Row row) {
    std::ranges::sort(row.seconds);
    const double worst = row.seconds.empty() ? 0 : row.seconds.back();
    const double median = row.seconds.empty() ? 0 : row.seconds[row.seconds.size() / 2];
    out << "| " << std::left << std::setw(16) << name << std::right << " | " << std::setw(5) << row.ends
        << " | " << std::setw(7) << row.offered << " | " << std::fixed << std::setprecision(2) << std::setw(6)
        << median << " | " << std::setw(5) << worst << " | " << std::setw(8) << row.worst_by_the_clock
        << " | " << std::setw(4) << row.most_keys;
    for (int at = 0; at < fault_kinds; ++at)
        out << " | " << std::setw(static_cast<int>(std::string(fault_words[at]).size())) << row.faults[at];
    out << " |\n";
}

void Figures::print(std::ostream& out) const {
    const std::lock_guard lock(mutex_);
    out << "| end              |  ends | offered | median | worst | by clock | keys";
    for (const char* name : fault_words) out << " | " << name;
    out << " |\n|---|--:|--:|--:|--:|--:|--:";
    for (int at = 0; at < fault_kinds; ++at) out << "|--:";
    out << "|\n";
    Row all;
    for (const auto& [name, row] : rows_) {
        print(out, name, row);
        all.ends += row.ends;
        all.offered += row.offered;
        all.worst_by_the_clock = std::max(all.worst_by_the_clock, row.worst_by_the_clock);
        all.most_keys = std::max(all.most_keys, row.most_keys);
        all.seconds.insert(all.seconds.end(), row.seconds.begin(), row.seconds.end());
        for (int at = 0; at < fault_kinds; ++at) all.faults[at] += row.faults[at];
    }
    print(out, "all", all);
}

}  // namespace roundwright::torture
