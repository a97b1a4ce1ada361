#include "journal/heads.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace burrow {
namespace {

/// Follows what replaced what, from the values that count to all that they replaced.
class Follower {
public:
    explicit Follower(std::span<const Said> values)
        : values_(values), isCovered_(values.size()), isFollowed_(values.size()) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            places_.emplace(values[i].entry, i);
            ofDevice_[values[i].device].emplace_back(values[i].seq, i);
        }
        for (auto& [device, places] : ofDevice_) std::sort(places.begin(), places.end());
    }

    std::vector<bool> covered() {
        for (std::size_t i = 0; i < values_.size(); ++i) {
            if (!values_[i].isRetracted) follow(i);
        }
        while (!open_.empty()) {
            const auto next = open_.back();
            open_.pop_back();
            expand(values_[next]);
        }
        return std::move(isCovered_);
    }

private:
    void follow(std::size_t place) {
        if (isFollowed_[place]) return;
        isFollowed_[place] = true;
        open_.push_back(place);
    }
    void cover(std::size_t place) {
        isCovered_[place] = true;
        follow(place);
    }
    void expand(const Said& value) {
        if (value.over) {
            for (const auto& replaced : *value.over) {
                const auto found = places_.find(replaced);
                if (found != places_.end()) cover(found->second);
            }
            return;
        }
        // Each device's values are walked only once, however many say so.
        const auto& places = ofDevice_[value.device];
        auto& done = walked_[value.device];
        for (; done < places.size() && places[done].first < value.seq; ++done) {
            cover(places[done].second);
        }
    }

    std::span<const Said> values_;
    std::map<EntryId, std::size_t> places_;
    std::map<Uuid, std::vector<std::pair<std::int64_t, std::size_t>>> ofDevice_;
    std::map<Uuid, std::size_t> walked_;
    std::vector<bool> isCovered_;
    std::vector<bool> isFollowed_;
    std::vector<std::size_t> open_;
};

}  // namespace

std::vector<std::size_t> headsOf(std::span<const Said> values) {
    std::vector<std::size_t> heads;
    if (values.size() == 1) {
        if (!values.front().isRetracted) heads.push_back(0);
        return heads;
    }
    const auto covered = Follower(values).covered();
    const auto collect = [&](bool withCovered) {
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (!values[i].isRetracted && (withCovered || !covered[i])) heads.push_back(i);
        }
    };
    collect(false);
    if (heads.empty()) collect(true);
    std::sort(heads.begin(), heads.end(), [&](std::size_t a, std::size_t b) {
        return std::tie(values[a].stamp, values[a].entry) >
               std::tie(values[b].stamp, values[b].entry);
    });
    return heads;
}

}  // namespace burrow
