#include "room/front.h"

#include "base/file_writer.h"
#include "room/room.h"

namespace burrow {
namespace {

constexpr std::size_t idSize = sizeof(Uuid);

}  // namespace

std::filesystem::path frontPath(const std::filesystem::path& book) {
    auto path = book;
    path += "-front";
    return path;
}

std::vector<SubjectId> notedFront(const std::filesystem::path& book) {
    std::vector<SubjectId> first;
    DeviceFiles files;
    const auto bytes = files.read(frontPath(book), frontSize * idSize);
    if (!bytes || bytes->size() % idSize != 0) return first;
    for (std::size_t at = 0; at < bytes->size(); at += idSize) {
        const auto id = Uuid::fromBytes(std::span(*bytes).subspan(at, idSize));
        if (id) first.push_back(SubjectId{*id});
    }
    return first;
}

Done noteFront(const std::filesystem::path& book, const Room& room) {
    if (room.size() <= largeRoom) return {};
    std::vector<SubjectId> first;
    room.forEach([&](const StubPtr& stub) {
        if (first.size() < frontSize) first.push_back(stub->id());
    });
    if (first == notedFront(book)) return {};
    BURROW_TRY(auto writer, FileWriter::create(frontPath(book), true));
    for (const auto& id : first) {
        BURROW_DO(writer.write(id.uuid.bytes));
    }
    return writer.finish();
}

}  // namespace burrow
