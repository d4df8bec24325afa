#include "core/mesh/vertex_normals.h"

#include <cmath>

namespace roundwright {

void set_vertex_normals(Mesh& mesh) {
    mesh.normals.assign(mesh.positions.size(), 0);
    const float* p = mesh.positions.data();
    float* n = mesh.normals.data();
    for (std::size_t t = 0; t + 2 < mesh.indices.size(); t += 3) {
        const std::size_t a = 3u * mesh.indices[t], b = 3u * mesh.indices[t + 1],
                          c = 3u * mesh.indices[t + 2];
        const float ux = p[b] - p[a], uy = p[b + 1] - p[a + 1], uz = p[b + 2] - p[a + 2];
        const float vx = p[c] - p[a], vy = p[c + 1] - p[a + 1], vz = p[c + 2] - p[a + 2];
        const float x = uy * vz - uz * vy, y = uz * vx - ux * vz, z = ux * vy - uy * vx;
        for (const std::size_t v : {a, b, c}) {
            n[v] += x;
            n[v + 1] += y;
            n[v + 2] += z;
        }
    }
    for (std::size_t v = 0; v < mesh.normals.size(); v += 3) {
        const float length = std::sqrt(n[v] * n[v] + n[v + 1] * n[v + 1] + n[v + 2] * n[v + 2]);
        if (length > 0) {
            n[v] /= length;
            n[v + 1] /= length;
            n[v + 2] /= length;
        } else {
            n[v + 1] = 1;
        }
    }
}

}  // namespace roundwright
