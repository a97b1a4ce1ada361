#include "air/packed.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/text.h"
#include "model/profile.h"

namespace burrow::air {
namespace {

constexpr std::int64_t msPerSecond = 1000;
// Years 1970 to 9999, as long as days can be named.
constexpr std::int64_t lastSecond = 253'402'300'799;
constexpr Range<std::int64_t> warmths{-4000, 8000};  // what a logger's file may hold
constexpr Range<std::int64_t> humidities{0, 10'000};

std::int64_t secondOf(Instant at) {
    const auto second = at.ms / msPerSecond;
    return at.ms < second * msPerSecond ? second - 1 : second;
}

template <class Unit>
std::int64_t hundredths(Unit value) {
    return std::llround(value.value * 100);
}

template <class Unit>
std::optional<Unit> roundedValue(const std::optional<Unit>& value) {
    if (!value) return std::nullopt;
    return Unit{static_cast<double>(hundredths(*value)) / 100};
}

/// The mean of those that say anything.
template <class Unit>
class Mean {
public:
    void add(const std::optional<Unit>& value) {
        if (!value) return;
        sum_ += value->value;
        ++count_;
    }
    [[nodiscard]] std::optional<Unit> get() const {
        if (count_ == 0) return std::nullopt;
        return roundedValue(std::optional(Unit{sum_ / count_}));
    }

private:
    double sum_ = 0;
    int count_ = 0;
};

bool comesBefore(const Sample& a, const Sample& b) {
    return std::tie(a.at, a.temperature, a.humidity) < std::tie(b.at, b.temperature, b.humidity);
}

void addChange(std::string& text, char letter, std::int64_t change) {
    text += letter;
    if (change != 0) text += std::to_string(change);
}

/// Takes a text apart, word by word.
class Unpacking {
public:
    explicit Unpacking(std::string_view text) : rest_(text) {}

    std::optional<std::vector<Sample>> all() {
        if (takeWord() != "1") return std::nullopt;
        const auto first = parseInteger(takeWord());
        if (!first || *first < 0 || *first > lastSecond) return std::nullopt;
        second_ = *first;
        while (!rest_.empty()) {
            if (!takeReading(takeWord())) return std::nullopt;
        }
        if (samples_.empty()) return std::nullopt;
        return std::move(samples_);
    }

private:
    std::string_view takeWord() {
        const auto end = std::min(rest_.find(' '), rest_.size());
        const auto word = rest_.substr(0, end);
        rest_.remove_prefix(std::min(end + 1, rest_.size()));
        return word;
    }
    /// The digits, and the sign, at the front of a word; none for an empty number.
    static std::optional<std::int64_t> takeNumber(std::string_view& word, std::int64_t none) {
        const auto end = std::min(word.find_first_not_of("-0123456789"), word.size());
        const auto digits = word.substr(0, end);
        word.remove_prefix(end);
        if (digits.empty()) return none;
        return parseInteger(digits);
    }
    static bool takeValue(std::string_view& word, char letter, const Range<std::int64_t>& limits,
                          std::int64_t& last, std::optional<double>& value) {
        if (word.empty() || word.front() != letter) return true;
        word.remove_prefix(1);
        const auto change = takeNumber(word, 0);
        if (!change || *change < -20'000 || *change > 20'000) return false;
        last += *change;
        value = static_cast<double>(last) / 100;
        return last >= limits.least && last <= limits.most;
    }
    bool takeReading(std::string_view word) {
        const auto step = takeNumber(word, samples_.empty() ? 0 : step_);
        const bool isFirst = samples_.empty();
        if (!step || (isFirst ? *step != 0 : *step <= 0) || *step > lastSecond) return false;
        step_ = *step;
        second_ += step_;
        std::optional<double> warmth;
        std::optional<double> humidity;
        if (!takeValue(word, 't', warmths, warmth_, warmth)) return false;
        if (!takeValue(word, 'h', humidities, humidity_, humidity)) return false;
        if (!word.empty() || (!warmth && !humidity) || second_ > lastSecond) return false;
        Sample sample{{second_ * msPerSecond}, std::nullopt, std::nullopt};
        if (warmth) sample.temperature = Celsius{*warmth};
        if (humidity) sample.humidity = Percent{*humidity};
        samples_.push_back(sample);
        return true;
    }

    std::string_view rest_;
    std::int64_t second_ = 0;
    std::int64_t step_ = 0;
    std::int64_t warmth_ = 0;
    std::int64_t humidity_ = 0;
    std::vector<Sample> samples_;
};

}  // namespace

Sample rounded(const Sample& sample) {
    return {{secondOf(sample.at) * msPerSecond},
            roundedValue(sample.temperature),
            roundedValue(sample.humidity)};
}

std::vector<Sample> united(std::vector<Sample> samples) {
    for (auto& sample : samples) sample = rounded(sample);
    std::sort(samples.begin(), samples.end(), comesBefore);
    samples.erase(std::unique(samples.begin(), samples.end()), samples.end());
    std::vector<Sample> all;
    all.reserve(samples.size());
    for (std::size_t i = 0; i < samples.size();) {
        const auto at = samples[i].at;
        Mean<Celsius> warmth;
        Mean<Percent> humidity;
        for (; i < samples.size() && samples[i].at == at; ++i) {
            warmth.add(samples[i].temperature);
            humidity.add(samples[i].humidity);
        }
        all.push_back({at, warmth.get(), humidity.get()});
    }
    return all;
}

std::vector<std::string> packed(std::span<const Sample> samples) {
    constexpr std::size_t longestWord = 40;
    std::vector<std::string> texts;
    std::int64_t second = 0;
    std::int64_t step = 0;
    std::int64_t warmth = 0;
    std::int64_t humidity = 0;
    for (const auto& sample : samples) {
        const auto at = secondOf(sample.at);
        if (texts.empty() || texts.back().size() + longestWord > longestPacked) {
            texts.push_back(fmt::format("1 {} ", at));
            step = warmth = humidity = 0;
        } else {
            texts.back() += ' ';
            if (at - second != step) texts.back() += std::to_string(at - second);
            step = at - second;
        }
        second = at;
        auto& text = texts.back();
        if (sample.temperature) {
            addChange(text, 't', hundredths(*sample.temperature) - warmth);
            warmth = hundredths(*sample.temperature);
        }
        if (sample.humidity) {
            addChange(text, 'h', hundredths(*sample.humidity) - humidity);
            humidity = hundredths(*sample.humidity);
        }
    }
    return texts;
}

std::optional<std::vector<Sample>> unpacked(std::string_view text) {
    if (text.size() > longestPacked) return std::nullopt;
    return Unpacking(text).all();
}

}  // namespace burrow::air
