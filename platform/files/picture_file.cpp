#include "files/picture_file.h"

#include <QBuffer>
#include <QImageReader>

namespace burrow {

Result<QImage> decodePicture(std::span<const std::uint8_t> bytes, bool upright,
                             std::optional<int> side) {
    BURROW_TRY(const auto info, pictures::inspect(bytes));
    // Qt's own limit is 128 MB; inspect() has already kept the picture to a size we can hold.
    constexpr int allocationLimitMb = 512;
    QImageReader::setAllocationLimit(allocationLimitMb);
    auto data = QByteArray::fromRawData(reinterpret_cast<const char*>(bytes.data()),
                                        static_cast<qsizetype>(bytes.size()));
    QBuffer buffer(&data);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer, info.format == pictures::Format::jpeg ? "jpeg" : "png");
    reader.setAutoTransform(upright);
    const QSize size(info.width, info.height);
    if (side && std::max(size.width(), size.height()) > *side) {
        reader.setScaledSize(size.scaled(*side, *side, Qt::KeepAspectRatio).expandedTo({1, 1}));
    }
    auto image = reader.read();
    if (image.isNull()) return fail(Trouble::badInput, {"picture.damaged"});
    return image;
}

}  // namespace burrow
