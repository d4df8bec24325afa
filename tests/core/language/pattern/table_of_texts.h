#pragma once

#include <fstream>
#include <string>
#include <vector>

#include "core/language/pattern/read_pattern.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::testing {

// Patterns as people write them, in tables of text that a person can read and check. Each case: "== what is
// told apart", the text as it stands, "-> counts of each piece", and each finding as "-> line:column code". A
// line that begins with "%%" is a comment.

struct WrittenText {
    std::string name;
    std::string text;
    std::string counts;
    std::vector<std::string> findings;
};

inline std::vector<WrittenText> table_of_texts(const std::string& path) {
    std::ifstream table(path);
    std::vector<WrittenText> texts;
    for (std::string line; std::getline(table, line);) {
        const bool expected = line.starts_with("-> ");
        if (line.starts_with("== "))
            texts.push_back({line.substr(3), "", "", {}});
        else if (expected && line.find('_') == std::string::npos)
            texts.back().counts = line.substr(3);
        else if (expected)
            texts.back().findings.push_back(line.substr(3));
        else if (!line.starts_with("%%"))
            texts.back().text += line + "\n";
    }
    return texts;
}

inline std::string counts_read(const ReadPattern& read) {
    std::string all;
    for (const Piece& piece : read.pieces) {
        all += all.empty() ? "" : "; ";
        std::string counts;
        for (const int count : stitch_counts(piece_graph(piece).graph))
            counts += (counts.empty() ? "" : " ") + std::to_string(count);
        all += counts;
    }
    return all;
}

inline std::vector<std::string> findings_read(const ReadPattern& read) {
    std::vector<std::string> all;
    for (const ReadDiagnostic& d : read.diagnostics)
        all.push_back(std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " +
                      std::string(read_code_name(d.code)));
    return all;
}

}  // namespace roundwright::testing
