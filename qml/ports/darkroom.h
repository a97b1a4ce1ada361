// Looks pictures over, and keeps them beside the book.
//
// Lives in the thread of the interface; the work is done in a thread of its own and answered in the
// thread of the interface, unless the asker has gone by then.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QByteArray>
#include <filesystem>

#include "pictures/store.h"
#include "ports/errands.h"

namespace burrow {

/// A picture that was looked over and can be kept. Cheap to copy.
struct Negative {
    std::shared_ptr<const Bytes> bytes;  ///< as they came
    QByteArray thumbnail;                ///< a JPEG to show meanwhile
};

class Darkroom : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the darkroom.")

public:
    /// Both may be used in any thread, and outlive the darkroom.
    Darkroom(Files& files, pictures::Developer& developer, QObject* parent = nullptr)
        : QObject(parent), files_(files), developer_(developer) {}

    /// Fails with the sentence for what is no picture, cut, damaged or too large.
    void lookOver(QObject* context, Bytes bytes, std::function<void(Result<Negative>)> answer);
    void lookOver(QObject* context, std::filesystem::path file,
                  std::function<void(Result<Negative>)> answer);

    /// One for each negative, in their order.
    using Kept = std::vector<Result<pictures::KeptPhoto>>;
    /// What was kept is on the device when this is answered, so an entry may name it.
    void keep(QObject* context, std::filesystem::path folder, std::vector<Negative> negatives,
              std::function<void(Kept)> answer);

    /// For what writes and reads files of photos in the book's thread.
    [[nodiscard]] Files& files() const { return files_; }
    [[nodiscard]] pictures::Developer& developer() const { return developer_; }

private:
    Result<Negative> inspected(Bytes bytes);

    Files& files_;
    pictures::Developer& developer_;
    Errands errands_;
};

}  // namespace burrow
