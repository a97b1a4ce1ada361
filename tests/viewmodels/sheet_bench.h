// Sheets over the fixture's book: a printer and a sharer over files that may refuse.
#pragma once

#include <QFile>

#include "fake/fake_files.h"
#include "fake/fake_sharer.h"
#include "print/pdf_printer.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/sheetmodel.h"

namespace burrow::test {

template <class Model>
class SheetBench {
public:
    SheetBench() : printer(files), sharer(at.folder.path() / "shared") {
        at.openRoom();
        std::filesystem::create_directories(folder());
        model.setDesk(&at.desk);
        model.setPrinter(&printer);
        model.setSharer(&sharer);
    }

    /// Where the keeper saves.
    [[nodiscard]] std::filesystem::path folder() const { return at.folder.path() / "Documents"; }
    [[nodiscard]] QUrl folderUrl() const {
        return QUrl::fromLocalFile(QString::fromStdString(folder().string()));
    }
    [[nodiscard]] QByteArray bytes(const std::filesystem::path& path) const {
        QFile file(QString::fromStdString(path.string()));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    [[nodiscard]] QByteArray saved(const char* name) const { return bytes(folder() / name); }

    /// Lets what was asked of the book and of the printer be answered.
    void settle() {
        at.settle();
        bool answered = false;
        printer.layOut(
            &model,
            [](const documents::TextMeasure&) -> Result<std::vector<documents::Page>> {
                return std::vector<documents::Page>{};
            },
            [&answered](const Result<Printer::Pages>&) { answered = true; });
        QTRY_VERIFY(answered);
    }
    void save() {
        settle();
        model.saveTo(folderUrl());
        QTRY_VERIFY(!model.isBusy());
        settle();
    }
    void share() {
        settle();
        model.share();
        QTRY_VERIFY(!model.isBusy());
        settle();
    }

    DeskFixture at;
    FakeFiles files;
    PdfPrinter printer;
    FakeSharer sharer;
    Model model;
};

}  // namespace burrow::test
