// A page as text, one command a line: what golden files hold.
#pragma once

#include <array>
#include <sstream>
#include <string>

#include "documents/page.h"
#include "words/words.h"

namespace burrow::test {

class PageText {
public:
    static std::string of(const documents::Page& page) {
        PageText text;
        text.out_ << "page " << number(page.width) << " x " << number(page.height) << '\n';
        for (const auto& command : page.commands) {
            std::visit([&](const auto& each) { text.add(each); }, command);
            text.out_ << '\n';
        }
        return text.out_.str();
    }

private:
    using Ink = documents::Ink;

    static std::string number(Millimetres value) { return plainNumber(value.value); }
    static std::string at(const documents::Point& point) {
        return number(point.x) + "," + number(point.y);
    }
    static std::string at(const documents::Box& box) {
        return number(box.x) + "," + number(box.y) + " " + number(box.width) + "x" +
               number(box.height);
    }
    static const char* name(Ink ink) {
        static constexpr std::array names{"black", "grey", "white"};
        return names.at(static_cast<std::size_t>(ink));
    }
    static std::string stroke(const documents::Stroke& stroke) {
        static constexpr std::array patterns{"", " dashed", " dotted"};
        return number(stroke.width) + " " + name(stroke.ink) +
               patterns.at(static_cast<std::size_t>(stroke.pattern));
    }
    void shape(const std::optional<Ink>& fill, const std::optional<documents::Stroke>& outline) {
        if (fill) out_ << " fill " << name(*fill);
        if (outline) out_ << " outline " << stroke(*outline);
    }

    void add(const documents::Line& line) {
        out_ << "line " << at(line.from) << " to " << at(line.to) << " " << stroke(line.stroke);
    }
    void add(const documents::Rectangle& rectangle) {
        out_ << "rectangle " << at(rectangle.box) << " radius " << number(rectangle.radius);
        shape(rectangle.fill, rectangle.outline);
    }
    void add(const documents::Disc& disc) {
        out_ << "disc " << at(disc.centre) << " radius " << number(disc.radius);
        shape(disc.fill, disc.outline);
    }
    void add(const documents::Hatch& hatch) {
        out_ << "hatch " << at(hatch.box) << " pitch " << number(hatch.pitch) << " "
             << stroke(hatch.stroke);
    }
    void add(const documents::Text& text) {
        static constexpr std::array faces{"work", "code", "latin"};
        static constexpr std::array weights{"regular", "medium", "semibold", "bold"};
        static constexpr std::array sides{"left", "centre", "right"};
        out_ << "text " << at(text.baseline) << " "
             << sides.at(static_cast<std::size_t>(text.align)) << " in " << number(text.room) << " "
             << faces.at(static_cast<std::size_t>(text.style.face)) << " "
             << weights.at(static_cast<std::size_t>(text.style.weight)) << " "
             << plainNumber(text.style.size.value) << "pt " << name(text.style.ink) << " \""
             << text.text << "\"";
    }
    void add(const documents::SymbolMark& mark) {
        out_ << "symbol " << at(mark.corner) << " side " << number(mark.side) << " version "
             << mark.symbol.version();
    }
    void add(const documents::CautionSign& sign) {
        out_ << "caution " << at(sign.box) << " " << name(sign.ink);
    }

    std::ostringstream out_;
};

/// The commands of one kind, in their order.
template <class Command>
std::vector<Command> commandsOf(const documents::Page& page) {
    std::vector<Command> all;
    for (const auto& command : page.commands) {
        if (const auto* each = std::get_if<Command>(&command)) all.push_back(*each);
    }
    return all;
}

inline std::vector<std::string> textsOf(const documents::Page& page) {
    std::vector<std::string> all;
    for (const auto& text : commandsOf<documents::Text>(page)) all.push_back(text.text);
    return all;
}

}  // namespace burrow::test
