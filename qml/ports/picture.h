// A picture in memory as pages of the app hand it around.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QImage>
#include <QObject>

namespace burrow {

/// Cheap to copy; empty for none.
class Picture {
    Q_GADGET
    QML_VALUE_TYPE(picture)
    Q_PROPERTY(bool empty READ isEmpty FINAL)

public:
    Picture() = default;
    explicit Picture(QImage image) : image_(std::move(image)) {}

    [[nodiscard]] bool isEmpty() const { return image_.isNull(); }
    [[nodiscard]] const QImage& image() const { return image_; }

    /// Whether it is the same picture, not one that looks like it.
    friend bool operator==(const Picture& a, const Picture& b) {
        return a.image_.cacheKey() == b.image_.cacheKey();
    }

private:
    QImage image_;
};

}  // namespace burrow
