// Where the books of this device stand, and which one lies on the desk.
#pragma once

#include "viewmodels/desk.h"
#include "viewmodels/settings.h"

namespace burrow {

class Bookcase : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the bookcase.")
    /// True while the invented room is being made.
    Q_PROPERTY(bool busy READ isBusy NOTIFY busyChanged FINAL)
    /// Whether there is a book of the keeper's own to go back to from the invented room.
    Q_PROPERTY(bool hasOwnBook READ hasOwnBook NOTIFY busyChanged FINAL)

public:
    /// Writes the invented room to a new file. Called in a thread of its own.
    using MakeDemo = std::function<Done(const std::filesystem::path&)>;
    /// Makes a book at a path. Called in the book's thread.
    using MakeBook = std::function<Done(const std::filesystem::path&, const Surroundings&)>;

    /// The desk and the settings are not owned.
    Bookcase(Desk& desk, Settings& settings, std::filesystem::path folder, MakeDemo makeDemo,
             QObject* parent = nullptr);
    ~Bookcase() override;

    [[nodiscard]] bool isBusy() const { return worker_ != nullptr; }
    [[nodiscard]] bool hasOwnBook() const;
    /// Opens the book that `make` makes; its file is named after the room.
    void openMade(const QString& room, const MakeBook& make);

public slots:
    /// The book that was open last, where there is one.
    void openLast();
    /// Starts a book for a room; its file is named after it.
    void startBook(const QString& room, const QString& code);
    /// Makes the invented room where it is not there yet, and opens it.
    void openDemo();
    /// Back to the keeper's own book, or to none.
    void leaveDemo();

signals:
    void busyChanged();

private:
    [[nodiscard]] std::filesystem::path demoPath() const;
    [[nodiscard]] std::filesystem::path pathFor(const QString& room) const;
    void open(const std::filesystem::path& path, bool isDemo);

    Desk& desk_;
    Settings& settings_;
    std::filesystem::path folder_;
    MakeDemo makeDemo_;
    QThread* worker_ = nullptr;
};

}  // namespace burrow
