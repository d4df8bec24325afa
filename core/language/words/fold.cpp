#include "core/language/words/fold.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace roundwright {
namespace {

constexpr std::size_t most_items_folded_exactly = 256;
constexpr std::size_t most_runs_folded = 512;
constexpr int deepest_nesting = 3;

int digits(int number) {
    int count = 1;
    while (number >= 10) {
        number /= 10;
        ++count;
    }
    return count;
}

int run_cost(int width, int count) { return width + 2 + (count > 1 ? 1 + digits(count) : 0); }

// Brackets, " x ", the number and a little more, so that a repeat has to earn its brackets.
int repeat_cost(int body, int times) { return body + 6 + digits(times); }

/// Smallest period that divides the length (Knuth, Morris and Pratt's failure function).
std::size_t whole_period(const std::vector<int>& items) {
    const std::size_t n = items.size();
    std::vector<std::size_t> fail(n, 0);
    for (std::size_t i = 1, k = 0; i < n; ++i) {
        while (k > 0 && items[i] != items[k]) k = fail[k - 1];
        if (items[i] == items[k]) ++k;
        fail[i] = k;
    }
    const std::size_t period = n == 0 ? 0 : n - fail[n - 1];
    return period != 0 && n % period == 0 ? period : n;
}

class Folder {
  public:
    Folder(const std::vector<int>& items, const std::vector<int>& width)
        : items_(items), width_(width), size_(static_cast<int>(items.size())) {
        same_.assign(static_cast<std::size_t>(size_ + 1) * (size_ + 1), 0);
        for (int i = size_ - 1; i >= 0; --i)
            for (int j = size_ - 1; j > i; --j)
                at(i, j) = items[i] == items[j] ? static_cast<short>(at(i + 1, j + 1) + 1) : short{0};
    }

    std::vector<Fold> fold() { return written(0, size_, 0); }

  private:
    struct Choice {
        int cost = std::numeric_limits<int>::max();
        int from = 0;
        int period = 0;  // 0: a run
    };

    short& at(int i, int j) { return same_[static_cast<std::size_t>(i) * (size_ + 1) + j]; }

    bool is_primitive(int from, int period) {
        for (int p = 1; p <= period / 2; ++p)
            if (period % p == 0 && at(from, from + p) >= period - p) return false;
        return true;
    }

    // choices[i]: the cheapest way to write the first i items of [from, from + length).
    const std::vector<Choice>& solve(int from, int length, int depth) {
        auto [place, fresh] = memo_.try_emplace({from, length, depth});
        if (!fresh) return place->second;
        std::vector<Choice> best(static_cast<std::size_t>(length) + 1);
        best[0].cost = 0;
        for (int i = 0; i < length; ++i) {
            try_runs(best, from, i, length);
            if (depth < deepest_nesting) try_repeats(best, from, i, length, depth);
        }
        return memo_[{from, length, depth}] = std::move(best);
    }

    static void offer(Choice& choice, int cost, int from, int period) {
        if (cost < choice.cost) choice = {cost, from, period};
    }

    void try_runs(std::vector<Choice>& best, int from, int i, int length) {
        const int item = items_[from + i];
        for (int j = i; j < length && items_[from + j] == item; ++j)
            offer(best[j + 1], best[i].cost + run_cost(width_[item], j + 1 - i), i, 0);
    }

    void try_repeats(std::vector<Choice>& best, int from, int i, int length, int depth) {
        for (int period = 2; i + 2 * period <= length; ++period) {
            const int start = from + i;
            const int match = std::min<int>(at(start, start + period), length - i - period);
            if (match < period || !is_primitive(start, period)) continue;
            const int body = solve(start, period, depth + 1)[period].cost;
            for (int times = 2; times * period <= match + period; ++times)
                offer(best[i + times * period], best[i].cost + repeat_cost(body, times), i, period);
        }
    }

    std::vector<Fold> written(int from, int length, int depth) {
        const std::vector<Choice> best = solve(from, length, depth);
        std::vector<Fold> folds;
        for (int end = length; end > 0; end = best[end].from) {
            const Choice& choice = best[end];
            const int start = from + choice.from;
            if (choice.period == 0)
                folds.push_back({items_[start], end - choice.from, {}});
            else
                folds.push_back(
                    {-1, (end - choice.from) / choice.period, written(start, choice.period, depth + 1)});
        }
        std::reverse(folds.begin(), folds.end());
        return folds;
    }

    const std::vector<int>& items_;
    const std::vector<int>& width_;
    int size_;
    std::vector<short> same_;
    std::map<std::tuple<int, int, int>, std::vector<Choice>> memo_;
};

std::vector<Fold> runs(const std::vector<int>& items) {
    std::vector<Fold> folds;
    for (int item : items) {
        if (!folds.empty() && folds.back().item == item)
            ++folds.back().count;
        else
            folds.push_back({item, 1, {}});
    }
    return folds;
}

void put_runs_back(std::vector<Fold>& folds, const std::vector<Fold>& known) {
    std::vector<Fold> back;
    for (Fold& fold : folds) {
        if (fold.item < 0) {
            put_runs_back(fold.body, known);
            back.push_back(std::move(fold));
        } else {
            back.insert(back.end(), static_cast<std::size_t>(fold.count), known[fold.item]);
        }
    }
    folds = std::move(back);
}

// Each different run becomes one item, so that a long round is folded over its runs.
std::vector<Fold> fold_runs(const std::vector<int>& items, const std::vector<int>& width) {
    const std::vector<Fold> plain = runs(items);
    std::map<std::pair<int, int>, int> number_of;
    std::vector<Fold> known;
    std::vector<int> run_items;
    std::vector<int> run_width;
    for (const Fold& run : plain) {
        const auto [place, fresh] =
            number_of.try_emplace({run.item, run.count}, static_cast<int>(known.size()));
        if (fresh) {
            known.push_back(run);
            run_width.push_back(run_cost(width[run.item], run.count) - 2);
        }
        run_items.push_back(place->second);
    }
    const std::size_t period = whole_period(run_items);
    const int times = static_cast<int>(run_items.size() / std::max<std::size_t>(period, 1));
    run_items.resize(period);
    std::vector<Fold> folds;
    if (period <= most_runs_folded)
        folds = Folder(run_items, run_width).fold();
    else
        for (int item : run_items) folds.push_back({item, 1, {}});
    put_runs_back(folds, known);
    if (times > 1) folds = {Fold{-1, times, std::move(folds)}};
    return folds;
}

}  // namespace

std::vector<Fold> fold_repeats(const std::vector<int>& items, const std::vector<int>& width) {
    const std::size_t period = whole_period(items);
    if (items.empty() || period == 1) return runs(items);
    const std::vector<int> body(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(period));
    std::vector<Fold> folds =
        period <= most_items_folded_exactly ? Folder(body, width).fold() : fold_runs(body, width);
    if (period == items.size()) return folds;
    return {Fold{-1, static_cast<int>(items.size() / period), std::move(folds)}};
}

}  // namespace roundwright
