// Lines one below the other over as many pages as they take.
#pragma once

#include <string>
#include <vector>

#include "documents/fit.h"
#include "documents/page.h"

namespace burrow::documents {

class Flow {
public:
    /// `measure` must outlive it.
    Flow(Paper paper, const TextMeasure& measure);

    [[nodiscard]] Page& page() { return pages_.back(); }
    [[nodiscard]] Millimetres left() const { return left_; }
    [[nodiscard]] Millimetres right() const { return right_; }
    [[nodiscard]] Millimetres width() const { return right_ - left_; }
    /// Where the next line begins.
    [[nodiscard]] Millimetres top() const { return top_; }
    /// Where the last line of a page must end; the foot stands below.
    [[nodiscard]] Millimetres bottom() const { return bottom_; }

    /// Turns the page where so much does not fit any more, unless the page is still empty.
    void keepTogether(Millimetres height);
    void skip(Millimetres height) { top_ = top_ + height; }
    /// How high a paragraph will be.
    [[nodiscard]] Millimetres heightOf(const std::string& text, const TextStyle& style,
                                       Millimetres indent = {}) const;
    /// A paragraph, broken at spaces and never shortened or set smaller, from `indent` to the right
    /// margin; it may go on on the next page. Gives the baseline of its first line.
    Millimetres paragraph(const std::string& text, const TextStyle& style, Millimetres indent = {});
    /// One line in a column from `x`, no wider than `room`, set smaller or shortened where it must be; the
    /// place stays where it is.
    void cell(const std::string& text, const TextStyle& style, Millimetres x, Millimetres room,
              Points least);

    [[nodiscard]] std::vector<Page> finish() && { return std::move(pages_); }

    /// From one baseline to the next.
    [[nodiscard]] static Millimetres pitch(const TextStyle& style) {
        return 1.3 * toMillimetres(style.size);
    }

private:
    [[nodiscard]] std::vector<Text> broken(const std::string& text, const TextStyle& style,
                                           Millimetres indent) const;
    void turn();

    Paper paper_;
    const TextMeasure& measure_;
    std::vector<Page> pages_;
    Millimetres left_;
    Millimetres right_;
    Millimetres first_;
    Millimetres bottom_;
    Millimetres top_;
};

}  // namespace burrow::documents
