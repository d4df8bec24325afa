#include "render/scene/qt3d_scene_view.h"

#include <array>

#include <QPointer>
#include <QResizeEvent>
#include <Qt3DCore/QEntity>
#include <Qt3DExtras/Qt3DWindow>
#include <Qt3DRender/QBlendEquation>
#include <Qt3DRender/QBlendEquationArguments>
#include <Qt3DRender/QCamera>
#include <Qt3DRender/QCameraLens>
#include <Qt3DRender/QCameraSelector>
#include <Qt3DRender/QClearBuffers>
#include <Qt3DRender/QCullFace>
#include <Qt3DRender/QDepthTest>
#include <Qt3DRender/QEffect>
#include <Qt3DRender/QFilterKey>
#include <Qt3DRender/QGraphicsApiFilter>
#include <Qt3DRender/QMaterial>
#include <Qt3DRender/QMultiSampleAntiAliasing>
#include <Qt3DRender/QNoDepthMask>
#include <Qt3DRender/QParameter>
#include <Qt3DRender/QRenderPass>
#include <Qt3DRender/QRenderPassFilter>
#include <Qt3DRender/QRenderSettings>
#include <Qt3DRender/QRenderSurfaceSelector>
#include <Qt3DRender/QShaderProgram>
#include <Qt3DRender/QTechnique>
#include <Qt3DRender/QTechniqueFilter>
#include <Qt3DRender/QTexture>
#include <Qt3DRender/QViewport>

#include "render/raster/rim.h"
#include "render/raster/scene_frame.h"
#include "render/raster/shading.h"
#include "render/scene/gl_probe.h"
#include "render/scene/qt3d_fabric_texture.h"
#include "render/scene/qt3d_mesh.h"

namespace roundwright::render {

namespace {

using namespace Qt3DRender;

QVector3D to_qt(const Vec3& v) {
    return {static_cast<float>(v.x()), static_cast<float>(v.y()), static_cast<float>(v.z())};
}

QFilterKey* filter_key(const QString& name, const QString& value, Qt3DCore::QNode* parent) {
    auto* filter = new QFilterKey(parent);
    filter->setName(name);
    filter->setValue(value);
    return filter;
}

/// The order of drawing: the rim, of which the solid things leave what lies around them; then the comparison
/// surface behind them, then before them.
enum Stage { rim_stage, solid_stage, ghost_behind_stage, ghost_before_stage };
const std::array<QString, 4>& stages() {
    static const std::array<QString, 4> names = {QStringLiteral("rim"), QStringLiteral("solid"),
                                                 QStringLiteral("ghost_behind"),
                                                 QStringLiteral("ghost_before")};
    return names;
}

QRenderPass* make_pass(const QString& stage, const std::string& fragment_shader, Qt3DCore::QNode* parent,
                       const std::string& vertex_shader = vertex_shader_text()) {
    auto* pass = new QRenderPass(parent);
    auto* program = new QShaderProgram(pass);
    program->setVertexShaderCode(QByteArray::fromStdString(vertex_shader));
    program->setFragmentShaderCode(QByteArray::fromStdString(fragment_shader));
    pass->setShaderProgram(program);
    pass->addFilterKey(filter_key(QStringLiteral("stage"), stage, pass));
    pass->addRenderState(new QMultiSampleAntiAliasing(pass));
    return pass;
}

void add_depth_and_cull(QRenderPass* pass, QDepthTest::DepthFunction depth, QCullFace::CullingMode cull) {
    auto* test = new QDepthTest(pass);
    test->setDepthFunction(depth);
    auto* face = new QCullFace(pass);
    face->setMode(cull);
    pass->addRenderState(test);
    pass->addRenderState(face);
}

void add_blending(QRenderPass* pass) {
    auto* equation = new QBlendEquation(pass);
    equation->setBlendFunction(QBlendEquation::Add);
    auto* factors = new QBlendEquationArguments(pass);
    factors->setSourceRgb(QBlendEquationArguments::SourceAlpha);
    factors->setDestinationRgb(QBlendEquationArguments::OneMinusSourceAlpha);
    factors->setSourceAlpha(QBlendEquationArguments::Zero);
    factors->setDestinationAlpha(QBlendEquationArguments::One);
    pass->addRenderState(equation);
    pass->addRenderState(factors);
}

QEffect* make_effect(const std::vector<QRenderPass*>& passes, Qt3DCore::QNode* parent) {
    auto* effect = new QEffect(parent);
    auto* technique = new QTechnique(effect);
    technique->graphicsApiFilter()->setApi(QGraphicsApiFilter::OpenGL);
    technique->graphicsApiFilter()->setProfile(QGraphicsApiFilter::CoreProfile);
    technique->graphicsApiFilter()->setMajorVersion(3);
    technique->graphicsApiFilter()->setMinorVersion(2);
    technique->addFilterKey(
        filter_key(QStringLiteral("renderingStyle"), QStringLiteral("forward"), technique));
    for (QRenderPass* pass : passes) technique->addRenderPass(pass);
    effect->addTechnique(technique);
    return effect;
}

QEffect* make_solid_effect(Qt3DCore::QNode* parent) {
    QRenderPass* pass = make_pass(stages()[solid_stage], fragment_shader_text(), parent);
    add_depth_and_cull(pass, QDepthTest::Less, QCullFace::NoCulling);
    return make_effect({pass}, parent);
}

QEffect* make_rim_effect(Qt3DCore::QNode* parent) {
    QRenderPass* pass =
        make_pass(stages()[rim_stage], rim_fragment_shader_text(), parent, rim_vertex_shader_text());
    add_depth_and_cull(pass, QDepthTest::Always, QCullFace::NoCulling);
    pass->addRenderState(new QNoDepthMask(pass));
    return make_effect({pass}, parent);
}

QEffect* make_ghost_effect(Qt3DCore::QNode* parent) {
    QRenderPass* behind = make_pass(stages()[ghost_behind_stage], ghost_fragment_shader_text(true), parent);
    add_depth_and_cull(behind, QDepthTest::Greater, QCullFace::Back);
    behind->addRenderState(new QNoDepthMask(behind));
    add_blending(behind);
    QRenderPass* before = make_pass(stages()[ghost_before_stage], ghost_fragment_shader_text(false), parent);
    add_depth_and_cull(before, QDepthTest::Less, QCullFace::Back);
    add_blending(before);
    return make_effect({behind, before}, parent);
}

/// The uniforms of one finish.
struct YarnMaterial {
    QMaterial* material;
    QParameter* stitch_mm;
    QParameter* pixel_angle;
    QParameter* any_lit;
};

QParameter* add_parameter(QMaterial* material, const QString& name, float value) {
    auto* parameter = new QParameter(name, value, material);
    material->addParameter(parameter);
    return parameter;
}

YarnMaterial make_material(QEffect* effect, Finish finish, QAbstractTexture* fabric,
                           Qt3DCore::QNode* parent) {
    auto* material = new QMaterial(parent);
    material->setEffect(effect);
    const FinishValues values = values_of(finish);
    add_parameter(material, QStringLiteral("wrap"), values.wrap);
    add_parameter(material, QStringLiteral("fuzz"), values.fuzz);
    add_parameter(material, QStringLiteral("broad"), values.broad);
    add_parameter(material, QStringLiteral("sharp"), values.sharp);
    add_parameter(material, QStringLiteral("twoSided"), values.two_sided ? 1.0F : 0.0F);
    material->addParameter(new QParameter(QStringLiteral("fabric"), fabric, material));
    return {material, add_parameter(material, QStringLiteral("stitchMm"), 5),
            add_parameter(material, QStringLiteral("pixelAngle"), 0.001F),
            add_parameter(material, QStringLiteral("anyLit"), 0)};
}

}  // namespace

struct Qt3dSceneView::Drawing {
    QPointer<SceneFrame> frame;
    QPointer<QWidget> container;
    QPointer<Qt3DExtras::Qt3DWindow> window;
    Qt3DCore::QEntity* root = nullptr;
    QClearBuffers* clear = nullptr;
    std::array<YarnMaterial, 4> materials{};  ///< by Finish
    QParameter* ghost_tint = nullptr;
    QMaterial* rim = nullptr;
    QParameter* rim_tint = nullptr;
    QParameter* rim_step = nullptr;
    Qt3dMesh* surface = nullptr;
    Qt3dMesh* pile = nullptr;
    Qt3dMesh* ghost = nullptr;
    std::vector<Qt3dMesh*> parts;  ///< below `root`, as all of the scene

    void make_frame_graph();
    void make_scene();
    [[nodiscard]] Qt3dMesh* make_mesh(Finish finish) const;
};

void Qt3dSceneView::Drawing::make_frame_graph() {
    auto* target = new QRenderSurfaceSelector;
    target->setSurface(window);
    auto* viewport = new QViewport(target);
    auto* technique = new QTechniqueFilter(viewport);
    technique->addMatch(filter_key(QStringLiteral("renderingStyle"), QStringLiteral("forward"), technique));
    auto* camera = new QCameraSelector(technique);
    camera->setCamera(window->camera());
    clear = new QClearBuffers(camera);
    clear->setBuffers(QClearBuffers::ColorDepthBuffer);
    Qt3DCore::QNode* under = clear;
    for (const QString& stage : stages()) {
        auto* filter = new QRenderPassFilter(under);
        filter->addMatch(filter_key(QStringLiteral("stage"), stage, filter));
        under = camera;
    }
    window->setActiveFrameGraph(target);
    window->renderSettings()->setRenderPolicy(QRenderSettings::OnDemand);
}

void Qt3dSceneView::Drawing::make_scene() {
    root = new Qt3DCore::QEntity;
    QEffect* effect = make_solid_effect(root);
    QAbstractTexture* fabric = make_fabric_texture(root);
    for (const Finish finish : {Finish::yarn, Finish::pile, Finish::felt, Finish::glossy}) {
        materials[static_cast<std::size_t>(finish)] = make_material(effect, finish, fabric, root);
    }
    auto* ghost_material = new QMaterial(root);
    ghost_material->setEffect(make_ghost_effect(root));
    ghost_tint = new QParameter(QStringLiteral("ghostColour"), QVector3D(), ghost_material);
    ghost_material->addParameter(ghost_tint);
    rim = new QMaterial(root);
    rim->setEffect(make_rim_effect(root));
    rim_tint = new QParameter(QStringLiteral("rimColour"), QVector3D(), rim);
    rim_step = new QParameter(QStringLiteral("rimStep"), QVector2D(), rim);
    rim->addParameter(rim_tint);
    rim->addParameter(rim_step);
    surface = make_mesh(Finish::yarn);
    pile = make_mesh(Finish::pile);
    ghost = new Qt3dMesh(ghost_material, root);
    window->setRootEntity(root);
}

/// With a rim, which is not shown yet.
Qt3dMesh* Qt3dSceneView::Drawing::make_mesh(Finish finish) const {
    auto* mesh = new Qt3dMesh(materials[static_cast<std::size_t>(finish)].material, root);
    mesh->add_rim(rim, rim_directions);
    return mesh;
}

Qt3dSceneView::Qt3dSceneView(QWidget* parent)
    : CameraSceneView(parent), drawing_(std::make_unique<Drawing>()) {
    qputenv("QT3D_RENDERER", "opengl");
    drawing_->window = new Qt3DExtras::Qt3DWindow;
    drawing_->make_frame_graph();
    drawing_->make_scene();
    drawing_->container = QWidget::createWindowContainer(drawing_->window);
    drawing_->container->setFocusPolicy(Qt::StrongFocus);
    drawing_->container->setAccessibleName(view_name());
    drawing_->container->setAccessibleDescription(view_description());
    drawing_->frame = new SceneFrame(drawing_->container, parent);
    drawing_->window->installEventFilter(&input());
    drawing_->window->installEventFilter(this);
    connect(&input(), &ViewInput::tab_pressed, this, &Qt3dSceneView::leave_by_tab);
    set_background(drawing_->frame->palette().color(QPalette::Window));
}

Qt3dSceneView::~Qt3dSceneView() { delete drawing_->frame; }

QWidget* Qt3dSceneView::widget() { return drawing_->frame; }

// Measured: from 60,000 triangles on, a software OpenGL falls below about fifteen pictures a second.
std::size_t Qt3dSceneView::comfortable_triangles() const {
    return opengl_found().by_processor ? 60'000 : 200'000;
}

bool Qt3dSceneView::eventFilter(QObject* watched, QEvent* event) {
    if (watched != drawing_->window || !drawing_->frame) return CameraSceneView::eventFilter(watched, event);
    switch (event->type()) {
        case QEvent::Resize: {
            const QSize size = static_cast<QResizeEvent*>(event)->size();
            set_viewport(size.width(), size.height());
            break;
        }
        case QEvent::MouseButtonPress:
            drawing_->window->requestActivate();
            break;
        case QEvent::FocusIn:
            drawing_->frame->set_ring(true);
            break;
        case QEvent::FocusOut:
            drawing_->frame->set_ring(false);
            break;
        default:
            break;
    }
    return false;
}

// While the native window has the focus no widget has it, so the next one is looked up from the container.
void Qt3dSceneView::leave_by_tab(bool forward) {
    if (!drawing_->container) return;
    QWidget* start = drawing_->container;
    QWidget* at = start;
    do {
        at = forward ? at->nextInFocusChain() : at->previousInFocusChain();
        const bool takes =
            (at->focusPolicy() & Qt::TabFocus) != 0 && at->isVisible() && at->isEnabled() && at != start;
        if (!takes || at->focusProxy()) continue;
        at->activateWindow();
        at->setFocus(forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
        return;
    } while (at != start);
}

void Qt3dSceneView::show_surface() {
    if (!drawing_->window) return;
    for (const YarnMaterial& material : drawing_->materials)
        material.stitch_mm->setValue(static_cast<float>(stitch_mm()));
    drawing_->surface->set_mesh(surface().mesh, vertex_lit());
    drawing_->pile->set_mesh(pile(), pile_lit());
}

void Qt3dSceneView::show_lit() {
    if (!drawing_->window) return;
    for (const Finish finish : {Finish::yarn, Finish::pile})
        drawing_->materials[static_cast<std::size_t>(finish)].any_lit->setValue(any_lit() ? 1.0F : 0.0F);
    drawing_->surface->set_lit(vertex_lit());
    drawing_->pile->set_lit(pile_lit());
}

void Qt3dSceneView::show_parts() {
    if (!drawing_->window) return;
    for (Qt3dMesh* part : drawing_->parts) delete part;
    drawing_->parts.clear();
    for (const ScenePart& part : parts()) {
        drawing_->parts.push_back(drawing_->make_mesh(part.finish));
        drawing_->parts.back()->set_mesh(part.mesh, {});
        drawing_->parts.back()->show_rim(rim().has_value());
    }
}

void Qt3dSceneView::show_ghost() {
    if (drawing_->window) drawing_->ghost->set_mesh(ghost() != nullptr ? *ghost() : Mesh{}, {});
}

void Qt3dSceneView::show_background() {
    if (!drawing_->window) return;
    QColor opaque = background();
    opaque.setAlpha(255);
    drawing_->clear->setClearColor(opaque);
    const Eigen::Vector3f tint = ghost_colour(opaque);
    drawing_->ghost_tint->setValue(QVector3D(to_srgb(tint.x()), to_srgb(tint.y()), to_srgb(tint.z())));
    drawing_->frame->set_fill(opaque);
    show_rim();
}

void Qt3dSceneView::show_rim() {
    if (rim()) drawing_->rim_tint->setValue(QVector3D(rim()->redF(), rim()->greenF(), rim()->blueF()));
    drawing_->surface->show_rim(rim().has_value());
    drawing_->pile->show_rim(rim().has_value());
    for (Qt3dMesh* part : drawing_->parts) part->show_rim(rim().has_value());
}

void Qt3dSceneView::show_camera() {
    if (!drawing_->window) return;
    const Camera& from = camera();
    const ViewAxes axes = from.axes();
    QCamera* camera = drawing_->window->camera();
    camera->lens()->setPerspectiveProjection(
        static_cast<float>(Camera::field_of_view_degrees),
        static_cast<float>(from.viewport_width() / from.viewport_height()),
        static_cast<float>(from.near_plane()), static_cast<float>(from.far_plane()));
    camera->setUpVector(to_qt(axes.up));
    camera->setPosition(to_qt(from.eye()));
    camera->setViewCenter(to_qt(from.eye() - from.distance() * axes.back));
    constexpr double step = 2 * rim_width_px;  // the picture is two units each way
    drawing_->rim_step->setValue(QVector2D(static_cast<float>(step / from.viewport_width()),
                                           static_cast<float>(step / from.viewport_height())));
    const double pixels = from.viewport_height() * drawing_->window->devicePixelRatio();
    const auto angle = static_cast<float>(2 * from.half_height() / pixels);
    for (const YarnMaterial& material : drawing_->materials) material.pixel_angle->setValue(angle);
}

}  // namespace roundwright::render
