// A photo that can be looked at closely, and that is kind to eyes used to the dark.
#pragma once

#include <QImage>
#include <QUrl>

#include "ports/zoom_view.h"

namespace burrow {

/// Reads the picture without holding the interface up; shows nothing until it is read.
class PhotoView : public burrow::ZoomView {
    Q_OBJECT
    QML_ELEMENT
    /// A file, or the picture itself as a "data:" address.
    Q_PROPERTY(QUrl source READ source WRITE setSource NOTIFY sourceChanged FINAL)
    /// The longest side it is read at, in pixels; 0 for all there is.
    Q_PROPERTY(int longestSide READ longestSide WRITE setLongestSide NOTIFY sourceChanged FINAL)
    /// Darkened, and with less blue than red.
    Q_PROPERTY(bool warm READ isWarm WRITE setWarm NOTIFY warmChanged FINAL)
    /// Its greys spread over the whole range, for what is hard to see.
    Q_PROPERTY(bool contrast READ hasContrast WRITE setContrast NOTIFY contrastChanged FINAL)
    /// There is no such picture, or it can't be read.
    Q_PROPERTY(bool missing READ isMissing NOTIFY pictureChanged FINAL)
    Q_PROPERTY(bool ready READ isReady NOTIFY pictureChanged FINAL)

public:
    explicit PhotoView(QQuickItem* parent = nullptr) : ZoomView(parent) {}

    [[nodiscard]] QUrl source() const { return source_; }
    void setSource(const QUrl& source);
    [[nodiscard]] int longestSide() const { return longestSide_; }
    void setLongestSide(int pixels);
    [[nodiscard]] bool isWarm() const { return warm_; }
    void setWarm(bool warm);
    [[nodiscard]] bool hasContrast() const { return contrast_; }
    void setContrast(bool contrast);
    [[nodiscard]] bool isMissing() const { return isRead_ && picture_.isNull(); }
    [[nodiscard]] bool isReady() const { return !picture_.isNull(); }

signals:
    void sourceChanged();
    void warmChanged();
    void contrastChanged();
    void pictureChanged();

protected:
    void componentComplete() override;

private:
    void read();
    void show(const QUrl& source, const QImage& picture);
    [[nodiscard]] QSizeF shape() const override { return picture_.size(); }
    void draw(QPainter& painter, const QRectF& rect) override;

    QUrl source_;
    int longestSide_ = 0;
    bool warm_ = false;
    bool contrast_ = false;
    QImage picture_;
    QImage contrasted_;  // made when it is first asked for
    bool isRead_ = false;
};

}  // namespace burrow
