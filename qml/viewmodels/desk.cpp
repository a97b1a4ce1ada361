#include "viewmodels/desk.h"

#include <utility>

#include "exchange/staging.h"
#include "room/front.h"
#include "room/own_numbers.h"

namespace burrow {

/// The book and the room made from it; touched only in the book's thread.
struct Desk::Shelf : public QObject {
    std::optional<Book> book;
    std::shared_ptr<const Room> room;
};

namespace {

Result<ChangeSet> carryOut(const Deed& deed, Book& book) {
    if (deed.write) return deed.write(book);
    BURROW_TRY(const auto drafts, deed.compose(book));
    if (drafts.empty()) return ChangeSet{};
    return book.record(drafts);
}

}  // namespace

Desk::Desk(Knowledge knowledge, QObject* parent)
    : QObject(parent), knowledge_(std::move(knowledge)), shelf_(new Shelf) {
    thread_.setObjectName(QStringLiteral("book"));
    shelf_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, shelf_, &QObject::deleteLater);
    thread_.start();
    constexpr int minute = 60'000;
    connect(&dayWatch_, &QTimer::timeout, this, [this] {
        if (room_ && planDay().today != room_->day().today) refresh();
    });
    dayWatch_.start(minute);
}

Desk::~Desk() {
    thread_.quit();
    thread_.wait();
}

void Desk::inBookThread(std::function<void(Book*)> job) {
    QMetaObject::invokeMethod(shelf_, [shelf = shelf_, job = std::move(job)] {
        job(shelf->book ? &*shelf->book : nullptr);
    });
}

void Desk::inOwnThread(std::function<void()> job) {
    QMetaObject::invokeMethod(this, std::move(job), Qt::QueuedConnection);
}

PlanDay Desk::planDay() const { return PlanDay::at(knowledge_.clock.now(), knowledge_.zone); }

const std::shared_ptr<const RoomTables>& Desk::tables() const {
    return room_ && room_->tables() ? room_->tables() : knowledge_.numbers.shipped();
}

Room::Reference Desk::reference() const {
    return {knowledge_.profiles, knowledge_.rules, &knowledge_.numbers};
}

Surroundings Desk::surroundings() const {
    return {knowledge_.clock, knowledge_.random, knowledge_.zone};
}

QString Desk::roomName() const {
    return room_ ? QString::fromStdString(room_->info().name) : QString();
}

CivilDay Desk::today() const { return room_ ? room_->day().today : planDay().today; }

QString Desk::say(const Message& message) const {
    return QString::fromStdString(knowledge_.words.say(message, today()));
}

QString Desk::say(const char* id) const { return say(Message(id)); }

void Desk::open(const std::filesystem::path& path, bool isDemo) {
    startOpening(path, isDemo, [path, around = surroundings()] {
        return Book::open(path, storage::Access::readWrite, around);
    });
}

void Desk::create(const std::filesystem::path& path, const std::string& room,
                  const std::string& code) {
    startOpening(path, false, [path, room, code, around = surroundings()] {
        return Book::create(path, room, code, around);
    });
}

void Desk::openMade(const std::filesystem::path& path,
                    std::function<Done(const Surroundings&)> make) {
    startOpening(path, false,
                 [path, make = std::move(make), around = surroundings()]() -> Result<Book> {
                     BURROW_DO(make(around));
                     return Book::open(path, storage::Access::readWrite, around);
                 });
}

void Desk::startOpening(const std::filesystem::path& path, bool isDemo,
                        std::function<Result<Book>()> openBook) {
    state_ = State::Opening;
    isDemo_ = isDemo;
    path_ = path;
    refusal_.clear();
    settle();
    emit stateChanged();
    QMetaObject::invokeMethod(
        shelf_, [this, shelf = shelf_, day = planDay(), openBook = std::move(openBook)] {
            shelf->book.reset();
            shelf->room.reset();
            auto book = openBook();
            if (book) {
                shelf->book.emplace(*std::move(book));
                showFront(day);
                auto room = Room::load(*shelf->book, reference(), day);
                if (room) {
                    shelf->room = std::make_shared<const Room>(*std::move(room));
                    inOwnThread([this, opened = shelf->room] { show(opened); });
                    // What a merge that died left behind; if it can't go now, it goes next time.
                    DeviceFiles files;
                    static_cast<void>(noteFront(shelf->book->path(), *shelf->room));
                    static_cast<void>(exchange::sweepStaging(*shelf->book, files));
                    return;
                }
                shelf->book.reset();
                inOwnThread([this, error = room.error()] { refuse(error); });
                return;
            }
            inOwnThread([this, error = book.error()] { refuse(error); });
        });
}

/// The first of a large room stands on the screen while the others are read. In the book's thread: what is
/// asked or written meanwhile waits until all are there.
void Desk::showFront(const PlanDay& day) {
    const auto first = notedFront(shelf_->book->path());
    if (first.empty()) return;
    auto front = Room::loadOnly(*shelf_->book, reference(), day, first);
    if (!front || front->size() == 0) return;
    inOwnThread([this, room = std::make_shared<const Room>(*std::move(front))] { show(room); });
}

void Desk::close() {
    QMetaObject::invokeMethod(shelf_, [shelf = shelf_] {
        shelf->book.reset();
        shelf->room.reset();
    });
    room_.reset();
    path_.clear();
    state_ = State::NoBook;
    settle();
    emit stateChanged();
    emit roomChanged();
}

void Desk::show(std::shared_ptr<const Room> room) {
    room_ = std::move(room);
    if (std::exchange(state_, State::Open) != State::Open) emit stateChanged();
    emit roomChanged();
}

void Desk::refuse(const Error& error) {
    room_.reset();
    path_.clear();
    refusal_ = say(error.message);
    state_ = State::Refused;
    emit stateChanged();
    emit roomChanged();
}

void Desk::act(QObject* context, Deed deed, Then then) {
    QMetaObject::invokeMethod(shelf_, [this, shelf = shelf_, guard = QPointer(context),
                                       deed = std::move(deed), then = std::move(then)] {
        const auto write = [&]() -> Result<ChangeSet> {
            if (!shelf->book) return fail(Trouble::notFound, {"book.noneOpen"});
            BURROW_TRY(auto changes, carryOut(deed, *shelf->book));
            if (changes.isEmpty()) return changes;
            BURROW_TRY(auto room, shelf->room->after(*shelf->book, reference(), changes));
            shelf->room = std::make_shared<const Room>(std::move(room));
            return changes;
        };
        const auto result = std::make_shared<const Result<ChangeSet>>(write());
        inOwnThread([this, guard, then, result, room = shelf->room, deed] {
            if (*result) {
                show(room);
                setTrouble({});
                const bool isWritten = !(*result)->isEmpty();
                if (isWritten && !deed.said.id.empty()) setDone(deed);
                emit written();
            } else {
                setTrouble(say(result->error().message));
            }
            if (guard && then) then(*result);
        });
    });
}

void Desk::undo() {
    QMetaObject::invokeMethod(shelf_, [this, shelf = shelf_, takeBack = takeBack_] {
        const auto taken = [&]() -> Result<ChangeSet> {
            if (takeBack) return takeBack(*shelf->book);
            BURROW_TRY(auto undone, shelf->book->undo());
            return std::move(undone.first);
        };
        const auto write = [&]() -> Done {
            if (!shelf->book) return fail(Trouble::notFound, {"book.noneOpen"});
            BURROW_TRY(const auto changes, taken());
            BURROW_TRY(auto room, shelf->room->after(*shelf->book, reference(), changes));
            shelf->room = std::make_shared<const Room>(std::move(room));
            return {};
        };
        const auto result = write();
        inOwnThread([this, result, room = shelf->room] {
            if (!result) return setTrouble(say(result.error().message));
            show(room);
            settle();
            emit written();
        });
    });
}

void Desk::refresh() {
    QMetaObject::invokeMethod(shelf_, [this, shelf = shelf_, day = planDay()] {
        if (!shelf->book) return;
        auto room = Room::load(*shelf->book, reference(), day);
        if (!room) {
            return inOwnThread([this, error = room.error()] { setTrouble(say(error.message)); });
        }
        shelf->room = std::make_shared<const Room>(*std::move(room));
        inOwnThread([this, fresh = shelf->room] {
            show(fresh);
            emit written();
        });
    });
}

void Desk::setDone(const Deed& deed) {
    doneTag_ = deed.tag;
    doneText_ = say(deed.said);
    takeBack_ = deed.takeBack;
    ++doneSerial_;
    emit doneChanged();
}

void Desk::settle() {
    if (doneText_.isEmpty()) return;
    doneTag_.clear();
    doneText_.clear();
    takeBack_ = {};
    emit doneChanged();
}

void Desk::setTrouble(const QString& text) {
    if (trouble_ == text) return;
    trouble_ = text;
    emit troubleChanged();
}

void Desk::dismissTrouble() { setTrouble({}); }

}  // namespace burrow
