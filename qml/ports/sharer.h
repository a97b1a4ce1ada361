// Hands a file to the other apps of the device, where it can.
//
// Lives in the thread of the interface.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <filesystem>

#include "base/result.h"

namespace burrow {

class Sharer : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("The program makes the sharer.")
    /// Where false, nothing offers to share.
    Q_PROPERTY(bool canShare READ canShare CONSTANT FINAL)

public:
    explicit Sharer(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] virtual bool canShare() const = 0;
    /// Where files that are made only to be shared are put.
    [[nodiscard]] virtual std::filesystem::path folder() const = 0;
    /// Does not wait for what the other app does with it.
    virtual Done share(const std::filesystem::path& file) = 0;
};

}  // namespace burrow
