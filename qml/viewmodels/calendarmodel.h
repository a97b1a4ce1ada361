// Due dates as a file that any calendar takes.
#pragma once

#include <QUrl>
#include <QVariantList>

#include "exchange/ical.h"
#include "ports/sharer.h"
#include "viewmodels/desk.h"

namespace burrow {

class CalendarModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY changed REQUIRED FINAL)
    Q_PROPERTY(burrow::Sharer* sharer READ sharer WRITE setSharer NOTIFY changed REQUIRED FINAL)
    /// [{word}] how far ahead, and which was chosen.
    Q_PROPERTY(QVariantList spans READ spans NOTIFY changed FINAL)
    Q_PROPERTY(int span READ span WRITE setSpan NOTIFY changed FINAL)
    /// "84 due dates"
    Q_PROPERTY(QString contents READ contents NOTIFY changed FINAL)
    /// [{name, value}] the first of them: what and when.
    Q_PROPERTY(QVariantList first READ first NOTIFY changed FINAL)
    Q_PROPERTY(bool any READ hasAny NOTIFY changed FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY changed FINAL)
    Q_PROPERTY(QString savedText READ savedText NOTIFY changed FINAL)
    Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)

public:
    explicit CalendarModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Sharer* sharer() const { return sharer_; }
    void setSharer(Sharer* sharer);
    [[nodiscard]] QVariantList spans() const;
    [[nodiscard]] int span() const { return span_; }
    void setSpan(int span);
    [[nodiscard]] QString contents() const;
    [[nodiscard]] QVariantList first() const;
    [[nodiscard]] bool hasAny() const { return !calendar_.events.empty(); }
    [[nodiscard]] bool canShare() const { return sharer_ && sharer_->canShare(); }
    [[nodiscard]] QString savedText() const { return savedText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Writes the file into a folder, beside what is there.
    void saveTo(const QUrl& folder);
    /// Makes the file and hands it to another app.
    void share();

signals:
    void changed();

private:
    void read();
    [[nodiscard]] std::string stem() const;
    [[nodiscard]] Done write(const std::filesystem::path& path);
    void tell(const Error& error);

    QPointer<Desk> desk_;
    QPointer<Sharer> sharer_;
    int span_ = 1;
    exchange::Calendar calendar_;
    QString savedText_;
    QString trouble_;
};

}  // namespace burrow
