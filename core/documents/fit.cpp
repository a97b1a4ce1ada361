#include "documents/fit.h"

#include <algorithm>

#include "base/text.h"

namespace burrow::documents {
namespace {

/// Sizes are tried in steps, so that neighbouring labels get the same one.
constexpr Points step{0.25};

std::string oneLine(std::string_view text) {
    std::string line(trimmed(text));
    std::replace_if(
        line.begin(), line.end(),
        [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, ' ');
    return line;
}

bool fits(const TextMeasure& measure, const Text& text) {
    return measure.width(text.text, text.style) <= text.room;
}

/// Drops the last character of well-formed UTF-8.
void dropLast(std::string& text) {
    while (!text.empty()) {
        const auto byte = static_cast<unsigned char>(text.back());
        text.pop_back();
        if ((byte & 0xC0U) != 0x80) return;
    }
}

void shorten(const TextMeasure& measure, Text& text) {
    auto kept = text.text;
    while (!kept.empty() && !fits(measure, text)) {
        dropLast(kept);
        text.text = std::string(trimmed(kept)) + "…";
    }
    if (!fits(measure, text)) text.text.clear();
}

/// Greedy lines of whole words; a word that is too wide for a line has one to itself.
std::vector<std::string> brokenAtSpaces(const TextMeasure& measure, const Text& text) {
    std::vector<std::string> lines;
    for (const auto word : split(text.text, ' ')) {
        if (word.empty()) continue;
        auto longer = lines.empty() ? std::string() : lines.back() + ' ';
        longer += word;
        if (!lines.empty() && measure.width(longer, text.style) <= text.room) {
            lines.back() = longer;
        } else {
            lines.emplace_back(word);
        }
    }
    return lines;
}

bool allFit(const TextMeasure& measure, const Text& text, const std::vector<std::string>& lines) {
    return std::all_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return measure.width(line, text.style) <= text.room;
    });
}

}  // namespace

Text fitLine(const TextMeasure& measure, Text text, Points least) {
    text.text = oneLine(text.text);
    while (!fits(measure, text) && text.style.size > least) {
        text.style.size = std::max(least, text.style.size - step);
    }
    if (!fits(measure, text)) shorten(measure, text);
    return text;
}

std::vector<Text> fitLines(const TextMeasure& measure, const Text& text, Points least,
                           std::size_t most, Millimetres pitch) {
    auto whole = text;
    whole.text = oneLine(text.text);
    auto single = fitLine(measure, whole, least);
    if (most < 2 || single.text == whole.text) return {single};

    while (toMillimetres(whole.style.size) > pitch && whole.style.size > least) {
        whole.style.size = std::max(least, whole.style.size - step);
    }
    auto lines = brokenAtSpaces(measure, whole);
    while (!(lines.size() <= most && allFit(measure, whole, lines)) && whole.style.size > least) {
        whole.style.size = std::max(least, whole.style.size - step);
        lines = brokenAtSpaces(measure, whole);
    }
    for (; lines.size() > most; lines.pop_back()) {
        lines[lines.size() - 2] += ' ' + lines.back();
    }
    std::vector<Text> result;
    for (auto& line : lines) {
        auto placed = whole;
        placed.text = std::move(line);
        placed.baseline.y = text.baseline.y + static_cast<double>(result.size()) * pitch;
        result.push_back(fitLine(measure, placed, whole.style.size));
    }
    return result;
}

}  // namespace burrow::documents
