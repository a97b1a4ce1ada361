// The desk at which the book lies open. View-models read the room from it and hand it what to write.
//
// One thread of its own holds the book; nothing here waits for it. Questions and deeds are carried out
// there in the order in which they were given, and their answers come back in the thread of the
// interface, unless the asker is gone by then. A deed is answered after it is on the device.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QPointer>
#include <QThread>
#include <QTimer>
#include <filesystem>
#include <functional>
#include <memory>

#include "room/room.h"
#include "words/words.h"

namespace burrow {

class NumberTables;
struct RoomTables;

/// What the programs carry, and the world around them. All of it outlives the desk; `random` is used
/// in the book's thread only.
struct Knowledge {
    const Words& words;
    const Profiles& profiles;
    const Rules& rules;
    const NumberTables& numbers;
    const Clock& clock;
    Random& random;
    Zone zone;
};

/// Something to write, and how to say that it is done.
struct Deed {
    /// Called in the book's thread, where it may look things up and draw identifiers.
    std::function<Result<std::vector<Draft>>(Book&)> compose;
    QString tag;   ///< the number it is about, for the undo slot
    Message said;  ///< "took 1 locust"; nothing is shown for an empty id
    /// How undo takes it back where retracting its entries would not: for what retracts by itself.
    /// Called in the book's thread; empty for the usual way.
    std::function<Result<ChangeSet>(Book&)> takeBack = {};
    /// Instead of `compose`, for what records by itself. Called in the book's thread.
    std::function<Result<ChangeSet>(Book&)> write = {};
};

class Desk : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the desk.")
    Q_PROPERTY(State state READ state NOTIFY stateChanged FINAL)
    /// Why there is no open book, in words; for State::Refused.
    Q_PROPERTY(QString refusal READ refusal NOTIFY stateChanged FINAL)
    Q_PROPERTY(QString roomName READ roomName NOTIFY roomChanged FINAL)
    Q_PROPERTY(bool demo READ isDemo NOTIFY stateChanged FINAL)
    /// The undo slot: what was written last and can be taken back.
    Q_PROPERTY(QString doneTag READ doneTag NOTIFY doneChanged FINAL)
    Q_PROPERTY(QString doneText READ doneText NOTIFY doneChanged FINAL)
    Q_PROPERTY(int doneSerial READ doneSerial NOTIFY doneChanged FINAL)
    /// What could not be done last, in words; empty once something could.
    Q_PROPERTY(QString trouble READ trouble NOTIFY troubleChanged FINAL)

public:
    enum class State { NoBook, Opening, Open, Refused };
    Q_ENUM(State)

    explicit Desk(Knowledge knowledge, QObject* parent = nullptr);
    ~Desk() override;

    [[nodiscard]] State state() const { return state_; }
    [[nodiscard]] QString refusal() const { return refusal_; }
    [[nodiscard]] QString roomName() const;
    [[nodiscard]] bool isDemo() const { return isDemo_; }
    [[nodiscard]] QString doneTag() const { return doneTag_; }
    [[nodiscard]] QString doneText() const { return doneText_; }
    [[nodiscard]] int doneSerial() const { return doneSerial_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

    [[nodiscard]] const Knowledge& knowledge() const { return knowledge_; }
    /// The species known here: those shipped, and the keeper's own of the open book.
    [[nodiscard]] const Profiles& profiles() const {
        return room_ ? room_->profiles() : knowledge_.profiles;
    }
    /// The trade's numbers: those shipped, and the keeper's own of the open book. Whoever asks in another
    /// thread holds on to what it was given.
    [[nodiscard]] const std::shared_ptr<const RoomTables>& tables() const;
    /// The room as last read; null while no book is open.
    [[nodiscard]] const std::shared_ptr<const Room>& room() const { return room_; }
    /// The file of the open book; empty while none is.
    [[nodiscard]] const std::filesystem::path& bookPath() const { return path_; }
    /// Today by the room that is shown, else by the clock.
    [[nodiscard]] CivilDay today() const;
    [[nodiscard]] QString say(const Message& message) const;
    [[nodiscard]] QString say(const char* id) const;

    void open(const std::filesystem::path& path, bool isDemo = false);
    /// Makes a book and opens it.
    void create(const std::filesystem::path& path, const std::string& room,
                const std::string& code);
    /// Opens a book that does not exist yet: `make` puts it there, in the book's thread.
    void openMade(const std::filesystem::path& path, std::function<Done(const Surroundings&)> make);
    void close();
    /// There is no book to open: says why.
    void refuse(const Error& error);

    using Then = std::function<void(const Result<ChangeSet>&)>;
    /// Writes. `then` is called unless `context` has gone; trouble is shown in any case.
    void act(QObject* context, Deed deed, Then then = {});

    /// Reads.
    template <class T>
    void ask(QObject* context, std::function<Result<T>(Book&)> question,
             std::function<void(Result<T>)> answer) {
        inBookThread([this, guard = QPointer(context), question = std::move(question),
                      answer = std::move(answer)](Book* book) {
            auto result = std::make_shared<Result<T>>(
                book != nullptr ? question(*book)
                                : Result<T>(fail(Trouble::notFound, {"book.noneOpen"})));
            inOwnThread([guard, answer, result] {
                if (guard) answer(std::move(*result));
            });
        });
    }

public slots:
    void undo();
    /// The undo slot empties; what was written stays.
    void settle();
    void dismissTrouble();
    /// Reads the room again when the day has changed or another program may have written.
    void refresh();

signals:
    void stateChanged();
    /// There is another room to show.
    void roomChanged();
    void doneChanged();
    void troubleChanged();
    /// Something was written or taken back: what pages read by asking may be out of date.
    void written();

private:
    struct Shelf;  // what lives in the book's thread

    void inBookThread(std::function<void(Book*)> job);
    void inOwnThread(std::function<void()> job);
    void take(Result<Book> book);
    void showFront(const PlanDay& day);
    void show(std::shared_ptr<const Room> room);
    void setTrouble(const QString& text);
    void setDone(const Deed& deed);
    void startOpening(const std::filesystem::path& path, bool isDemo,
                      std::function<Result<Book>()> openBook);
    [[nodiscard]] PlanDay planDay() const;
    [[nodiscard]] Room::Reference reference() const;
    [[nodiscard]] Surroundings surroundings() const;

    Knowledge knowledge_;
    State state_ = State::NoBook;
    QString refusal_;
    bool isDemo_ = false;
    std::filesystem::path path_;
    std::shared_ptr<const Room> room_;
    QString doneTag_;
    QString doneText_;
    int doneSerial_ = 0;
    std::function<Result<ChangeSet>(Book&)> takeBack_;  // of what the undo slot shows
    QString trouble_;
    QTimer dayWatch_;
    QThread thread_;
    Shelf* shelf_;  // owned by thread_, gone when it ends
};

}  // namespace burrow
