#include "faults/faulty_vfs.h"

#include <algorithm>
#include <fstream>
#include <new>
#include <sstream>

namespace burrow::test {
namespace {

constexpr std::int64_t sector = 512;  // what a device writes as a whole

std::string contentOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

void put(std::string& content, std::int64_t offset, std::string_view bytes) {
    const auto at = static_cast<std::size_t>(offset);
    if (content.size() < at + bytes.size()) content.resize(at + bytes.size());
    content.replace(at, bytes.size(), bytes);
}

}  // namespace

/// What SQLite knows as an open file; the real one stands behind it in memory.
struct FaultyVfs::File {
    sqlite3_file base;
    FaultyVfs* owner;
    std::string* path;  // null for files without a name
    [[nodiscard]] sqlite3_file* real() {
        return reinterpret_cast<sqlite3_file*>(reinterpret_cast<char*>(this) + sizeof(File));
    }
};

struct FaultyVfs::Calls {
    static File* at(sqlite3_file* file) { return reinterpret_cast<File*>(file); }
    static const sqlite3_io_methods& of(sqlite3_file* file) { return *at(file)->real()->pMethods; }
    static FaultyVfs& owner(sqlite3_vfs* vfs) { return *static_cast<FaultyVfs*>(vfs->pAppData); }
    static Kept* kept(sqlite3_file* file) {
        auto* own = at(file);
        if (own->path == nullptr || !own->owner->remembers_) return nullptr;
        const auto [found, isNew] = own->owner->files_.try_emplace(*own->path);
        if (isNew) found->second.flushed = contentOf(*own->path);
        return &found->second;
    }

    static int close(sqlite3_file* file) {
        auto* own = at(file);
        const int code =
            own->real()->pMethods != nullptr ? of(file).xClose(own->real()) : SQLITE_OK;
        delete own->path;
        own->path = nullptr;
        return code;
    }
    static int read(sqlite3_file* file, void* into, int size, sqlite3_int64 offset) {
        if (at(file)->owner->strikes(Fault::readError)) return SQLITE_IOERR_READ;
        return of(file).xRead(at(file)->real(), into, size, offset);
    }
    static int write(sqlite3_file* file, const void* from, int size, sqlite3_int64 offset) {
        auto& device = *at(file)->owner;
        auto* const kept = Calls::kept(file);
        if (device.strikes(Fault::powerCut)) return SQLITE_IOERR_WRITE;
        if (device.strikes(Fault::writeError)) return SQLITE_IOERR_WRITE;
        if (device.strikes(Fault::noRoom)) return SQLITE_FULL;
        if (device.strikes(Fault::shortWrite)) {
            of(file).xWrite(at(file)->real(), from, size / 2, offset);
            return SQLITE_FULL;  // as the real one says where less was written than asked
        }
        if (kept != nullptr) {
            kept->since.push_back(
                {offset,
                 std::string(static_cast<const char*>(from), static_cast<std::size_t>(size)),
                 false});
        }
        return of(file).xWrite(at(file)->real(), from, size, offset);
    }
    static int truncate(sqlite3_file* file, sqlite3_int64 size) {
        auto& device = *at(file)->owner;
        auto* const kept = Calls::kept(file);
        if (device.isDead() || device.strikes(Fault::writeError)) return SQLITE_IOERR_TRUNCATE;
        if (kept != nullptr) kept->since.push_back({size, {}, true});
        return of(file).xTruncate(at(file)->real(), size);
    }
    static int sync(sqlite3_file* file, int flags) {
        auto& device = *at(file)->owner;
        auto* const kept = Calls::kept(file);
        if (device.strikes(Fault::powerCut) || device.strikes(Fault::syncError)) {
            return SQLITE_IOERR_FSYNC;
        }
        const int code = of(file).xSync(at(file)->real(), flags);
        if (kept != nullptr && code == SQLITE_OK) {
            kept->flushed = contentOf(*at(file)->path);
            kept->since.clear();
        }
        return code;
    }
    static int size(sqlite3_file* file, sqlite3_int64* size) {
        return of(file).xFileSize(at(file)->real(), size);
    }
    static int lock(sqlite3_file* file, int level) {
        return of(file).xLock(at(file)->real(), level);
    }
    static int unlock(sqlite3_file* file, int level) {
        return of(file).xUnlock(at(file)->real(), level);
    }
    static int isReserved(sqlite3_file* file, int* out) {
        return of(file).xCheckReservedLock(at(file)->real(), out);
    }
    static int control(sqlite3_file* file, int op, void* argument) {
        return of(file).xFileControl(at(file)->real(), op, argument);
    }
    static int sectorSize(sqlite3_file* file) { return of(file).xSectorSize(at(file)->real()); }
    static int characteristics(sqlite3_file* file) {
        return of(file).xDeviceCharacteristics(at(file)->real());
    }
    static int shmMap(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
        if (extend != 0 && at(file)->owner->strikes(Fault::noRoom)) return SQLITE_IOERR_SHMSIZE;
        return of(file).xShmMap(at(file)->real(), page, size, extend, out);
    }
    static int shmLock(sqlite3_file* file, int offset, int n, int flags) {
        return of(file).xShmLock(at(file)->real(), offset, n, flags);
    }
    static void shmBarrier(sqlite3_file* file) { of(file).xShmBarrier(at(file)->real()); }
    static int shmUnmap(sqlite3_file* file, int remove) {
        return of(file).xShmUnmap(at(file)->real(), remove);
    }
    // Everything is read by read(), where it can fail.
    static int fetch(sqlite3_file*, sqlite3_int64, int, void** out) {
        *out = nullptr;
        return SQLITE_OK;
    }
    static int unfetch(sqlite3_file*, sqlite3_int64, void*) { return SQLITE_OK; }

    static int open(sqlite3_vfs* vfs, sqlite3_filename name, sqlite3_file* file, int flags,
                    int* outFlags) {
        static constexpr sqlite3_io_methods methods{3,
                                                    &close,
                                                    &read,
                                                    &write,
                                                    &truncate,
                                                    &sync,
                                                    &size,
                                                    &lock,
                                                    &unlock,
                                                    &isReserved,
                                                    &control,
                                                    &sectorSize,
                                                    &characteristics,
                                                    &shmMap,
                                                    &shmLock,
                                                    &shmBarrier,
                                                    &shmUnmap,
                                                    &fetch,
                                                    &unfetch};
        auto& device = owner(vfs);
        auto* own = new (file) File{{nullptr}, &device, nullptr};
        if (device.isDead() || device.strikes(Fault::openError)) return SQLITE_CANTOPEN;
        const int code = device.real_->xOpen(device.real_, name, own->real(), flags, outFlags);
        if (code != SQLITE_OK) return code;
        own->base.pMethods = &methods;
        if (name != nullptr) own->path = new std::string(name);
        return code;
    }
    static int remove(sqlite3_vfs* vfs, const char* name, int syncFolder) {
        auto& device = owner(vfs);
        if (device.isDead()) return SQLITE_IOERR_DELETE;
        if (device.strikes(Fault::openError)) return SQLITE_IOERR_DELETE;
        device.files_.erase(name);
        return device.real_->xDelete(device.real_, name, syncFolder);
    }
    static int access(sqlite3_vfs* vfs, const char* name, int flags, int* out) {
        return owner(vfs).real_->xAccess(owner(vfs).real_, name, flags, out);
    }
    static int fullPath(sqlite3_vfs* vfs, const char* name, int size, char* out) {
        return owner(vfs).real_->xFullPathname(owner(vfs).real_, name, size, out);
    }
    static int randomness(sqlite3_vfs* vfs, int size, char* out) {
        return owner(vfs).real_->xRandomness(owner(vfs).real_, size, out);
    }
    static int sleep(sqlite3_vfs*, int microseconds) { return microseconds; }
    static int now(sqlite3_vfs* vfs, sqlite3_int64* out) {
        return owner(vfs).real_->xCurrentTimeInt64(owner(vfs).real_, out);
    }
    static int lastError(sqlite3_vfs* vfs, int size, char* out) {
        return owner(vfs).real_->xGetLastError(owner(vfs).real_, size, out);
    }
};

FaultyVfs::FaultyVfs() : real_(sqlite3_vfs_find(nullptr)) {
    own_ = {};
    own_.iVersion = 2;
    own_.szOsFile = static_cast<int>(sizeof(File)) + real_->szOsFile;
    own_.mxPathname = real_->mxPathname;
    own_.zName = "faulty";
    own_.pAppData = this;
    own_.xOpen = &Calls::open;
    own_.xDelete = &Calls::remove;
    own_.xAccess = &Calls::access;
    own_.xFullPathname = &Calls::fullPath;
    own_.xRandomness = &Calls::randomness;
    own_.xSleep = &Calls::sleep;
    own_.xCurrentTimeInt64 = &Calls::now;
    own_.xGetLastError = &Calls::lastError;
    sqlite3_vfs_register(&own_, 1);
}

FaultyVfs::~FaultyVfs() {
    sqlite3_vfs_unregister(&own_);
    sqlite3_vfs_register(real_, 1);
}

void FaultyVfs::arm(Fault fault, long n, bool lasting) {
    fault_ = fault;
    left_ = n;
    lasting_ = lasting;
    isArmed_ = true;
    hasStruck_ = false;
    remembers_ = fault == Fault::powerCut;
    files_.clear();
}

void FaultyVfs::disarm() {
    isArmed_ = false;
    hasStruck_ = false;
    remembers_ = false;
}

bool FaultyVfs::strikes(Fault fault) {
    if (!isArmed_ || fault != fault_) return false;
    if (hasStruck_) return lasting_ || fault == Fault::powerCut;
    if (--left_ > 0) return false;
    hasStruck_ = true;
    return true;
}

std::vector<std::string> FaultyVfs::unflushed() const {
    std::vector<std::string> paths;
    for (const auto& [path, kept] : files_) {
        if (!kept.since.empty()) paths.push_back(path);
    }
    return paths;
}

void FaultyVfs::restorePower(std::uint64_t seed) {
    std::mt19937_64 dice(seed);
    for (auto& [path, kept] : files_) {
        if (kept.since.empty()) continue;
        auto content = kept.flushed;
        for (const auto& write : kept.since) {
            // A third each: arrived, did not, or arrived in part, in any order of its sectors.
            const auto luck = dice() % 3;
            if (luck == 0) continue;
            if (write.isTruncation) {
                content.resize(static_cast<std::size_t>(write.offset));
                continue;
            }
            const auto size = static_cast<std::int64_t>(write.bytes.size());
            for (std::int64_t from = 0; from < size;) {
                const auto to =
                    std::min(size, ((write.offset + from) / sector + 1) * sector - write.offset);
                if (luck == 1 || dice() % 2 == 0) {
                    put(content, write.offset + from,
                        std::string_view(write.bytes)
                            .substr(static_cast<std::size_t>(from),
                                    static_cast<std::size_t>(to - from)));
                }
                from = to;
            }
        }
        std::ofstream(path, std::ios::binary | std::ios::trunc) << content;
    }
    files_.clear();
    disarm();
}

}  // namespace burrow::test
