#include "render/scene/qt3d_mesh.h"

#include <cstring>

#include <Qt3DCore/QAttribute>
#include <Qt3DCore/QBuffer>
#include <Qt3DCore/QGeometry>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>

#include "render/raster/corner_vertices.h"

namespace roundwright::render {

namespace {

template <typename T>
QByteArray bytes_of(const std::vector<T>& values) {
    return {reinterpret_cast<const char*>(values.data()), static_cast<qsizetype>(values.size() * sizeof(T))};
}

/// The values of the mesh's vertices, `each` a vertex, for those told apart by their places.
QByteArray spread(const std::vector<float>& values, std::size_t each,
                  const std::vector<std::uint32_t>& source) {
    QByteArray bytes(static_cast<qsizetype>(source.size() * each * sizeof(float)), Qt::Uninitialized);
    auto* out = reinterpret_cast<float*>(bytes.data());
    for (const std::uint32_t i : source) {
        std::memcpy(out, &values[each * i], each * sizeof(float));
        out += each;
    }
    return bytes;
}

}  // namespace

Qt3dMesh::Qt3dMesh(Qt3DRender::QMaterial* material, Qt3DCore::QNode* parent) : QEntity(parent) {
    auto* geometry = new Qt3DCore::QGeometry(this);
    renderer_ = new Qt3DRender::QGeometryRenderer(this);
    position_ = add_column(Qt3DCore::QAttribute::defaultPositionAttributeName(), 3);
    normal_ = add_column(Qt3DCore::QAttribute::defaultNormalAttributeName(), 3);
    colour_ = add_column(Qt3DCore::QAttribute::defaultColorAttributeName(), 3);
    lit_ = add_column(QStringLiteral("vertexLit"), 1);
    place_ = add_column(QStringLiteral("vertexPlace"), 3);
    index_ = add_column({}, 1);
    index_.attribute->setAttributeType(Qt3DCore::QAttribute::IndexAttribute);
    index_.attribute->setVertexBaseType(Qt3DCore::QAttribute::UnsignedInt);
    for (const Column& column : {position_, normal_, colour_, lit_, place_, index_})
        geometry->addAttribute(column.attribute);
    geometry->setBoundingVolumePositionAttribute(position_.attribute);
    renderer_->setGeometry(geometry);
    renderer_->setPrimitiveType(Qt3DRender::QGeometryRenderer::Triangles);
    addComponent(renderer_);
    addComponent(material);
    setEnabled(false);
}

Qt3dMesh::Column Qt3dMesh::add_column(const QString& name, uint components) {
    auto* buffer = new Qt3DCore::QBuffer(this);
    auto* attribute = new Qt3DCore::QAttribute(this);
    attribute->setName(name);
    attribute->setBuffer(buffer);
    attribute->setAttributeType(Qt3DCore::QAttribute::VertexAttribute);
    attribute->setVertexBaseType(Qt3DCore::QAttribute::Float);
    attribute->setVertexSize(components);
    attribute->setByteStride(components * sizeof(float));
    return {buffer, attribute};
}

void Qt3dMesh::set_mesh(const Mesh& mesh, const std::vector<float>& lit) {
    const CornerVertices corners = corner_vertices(mesh);
    source_ = corners.source;
    const auto vertices = static_cast<uint>(source_.size());
    position_.buffer->setData(spread(mesh.positions, 3, source_));
    normal_.buffer->setData(spread(mesh.normals, 3, source_));
    colour_.buffer->setData(spread(mesh.colours, 3, corners.colours));
    place_.buffer->setData(bytes_of(corners.places));
    set_lit(lit);
    index_.buffer->setData(bytes_of(corners.indices));
    for (const Column& column : {position_, normal_, colour_, lit_, place_})
        column.attribute->setCount(vertices);
    index_.attribute->setCount(static_cast<uint>(corners.indices.size()));
    renderer_->setVertexCount(static_cast<int>(corners.indices.size()));
    setEnabled(!corners.indices.empty());
    fit_rim();
}

void Qt3dMesh::add_rim(Qt3DRender::QMaterial* material, int directions) {
    rim_ = new QEntity(this);
    rim_renderer_ = new Qt3DRender::QGeometryRenderer(rim_);
    rim_renderer_->setGeometry(renderer_->geometry());
    rim_renderer_->setPrimitiveType(Qt3DRender::QGeometryRenderer::Triangles);
    rim_renderer_->setInstanceCount(directions);
    rim_->addComponent(rim_renderer_);
    rim_->addComponent(material);
    fit_rim();
}

void Qt3dMesh::show_rim(bool shown) {
    rim_shown_ = shown;
    fit_rim();
}

void Qt3dMesh::fit_rim() {
    if (rim_ == nullptr) return;
    rim_renderer_->setVertexCount(renderer_->vertexCount());
    rim_->setEnabled(rim_shown_ && renderer_->vertexCount() > 0);
}

void Qt3dMesh::set_lit(const std::vector<float>& lit) {
    lit_.buffer->setData(lit.empty() ? bytes_of(std::vector<float>(source_.size(), 0))
                                     : spread(lit, 1, source_));
}

}  // namespace roundwright::render
