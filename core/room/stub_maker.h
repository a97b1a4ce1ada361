// Planning thousands while they are read from the book: reading is one thread's work, and another plans
// those that wait. Whoever reads faster than that plans too.
#pragma once

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <unordered_map>
#include <vector>

#include "room/resident.h"

namespace burrow {

/// Makes stubs of everyone it is given. Add and finish from one thread; few are planned on it alone.
class StubMaker {
public:
    explicit StubMaker(std::shared_ptr<const PlanBasis> basis) : basis_(std::move(basis)) {}
    ~StubMaker();
    StubMaker(const StubMaker&) = delete;
    StubMaker& operator=(const StubMaker&) = delete;

    void add(Kept kept);
    /// Everyone who was added, in no particular order.
    [[nodiscard]] std::vector<StubPtr> finish();

private:
    using Piece = std::vector<Kept>;
    /// What one of the two threads made, and the profiles it looked up: thousands are of a hundred species.
    struct Bench {
        std::vector<StubPtr> stubs;
        std::unordered_map<std::string, const Profile*> profiles;
    };

    void plan(const Piece& piece, Bench& bench) const;
    void planUntilRead();
    [[nodiscard]] bool handOver();

    const std::shared_ptr<const PlanBasis> basis_;
    Piece reading_;
    Bench mine_;
    Bench others_;
    std::mutex mutex_;  // of what follows
    std::condition_variable isNews_;
    std::deque<Piece> waiting_;
    /// Planned by the other thread. Whoever made the strings in them frees them: threads that free each
    /// other's memory wait for each other.
    std::vector<Piece> planned_;
    bool isRead_ = false;
    std::thread other_;
};

}  // namespace burrow
