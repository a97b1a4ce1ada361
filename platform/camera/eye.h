// What looks for tags and takes photos, in a library of its own: Qt Multimedia and what it brings along
// are loaded when the first page stands, not before.
#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "ports/photographer.h"
#include "ports/scanner.h"

namespace burrow {

struct Eye {
    std::unique_ptr<Scanner> scanner;
    std::unique_ptr<Photographer> photographer;  ///< destroyed before the scanner it uses
};

/// What the library offers.
class EyeMaker {
public:
    EyeMaker() = default;
    EyeMaker(const EyeMaker&) = delete;
    EyeMaker& operator=(const EyeMaker&) = delete;
    virtual ~EyeMaker() = default;

    /// Looks through the camera, or at a film where one is named.
    [[nodiscard]] virtual Eye make(const QString& film) = 0;
};

}  // namespace burrow

Q_DECLARE_INTERFACE(burrow::EyeMaker, "burrowbook.EyeMaker/1")
