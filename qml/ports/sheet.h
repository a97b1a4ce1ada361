// A page of a document as pages of the app hand it around.
#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <memory>

#include "documents/page.h"

namespace burrow {

/// One page, cheap to copy; empty for none.
class Sheet {
    Q_GADGET
    QML_VALUE_TYPE(sheet)
    Q_PROPERTY(bool empty READ isEmpty FINAL)
    /// Height to width.
    Q_PROPERTY(qreal shape READ shape FINAL)

public:
    Sheet() = default;
    explicit Sheet(documents::Page page)
        : page_(std::make_shared<const documents::Page>(std::move(page))) {}

    [[nodiscard]] bool isEmpty() const { return page_ == nullptr; }
    [[nodiscard]] qreal shape() const {
        return page_ == nullptr ? 1 : page_->height / page_->width;
    }
    /// Null for none.
    [[nodiscard]] const documents::Page* page() const { return page_.get(); }

    friend bool operator==(const Sheet&, const Sheet&) = default;

private:
    std::shared_ptr<const documents::Page> page_;
};

}  // namespace burrow
