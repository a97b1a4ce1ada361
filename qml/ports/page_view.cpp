#include "ports/page_view.h"

#include <QPainter>

namespace burrow {

PageView::PageView(QQuickItem* parent) : ZoomView(parent) { setAntialiasing(true); }

void PageView::setPrinter(Printer* printer) {
    if (printer_ == printer) return;
    printer_ = printer;
    update();
    emit printerChanged();
}

void PageView::setSheet(const Sheet& sheet) {
    if (sheet_ == sheet) return;
    sheet_ = sheet;
    renew();
    emit sheetChanged();
}

QSizeF PageView::shape() const {
    if (sheet_.isEmpty()) return {};
    return {sheet_.page()->width.value, sheet_.page()->height.value};
}

void PageView::draw(QPainter& painter, const QRectF& rect) {
    painter.fillRect(rect, Qt::white);
    if (!printer_) return;
    painter.translate(rect.topLeft());
    painter.scale(rect.width() / shape().width(), rect.height() / shape().height());
    printer_->paint(*sheet_.page(), painter);
}

}  // namespace burrow
