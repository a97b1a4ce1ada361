#include "viewmodels/homefields.h"

#include "base/text.h"
#include "viewmodels/wording.h"

namespace burrow {
namespace {

/// Empty for a size that is not recorded.
QString typedSize(Millimetres size) {
    return size.value > 0 ? toQt(plainNumber(size.value)) : QString();
}

bool readSize(FormField& field, Millimetres& into, const Desk& desk) {
    into = {};
    const auto text = field.value();
    if (text.empty()) return true;
    constexpr double longest = 5000;
    const auto size = parseNumber(field.text().trimmed().replace(',', '.').toStdString());
    if (!size || *size < 0 || *size > longest) {
        field.setError(desk.say({"form.size", {{"value", text}}}));
        return false;
    }
    into = {*size};
    return true;
}

}  // namespace

void HomeFields::fill(const Enclosure& enclosure) {
    name->setText(toQt(enclosure.name));
    length->setText(typedSize(enclosure.length));
    width->setText(typedSize(enclosure.width));
    height->setText(typedSize(enclosure.height));
    substrate->setText(typedSize(enclosure.substrate));
    place->setText(toQt(enclosure.place.text()));
}

void HomeFields::setWanted(bool wanted) {
    for (auto* field : {name, length, width, height, substrate, place}) field->setWanted(wanted);
}

bool HomeFields::read(Enclosure& enclosure, const Desk& desk) const {
    enclosure.name = name->value();
    enclosure.place = Place::parse(place->value());
    bool isFine = !enclosure.name.empty();
    if (!isFine) name->setError(desk.say("form.enclosureName"));
    isFine &= readSize(*length, enclosure.length, desk);
    isFine &= readSize(*width, enclosure.width, desk);
    isFine &= readSize(*height, enclosure.height, desk);
    isFine &= readSize(*substrate, enclosure.substrate, desk);
    return isFine;
}

QStringList knownShelves(const Desk& desk) {
    QStringList shelves;
    if (!desk.room()) return shelves;
    for (const auto& resident : desk.room()->residents()) {
        const auto shelf = toQt(resident->kept.place.shelfOnly().text());
        if (!shelf.isEmpty() && !shelves.contains(shelf)) shelves.append(shelf);
    }
    return shelves;
}

}  // namespace burrow
