// A moult to be saved: the fixture's book, a camera and a darkroom over files that may refuse.
#pragma once

#include <QFile>

#include "fake/fake_files.h"
#include "fake/fake_photographer.h"
#include "fake/fake_scanner.h"
#include "files/developer.h"
#include "support/moult_photo.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/moultmodel.h"

namespace burrow::test {

class MoultBench {
public:
    MoultBench() : darkroom(files, developer) {
        at.openRoom();
        model.setDesk(&at.desk);
        model.setDarkroom(&darkroom);
        model.setPhotographer(&photographer);
        model.setScanner(&scanner);
        model.setSubject(at.id(at.hamorii));
    }

    /// Photos from the camera, each another picture.
    void photograph(int count = 1) {
        for (int i = 0; i < count; ++i) {
            const auto before = model.photos().size();
            photographer.prepare(moultPhoto({400, 300}, 60 + 10 * shade_++));
            model.takePhoto();
            QTRY_COMPARE(model.photos().size(), before + 1);
        }
    }

    /// A file in the fixture's folder.
    QUrl file(const char* name, const QByteArray& bytes) {
        const auto path = QString::fromStdString((at.folder.path() / name).string());
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly)) return {};
        file.write(bytes);
        return QUrl::fromLocalFile(path);
    }

    void addFile(const QUrl& url) {
        model.addFiles({url});
        QTRY_VERIFY(!model.isDeveloping());
    }

    void save() {
        model.save();
        QTRY_VERIFY(!model.isBusy());
        at.settle();
    }

    std::vector<Fact> facts(FactKind kind, std::optional<SubjectId> subject = std::nullopt) {
        auto all = at.history(subject.value_or(at.hamorii));
        std::erase_if(all, [kind](const Fact& fact) { return fact.kind != kind; });
        return all;
    }

    DeskFixture at;
    FakeFiles files;
    QtDeveloper developer;
    Darkroom darkroom;
    FakePhotographer photographer;
    FakeScanner scanner;
    MoultModel model;

private:
    int shade_ = 0;
};

}  // namespace burrow::test
