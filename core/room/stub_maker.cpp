#include "room/stub_maker.h"

#include <iterator>
#include <utility>

namespace burrow {
namespace {

/// Large enough that handing one over costs nothing beside planning it.
constexpr std::size_t pieceSize = 256;
/// With more than that waiting the reader plans too, so that a large book is never held unpacked.
constexpr std::size_t mostWaiting = 4;

}  // namespace

StubMaker::~StubMaker() {
    if (other_.joinable()) static_cast<void>(finish());
}

void StubMaker::add(Kept kept) {
    if (reading_.empty()) reading_.reserve(pieceSize);
    reading_.push_back(std::move(kept));
    if (reading_.size() < pieceSize || handOver()) return;
    plan(reading_, mine_);
    reading_.clear();
}

/// False where enough wait already.
bool StubMaker::handOver() {
    std::vector<Piece> planned;  // freed when the lock is
    const std::lock_guard lock(mutex_);
    planned.swap(planned_);
    if (waiting_.size() >= mostWaiting) return false;
    waiting_.push_back(std::exchange(reading_, {}));
    if (!other_.joinable()) other_ = std::thread([this] { planUntilRead(); });
    isNews_.notify_one();
    return true;
}

void StubMaker::plan(const Piece& piece, Bench& bench) const {
    for (const auto& kept : piece) {
        const auto [known, isNew] = bench.profiles.try_emplace(kept.subject.species, nullptr);
        if (isNew) known->second = basis_->profiles->find(kept.subject.species);
        bench.stubs.push_back(std::make_shared<const Stub>(kept, known->second, basis_));
    }
}

void StubMaker::planUntilRead() {
    while (true) {
        std::unique_lock lock(mutex_);
        isNews_.wait(lock, [this] { return isRead_ || !waiting_.empty(); });
        if (waiting_.empty()) return;
        auto piece = std::move(waiting_.front());
        waiting_.pop_front();
        lock.unlock();
        plan(piece, others_);
        lock.lock();
        planned_.push_back(std::move(piece));
    }
}

std::vector<StubPtr> StubMaker::finish() {
    plan(std::exchange(reading_, {}), mine_);
    if (!other_.joinable()) return std::move(mine_.stubs);
    {
        const std::lock_guard lock(mutex_);
        isRead_ = true;
    }
    isNews_.notify_one();
    while (true) {
        std::unique_lock lock(mutex_);
        if (waiting_.empty()) break;
        const auto piece = std::move(waiting_.back());
        waiting_.pop_back();
        lock.unlock();
        plan(piece, mine_);
    }
    other_.join();
    mine_.stubs.insert(mine_.stubs.end(), std::make_move_iterator(others_.stubs.begin()),
                       std::make_move_iterator(others_.stubs.end()));
    return std::move(mine_.stubs);
}

}  // namespace burrow
