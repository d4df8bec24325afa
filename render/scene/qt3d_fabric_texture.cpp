#include "render/scene/qt3d_fabric_texture.h"

#include <Qt3DRender/QAbstractTextureImage>
#include <Qt3DRender/QTexture>
#include <Qt3DRender/QTextureImageData>
#include <Qt3DRender/QTextureImageDataGenerator>

#include "render/raster/fabric_picture.h"

namespace roundwright::render {

namespace {

using namespace Qt3DRender;

constexpr int texture_width = FacePicture::width * static_cast<int>(stitch_faces);

class FabricGenerator : public QTextureImageDataGenerator {
  public:
    QTextureImageDataPtr operator()() override {
        const auto texels = texels_of_all_faces();
        auto data = QTextureImageDataPtr::create();
        data->setWidth(texture_width);
        data->setHeight(FacePicture::height);
        data->setDepth(1);
        data->setFaces(1);
        data->setLayers(1);
        data->setMipLevels(1);
        data->setTarget(QOpenGLTexture::Target2D);
        data->setFormat(QOpenGLTexture::RGBA8_UNorm);
        data->setPixelFormat(QOpenGLTexture::RGBA);
        data->setPixelType(QOpenGLTexture::UInt8);
        data->setData(
            QByteArray(reinterpret_cast<const char*>(texels.data()), static_cast<qsizetype>(texels.size())),
            4, false);
        return data;
    }
    bool operator==(const QTextureImageDataGenerator& other) const override {
        return functor_cast<FabricGenerator>(&other) != nullptr;
    }
    QT3D_FUNCTOR(FabricGenerator)
};

class FabricImage : public QAbstractTextureImage {
  public:
    using QAbstractTextureImage::QAbstractTextureImage;

  protected:
    QTextureImageDataGeneratorPtr dataGenerator() const override {
        return QTextureImageDataGeneratorPtr(new FabricGenerator);
    }
};

}  // namespace

QAbstractTexture* make_fabric_texture(Qt3DCore::QNode* parent) {
    auto* texture = new QTexture2D(parent);
    texture->setFormat(QAbstractTexture::RGBA8_UNorm);
    texture->setSize(texture_width, FacePicture::height);
    texture->setGenerateMipMaps(false);
    texture->setMinificationFilter(QAbstractTexture::Nearest);
    texture->setMagnificationFilter(QAbstractTexture::Nearest);
    texture->addTextureImage(new FabricImage(texture));
    return texture;
}

}  // namespace roundwright::render
