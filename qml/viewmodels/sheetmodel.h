// Printed sheets on the screen and as a file: what care sheets and tag sheets have in common.
#pragma once

#include <QUrl>

#include "ports/printer.h"
#include "ports/sharer.h"
#include "viewmodels/desk.h"

namespace burrow {

class SheetModel : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("A sheet is of something.")
    Q_PROPERTY(burrow::Desk* desk READ desk WRITE setDesk NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(
        burrow::Printer* printer READ printer WRITE setPrinter NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(
        burrow::Sharer* sharer READ sharer WRITE setSharer NOTIFY givenChanged REQUIRED FINAL)
    Q_PROPERTY(int pageCount READ pageCount NOTIFY pagesChanged FINAL)
    Q_PROPERTY(int page READ page WRITE setPage NOTIFY pagesChanged FINAL)
    Q_PROPERTY(burrow::Sheet sheet READ sheet NOTIFY pagesChanged FINAL)
    /// "Page 2 of 5"
    Q_PROPERTY(QString pageText READ pageText NOTIFY pagesChanged FINAL)
    Q_PROPERTY(QString fileName READ fileName NOTIFY pagesChanged FINAL)
    Q_PROPERTY(bool canShare READ canShare NOTIFY pagesChanged FINAL)
    Q_PROPERTY(bool busy READ isBusy NOTIFY stateChanged FINAL)
    /// "Saved as KR-214-care-sheet.pdf in Documents."
    Q_PROPERTY(QString savedText READ savedText NOTIFY stateChanged FINAL)
    /// What could not be done, in words.
    Q_PROPERTY(QString trouble READ trouble NOTIFY stateChanged FINAL)

public:
    explicit SheetModel(QObject* parent = nullptr) : QObject(parent) {}

    [[nodiscard]] Desk* desk() const { return desk_; }
    void setDesk(Desk* desk);
    [[nodiscard]] Printer* printer() const { return printer_; }
    void setPrinter(Printer* printer);
    [[nodiscard]] Sharer* sharer() const { return sharer_; }
    void setSharer(Sharer* sharer);
    [[nodiscard]] int pageCount() const { return static_cast<int>(pages_.size()); }
    [[nodiscard]] int page() const { return page_; }
    void setPage(int page);
    [[nodiscard]] Sheet sheet() const;
    [[nodiscard]] QString pageText() const;
    [[nodiscard]] QString fileName() const;
    [[nodiscard]] bool canShare() const;
    [[nodiscard]] bool isBusy() const { return busy_; }
    [[nodiscard]] QString savedText() const { return savedText_; }
    [[nodiscard]] QString trouble() const { return trouble_; }

public slots:
    /// Writes the file into a folder, beside what is there.
    void saveTo(const QUrl& folder);
    /// Makes the file and hands it to another app.
    void share();

signals:
    void givenChanged();
    void pagesChanged();
    void stateChanged();

protected:
    /// Everything is given, or what the sheet is made from has changed.
    virtual void read() = 0;
    /// "KR-214-care-sheet"
    [[nodiscard]] virtual std::string stem() const = 0;
    [[nodiscard]] virtual std::string title() const = 0;
    /// Does what has to be done before there may be a file, then calls `go`.
    virtual void prepare(std::function<void()> go) { go(); }

    [[nodiscard]] bool isReady() const { return desk_ && printer_ && desk_->room(); }
    /// Lays out anew; what was asked for before is passed over.
    void layOut(Printer::Compose compose);
    void showPages(Printer::Pages pages);
    void tell(const Error& error);
    void setBusy(bool busy);

    QPointer<Desk> desk_;
    QPointer<Printer> printer_;
    QPointer<Sharer> sharer_;

private:
    void readIfReady();
    void write(const std::filesystem::path& path, std::function<void()> then);

    Printer::Pages pages_;
    int page_ = 0;
    int asked_ = 0;  ///< which laying out counts
    bool busy_ = false;
    QString savedText_;
    QString trouble_;
};

}  // namespace burrow
