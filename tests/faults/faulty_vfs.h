// A device that fails when it is told to: stands between SQLite and the real one, as a VFS (https://
// sqlite.org/vfs.html), for every connection opened while it exists. It can also lose power: then
// nothing more reaches the device, and of what was written but not flushed only some is there.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace burrow::test {

enum class Fault {
    shortWrite,  ///< half of a write arrives, then the device is full
    noRoom,      ///< nothing of a write arrives, the device is full
    writeError,
    readError,
    syncError,
    openError,  ///< also of a file that SQLite would remove
    powerCut    ///< at a write or a flush; all that follows fails
};

class FaultyVfs {
public:
    FaultyVfs();
    FaultyVfs(const FaultyVfs&) = delete;
    FaultyVfs& operator=(const FaultyVfs&) = delete;
    ~FaultyVfs();

    /// Strikes at the n-th call (from 1) that this fault can strike; once, or from there on.
    void arm(Fault fault, long n, bool lasting);
    void disarm();
    [[nodiscard]] bool hasStruck() const { return hasStruck_; }
    /// Brings the files to what a device may hold after the power cut. To be called when everything is
    /// closed.
    void restorePower(std::uint64_t seed);
    /// Files that were written to and not flushed since.
    [[nodiscard]] std::vector<std::string> unflushed() const;

private:
    struct Write {
        std::int64_t offset;  ///< or the new size, for a truncation
        std::string bytes;
        bool isTruncation;
    };
    struct Kept {
        std::string flushed;       ///< what the device holds for certain
        std::vector<Write> since;  ///< in order
    };
    struct File;
    struct Calls;  // what SQLite calls

    [[nodiscard]] bool strikes(Fault fault);
    [[nodiscard]] bool isDead() const { return fault_ == Fault::powerCut && hasStruck_; }

    sqlite3_vfs* real_;
    sqlite3_vfs own_{};
    bool isArmed_ = false;
    bool lasting_ = false;
    bool hasStruck_ = false;
    Fault fault_ = Fault::noRoom;
    long left_ = 0;
    bool remembers_ = false;  // writes, for a power cut
    std::map<std::string, Kept> files_;
};

}  // namespace burrow::test
