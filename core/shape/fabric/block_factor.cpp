#include "core/shape/fabric/block_factor.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <utility>

namespace roundwright {

namespace {

std::size_t index(std::int32_t i) { return static_cast<std::size_t>(i); }

}  // namespace

BlockFactor::BlockFactor(std::size_t nodes, std::span<const BlockMatrix::Pair> pairs,
                         std::vector<DissectionPart> parts)
    : fronts_(parts.size()), left_(parts.size()), place_(nodes, 0), nodes_(nodes) {
    for (std::size_t f = 0; f < parts.size(); ++f) {
        fronts_[f].nodes = std::move(parts[f].nodes);
        fronts_[f].own = static_cast<std::int32_t>(fronts_[f].nodes.size());
        fronts_[f].children = parts[f].children;
    }
    take_nodes(nodes, pairs);
    take_rows();
}

// A front has its own nodes, the later ones that they touch, and what its children hand on.
void BlockFactor::take_nodes(std::size_t nodes, std::span<const BlockMatrix::Pair> pairs) {
    std::vector<std::int32_t> front_of(nodes);
    std::vector<std::int32_t> rank(nodes);
    std::int32_t next = 0;
    for (std::size_t f = 0; f < fronts_.size(); ++f)
        for (const std::int32_t node : fronts_[f].nodes) {
            front_of[index(node)] = static_cast<std::int32_t>(f);
            rank[index(node)] = next++;
        }
    for (std::size_t k = 0; k < pairs.size(); ++k) {
        const auto [a, b] = pairs[k];
        fronts_[index(std::min(front_of[index(a)], front_of[index(b)]))].pairs.push_back(
            static_cast<std::int32_t>(k));
    }
    const auto is_later = [&](std::int32_t node, std::size_t f) { return index(front_of[index(node)]) > f; };
    for (std::size_t f = 0; f < fronts_.size(); ++f) {
        Front& front = fronts_[f];
        std::vector<std::int32_t> touched;
        for (const std::int32_t k : front.pairs)
            for (const std::int32_t node : pairs[index(k)])
                if (is_later(node, f)) touched.push_back(node);
        for (const std::int32_t child : front.children) {
            if (child == DissectionPart::none) continue;
            const Front& below = fronts_[index(child)];
            for (std::size_t i = index(below.own); i < below.nodes.size(); ++i)
                if (is_later(below.nodes[i], f)) touched.push_back(below.nodes[i]);
        }
        std::ranges::sort(touched, {}, [&](std::int32_t node) { return rank[index(node)]; });
        touched.erase(std::unique(touched.begin(), touched.end()), touched.end());
        front.nodes.insert(front.nodes.end(), touched.begin(), touched.end());
    }
}

void BlockFactor::take_rows() {
    for (const Front& front : fronts_) {
        for (std::size_t i = 0; i < front.nodes.size(); ++i)
            place_[index(front.nodes[i])] = static_cast<std::int32_t>(i);
        for (const std::int32_t child : front.children) {
            if (child == DissectionPart::none) continue;
            Front& below = fronts_[index(child)];
            for (std::size_t i = index(below.own); i < below.nodes.size(); ++i)
                below.rows.push_back(place_[index(below.nodes[i])]);
        }
    }
}

void BlockFactor::assemble(const Front& front, const BlockMatrix& matrix, Real shift, Matrix& dense) {
    for (std::size_t i = 0; i < front.nodes.size(); ++i)
        place_[index(front.nodes[i])] = static_cast<std::int32_t>(i);
    for (std::int32_t i = 0; i < front.own; ++i) {
        dense.block<3, 3>(3 * i, 3 * i) += matrix.diagonal(index(front.nodes[index(i)])).cast<Real>();
        dense.diagonal().segment<3>(3 * i).array() += shift;
    }
    for (const std::int32_t k : front.pairs) {
        const auto [a, b] = matrix.pairs()[index(k)];
        const std::int32_t row = place_[index(a)];
        const std::int32_t column = place_[index(b)];
        const auto block = matrix.beside(index(k)).cast<Real>();
        if (row > column)
            dense.block<3, 3>(3 * row, 3 * column) += block;
        else
            dense.block<3, 3>(3 * column, 3 * row) += block.transpose();
    }
}

/// The rows that a child hands on are in the order of elimination, as the parent's are: what is below the
/// diagonal stays below it.
void BlockFactor::add_children(const Front& front, Matrix& dense) {
    for (const std::int32_t child : front.children) {
        if (child == DissectionPart::none) continue;
        const std::vector<std::int32_t>& rows = fronts_[index(child)].rows;
        const Matrix& left = left_[index(child)];
        for (std::size_t c = 0; c < rows.size(); ++c) {
            for (std::size_t r = c; r < rows.size(); ++r) {
                const auto from = static_cast<Eigen::Index>(3 * r);
                const auto column = static_cast<Eigen::Index>(3 * c);
                dense.block<3, 3>(3 * rows[r], 3 * rows[c]) += left.block<3, 3>(from, column);
            }
        }
        left_[index(child)].resize(0, 0);
    }
}

/// Leaves L in the first columns, and what is left of the others in theirs.
bool BlockFactor::eliminate(Matrix& dense, Eigen::Index own) {
    const Eigen::Index rest = dense.rows() - own;
    Eigen::Ref<Matrix> corner = dense.topLeftCorner(own, own);
    const Eigen::LLT<Eigen::Ref<Matrix>> cholesky(corner);
    if (cholesky.info() != Eigen::Success) return false;
    if (rest == 0) return true;
    auto below = dense.bottomLeftCorner(rest, own);
    corner.triangularView<Eigen::Lower>().transpose().solveInPlace<Eigen::OnTheRight>(below);
    dense.bottomRightCorner(rest, rest).selfadjointView<Eigen::Lower>().rankUpdate(below, Real(-1));
    return true;
}

bool BlockFactor::factor(const BlockMatrix& matrix, double shift) {
    Matrix dense;
    for (std::size_t f = 0; f < fronts_.size(); ++f) {
        Front& front = fronts_[f];
        const auto size = 3 * static_cast<Eigen::Index>(front.nodes.size());
        const Eigen::Index own = 3 * front.own;
        const Eigen::Index rest = size - own;
        dense.setZero(size, size);
        assemble(front, matrix, static_cast<Real>(shift), dense);
        add_children(front, dense);
        if (own > 0 && !eliminate(dense, own)) return false;
        if (rest > 0) left_[f] = dense.bottomRightCorner(rest, rest);
        front.lower = dense.leftCols(own);
    }
    return true;
}

void BlockFactor::solve(const double* right, double* out) const {
    using Vector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;
    using Mapped = Eigen::Map<const Eigen::VectorXd>;
    Vector x = Mapped(right, 3 * static_cast<Eigen::Index>(nodes_)).cast<Real>();
    Vector own;
    Vector later;
    const auto gather = [&](const Front& front) {
        own.resize(3 * front.own);
        later.resize(3 * static_cast<Eigen::Index>(front.nodes.size()) - own.size());
        for (std::int32_t i = 0; i < front.own; ++i)
            own.segment<3>(3 * i) = x.segment<3>(3 * front.nodes[index(i)]);
    };
    const auto scatter = [&](const Front& front) {
        for (std::int32_t i = 0; i < front.own; ++i)
            x.segment<3>(3 * front.nodes[index(i)]) = own.segment<3>(3 * i);
    };
    for (const Front& front : fronts_) {
        gather(front);
        front.lower.topRows(own.size()).template triangularView<Eigen::Lower>().solveInPlace(own);
        scatter(front);
        later.noalias() = front.lower.bottomRows(later.size()) * own;
        for (std::size_t i = index(front.own); i < front.nodes.size(); ++i)
            x.segment<3>(3 * front.nodes[i]) -=
                later.segment<3>(3 * static_cast<Eigen::Index>(i - index(front.own)));
    }
    for (auto it = fronts_.rbegin(); it != fronts_.rend(); ++it) {
        const Front& front = *it;
        gather(front);
        for (std::size_t i = index(front.own); i < front.nodes.size(); ++i)
            later.segment<3>(3 * static_cast<Eigen::Index>(i - index(front.own))) =
                x.segment<3>(3 * front.nodes[i]);
        own.noalias() -= front.lower.bottomRows(later.size()).transpose() * later;
        front.lower.topRows(own.size()).transpose().template triangularView<Eigen::Upper>().solveInPlace(own);
        scatter(front);
    }
    Eigen::Map<Eigen::VectorXd>(out, x.size()) = x.cast<double>();
}

std::size_t BlockFactor::entries() const {
    std::size_t sum = 0;
    for (const Front& front : fronts_) {
        const std::size_t own = 3 * index(front.own);
        sum += own * 3 * front.nodes.size() - own * (own - 1) / 2;
    }
    return sum;
}

}  // namespace roundwright
