#include "print/measure.h"

#include <QFontMetricsF>

namespace burrow::print {
namespace {

QString familyOf(documents::Face face) {
    switch (face) {
        case documents::Face::work: return QStringLiteral("Atkinson Hyperlegible Next");
        case documents::Face::code: return QStringLiteral("Atkinson Hyperlegible Mono");
        case documents::Face::latin: break;
    }
    return QStringLiteral("Vollkorn");
}

QFont::Weight weightOf(documents::Weight weight) {
    switch (weight) {
        case documents::Weight::regular: return QFont::Normal;
        case documents::Weight::medium: return QFont::Medium;
        case documents::Weight::semibold: return QFont::DemiBold;
        case documents::Weight::bold: break;
    }
    return QFont::Bold;
}

}  // namespace

QFont fontOf(const documents::TextStyle& style) {
    QFont font(familyOf(style.face));
    font.setWeight(weightOf(style.weight));
    font.setItalic(style.face == documents::Face::latin);
    font.setPixelSize(pixelsPerEm);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::StyleStrategy(QFont::PreferAntialias | QFont::PreferNoShaping));
    return font;
}

Millimetres QtTextMeasure::width(std::string_view text, const documents::TextStyle& style) const {
    const QFontMetricsF metrics(fontOf(style));
    const auto shown = QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
    const double ems = metrics.horizontalAdvance(shown) / pixelsPerEm;
    return ems * documents::toMillimetres(style.size);
}

}  // namespace burrow::print
