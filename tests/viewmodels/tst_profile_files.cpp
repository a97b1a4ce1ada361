// Species given away as a file, and taken in from one.
#include <QFile>

#include "fake/fake_sharer.h"
#include "husbandry/profile_share.h"
#include "room/own_profiles.h"
#include "viewmodels/bringmodel.h"
#include "viewmodels/keeping.h"
#include "viewmodels/profilefiles.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() : sharer(at.folder.path() / "shared") {
        at.openRoom();
        std::filesystem::create_directories(folder());
        std::filesystem::create_directories(sharer.folder());
        files.setDesk(&at.desk);
        files.setSharer(&sharer);
    }
    [[nodiscard]] std::filesystem::path folder() const { return at.folder.path() / "Documents"; }
    [[nodiscard]] QUrl url(const std::filesystem::path& path) const {
        return QUrl::fromLocalFile(QString::fromStdString(path.string()));
    }
    [[nodiscard]] static std::string text(const std::filesystem::path& path) {
        QFile file(QString::fromStdString(path.string()));
        return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
    }
    void takeIn(const std::string& content) {
        const auto path = folder() / "in.json";
        QFile file(QString::fromStdString(path.string()));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(content));
        file.close();
        files.takeIn(url(path));
        at.settle();
    }
    [[nodiscard]] Profile shipped(const char* name) const {
        return *at.reference.profiles.find(name);
    }
    /// Like a shipped one, under a name of its own.
    [[nodiscard]] Profile own(const char* name) const {
        auto profile = shipped("Grammostola rosea");
        profile.name = name;
        profile.otherNames.clear();
        profile.tradeNames.clear();
        return profile;
    }
    [[nodiscard]] std::string fileOf(const std::vector<Profile>& profiles) const {
        return sharedProfilesText(profiles);
    }

    DeskFixture at;
    FakeSharer sharer;
    ProfileFiles files;
};

}  // namespace

class TestProfileFiles : public QObject {
    Q_OBJECT

private slots:
    void oneIsGivenAway() {
        Bench bench;
        bench.files.setProperty("species", "Mexican red knee");
        bench.files.saveTo(bench.url(bench.folder()));
        QVERIFY2(bench.files.doneText().contains("Mexican-red-knee.json"),
                 qPrintable(bench.files.doneText()));
        const auto read = sharedProfiles(Bench::text(bench.folder() / "Mexican-red-knee.json"));
        QVERIFY(read.has_value());
        QVERIFY(read->front() == bench.shipped("Brachypelma hamorii"));
        bench.files.saveTo(bench.url(bench.folder()));  // beside the first
        QVERIFY(std::filesystem::exists(bench.folder() / "Mexican-red-knee-2.json"));
        bench.files.share();
        QCOMPARE(bench.sharer.shared().size(), std::size_t{1});
    }

    void allOwnAreGivenAway() {
        Bench bench;
        QCOMPARE(bench.files.ownCount(), 0);
        bench.files.saveTo(bench.url(bench.folder()));
        QVERIFY(bench.files.trouble().contains("no species profile of your own"));
        bench.takeIn(bench.fileOf({bench.own("Grammostola porteri"), bench.own("Novum genus")}));
        QCOMPARE(bench.files.ownCount(), 2);
        bench.files.saveTo(bench.url(bench.folder()));
        QVERIFY(bench.files.trouble().isEmpty());
        const auto read = sharedProfiles(Bench::text(bench.folder() / "Kiln-Row-species.json"));
        QVERIFY(read.has_value());
        QCOMPARE(read->size(), std::size_t{2});
    }

    void whatBecameOfThemIsSaid() {
        Bench bench;
        auto hamorii = bench.shipped("Brachypelma hamorii");
        hamorii.venom.value = Venom::notable;
        auto novum = bench.own("Novum genus");
        bench.takeIn(bench.fileOf({novum, hamorii}));
        QCOMPARE(bench.files.doneText(), QString("2 species read"));
        QVERIFY(bench.files.doneDetail().contains("New: Novum genus"));
        QVERIFY(bench.files.doneDetail().contains("Instead of the shipped: Brachypelma hamorii"));
        QCOMPARE(bench.at.desk.doneText(), QString("species taken in"));
        novum.damp.value = Damp::swamp;
        bench.takeIn(bench.fileOf({novum, hamorii}));
        QVERIFY(bench.files.doneDetail().contains("Instead of your earlier: Novum genus"));
        QVERIFY(bench.files.doneDetail().contains("Here already: Brachypelma hamorii"));
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(bench.at.desk.profiles().find("Novum genus")->damp.value != Damp::swamp);
    }

    void filesThatCantBeUsedChangeNothing_data() {
        QTest::addColumn<QString>("content");
        QTest::addColumn<QString>("words");
        QTest::newRow("none") << ""
                              << "holds no species profiles";
        QTest::newRow("no list") << "{\"burrowbook\": \"species profiles\"}"
                                 << "no species";
        QTest::newRow("later") << "{\"burrowbook\": \"species profiles\", \"version\": 2}"
                               << "later version";
        QTest::newRow("half a profile") << "{\"name\": \"Novum genus\"}"
                                        << "Novum genus";
    }
    void filesThatCantBeUsedChangeNothing() {
        QFETCH(QString, content);
        QFETCH(QString, words);
        Bench bench;
        bench.takeIn(content.toStdString());
        QVERIFY2(bench.at.desk.trouble().contains(words), qPrintable(bench.at.desk.trouble()));
        QVERIFY(bench.files.doneText().isEmpty());
        QCOMPARE(bench.files.ownCount(), 0);
    }

    void aFileThatIsGoneIsSaid() {
        Bench bench;
        bench.files.takeIn(bench.url(bench.folder() / "nothing.json"));
        bench.at.settle();
        QVERIFY(!bench.at.desk.trouble().isEmpty());
        bench.sharer.setNobodyThere();
        bench.files.setProperty("species", "Mexican red knee");
        bench.files.share();
        QVERIFY(!bench.files.trouble().isEmpty());
    }

    /// Bringing in a table knows the keeper's own species too.
    void tablesKnowThem() {
        Bench bench;
        bench.takeIn(bench.fileOf({bench.own("Novum genus")}));
        const auto path = bench.folder() / "list.csv";
        QFile file(QString::fromStdString(path.string()));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(
            "Nr.,Scientific name,Born\n501,Novum genus,14.3.2021\n502,Novum genus,1.3.2021\n");
        file.close();
        BringModel model;
        model.setDesk(&bench.at.desk);
        model.addFiles({bench.url(path)});
        bench.at.settle();
        QCOMPARE(model.step(), BringModel::Step::Ready);  // nothing has to be asked
        QVERIFY2(model.contents().contains("2 animals"), qPrintable(model.contents()));
    }

    void withoutABookNothingHappens() {
        ProfileFiles files;
        QCOMPARE(files.ownCount(), 0);
        QVERIFY(!files.canShare());
        files.share();
        files.saveTo(QUrl("file:///nowhere"));
        files.takeIn(QUrl("file:///nowhere"));
        QVERIFY(files.trouble().isEmpty());
    }
};

QTEST_GUILESS_MAIN(TestProfileFiles)
#include "tst_profile_files.moc"
