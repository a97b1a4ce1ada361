#include "camera/eye.h"

#include <QUrl>

#include "camera/camera_photographer.h"
#include "camera/camera_scanner.h"
#include "camera/video_scanner.h"

namespace burrow {

class EyeLibrary final : public QObject, public EyeMaker {
    Q_OBJECT
    Q_PLUGIN_METADATA(IID "burrowbook.EyeMaker/1")
    Q_INTERFACES(burrow::EyeMaker)

public:
    Eye make(const QString& film) override {
        Eye eye;
        if (film.isEmpty()) {
            auto camera = std::make_unique<CameraScanner>();
            eye.photographer = std::make_unique<CameraPhotographer>(*camera);
            eye.scanner = std::move(camera);
        } else {
            eye.scanner = std::make_unique<VideoScanner>(QUrl::fromLocalFile(film));
            eye.photographer = std::make_unique<FramePhotographer>(*eye.scanner);
        }
        return eye;
    }
};

}  // namespace burrow

#include "eye.moc"
