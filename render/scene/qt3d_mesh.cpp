#include "render/scene/qt3d_mesh.h"

#include <cstring>

#include <Qt3DCore/QAttribute>
#include <Qt3DCore/QBuffer>
#include <Qt3DCore/QGeometry>
#include <Qt3DRender/QGeometryRenderer>
#include <Qt3DRender/QMaterial>

namespace roundwright::render {

namespace {

template <typename T>
QByteArray bytes_of(const std::vector<T>& values) {
    return {reinterpret_cast<const char*>(values.data()), static_cast<qsizetype>(values.size() * sizeof(T))};
}

QByteArray colour_bytes(const Mesh& mesh, const std::vector<float>& openness) {
    const std::size_t vertices = mesh.vertex_count();
    QByteArray bytes(static_cast<qsizetype>(vertices * 4 * sizeof(float)), Qt::Uninitialized);
    auto* out = reinterpret_cast<float*>(bytes.data());
    for (std::size_t i = 0; i < vertices; ++i) {
        std::memcpy(out + 4 * i, &mesh.colours[3 * i], 3 * sizeof(float));
        out[4 * i + 3] = i < openness.size() ? openness[i] : 1;
    }
    return bytes;
}

}  // namespace

Qt3dMesh::Qt3dMesh(Qt3DRender::QMaterial* material, Qt3DCore::QNode* parent) : QEntity(parent) {
    auto* geometry = new Qt3DCore::QGeometry(this);
    renderer_ = new Qt3DRender::QGeometryRenderer(this);
    position_ = add_column(Qt3DCore::QAttribute::defaultPositionAttributeName(), 3);
    normal_ = add_column(Qt3DCore::QAttribute::defaultNormalAttributeName(), 3);
    colour_ = add_column(Qt3DCore::QAttribute::defaultColorAttributeName(), 4);
    lit_ = add_column(QStringLiteral("vertexLit"), 1);
    index_ = add_column({}, 1);
    index_.attribute->setAttributeType(Qt3DCore::QAttribute::IndexAttribute);
    index_.attribute->setVertexBaseType(Qt3DCore::QAttribute::UnsignedInt);
    for (const Column& column : {position_, normal_, colour_, lit_, index_})
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

void Qt3dMesh::set_mesh(const Mesh& mesh, const std::vector<float>& openness, const std::vector<float>& lit) {
    const auto vertices = static_cast<uint>(mesh.vertex_count());
    position_.buffer->setData(bytes_of(mesh.positions));
    normal_.buffer->setData(bytes_of(mesh.normals));
    colour_.buffer->setData(colour_bytes(mesh, openness));
    set_lit(lit, mesh.vertex_count());
    index_.buffer->setData(bytes_of(mesh.indices));
    for (const Column& column : {position_, normal_, colour_, lit_}) column.attribute->setCount(vertices);
    index_.attribute->setCount(static_cast<uint>(mesh.indices.size()));
    renderer_->setVertexCount(static_cast<int>(mesh.indices.size()));
    setEnabled(!mesh.indices.empty());
}

void Qt3dMesh::set_lit(const std::vector<float>& lit, std::size_t vertices) {
    lit_.buffer->setData(bytes_of(lit.size() == vertices ? lit : std::vector<float>(vertices, 0)));
}

}  // namespace roundwright::render
