// A page of a document on the screen: black on white in either theme, as it will be printed.
#pragma once

#include <QPointer>

#include "ports/printer.h"
#include "ports/zoom_view.h"

namespace burrow {

class PageView : public burrow::ZoomView {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(
        burrow::Printer* printer READ printer WRITE setPrinter NOTIFY printerChanged REQUIRED FINAL)
    Q_PROPERTY(burrow::Sheet sheet READ sheet WRITE setSheet NOTIFY sheetChanged FINAL)

public:
    explicit PageView(QQuickItem* parent = nullptr);

    [[nodiscard]] Printer* printer() const { return printer_; }
    void setPrinter(Printer* printer);
    [[nodiscard]] const Sheet& sheet() const { return sheet_; }
    void setSheet(const Sheet& sheet);

signals:
    void printerChanged();
    void sheetChanged();

private:
    [[nodiscard]] QSizeF shape() const override;
    void draw(QPainter& painter, const QRectF& rect) override;

    QPointer<Printer> printer_;
    Sheet sheet_;
};

}  // namespace burrow
