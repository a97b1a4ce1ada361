// A shared folder, visited by the app and by another phone.
#include "exchange/share.h"
#include "viewmodels/foldershare.h"
#include "viewmodels/two_phones.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Sharing {
public:
    Sharing()
        : folder(phones.at.folder.path() / "shared"),
          settings(QString::fromStdString((phones.at.folder.path() / "s.ini").string())),
          share(phones.at.desk, settings, phones.darkroom) {
        std::filesystem::create_directories(folder);
    }
    [[nodiscard]] QUrl url() const {
        return QUrl::fromLocalFile(QString::fromStdString(folder.string()));
    }
    void visitFromTheOther() {
        QVERIFY(exchange::visitSharedFolder(*phones.other, folder, phones.files, {}));
    }
    [[nodiscard]] std::size_t residents() { return phones.at.desk.room()->residents().size(); }

    TwoPhones phones;
    std::filesystem::path folder;
    Settings settings;
    FolderShare share;
};

}  // namespace

class TestFolderShare : public QObject {
    Q_OBJECT

private slots:
    void bothBecomeAlike() {
        Sharing s;
        QCOMPARE(s.share.folder(), QString());
        QCOMPARE(s.share.state(), QString());
        s.phones.addThere("501", "Grammostola pulchra");
        s.visitFromTheOther();
        s.share.choose(s.url());
        QVERIFY(s.share.isVisiting());
        QTRY_VERIFY(!s.share.isVisiting());
        QCOMPARE(s.share.trouble(), QString());
        s.phones.at.settle();
        QCOMPARE(s.residents(), std::size_t{5});
        QVERIFY2(s.share.state().startsWith("Alike"), qPrintable(s.share.state()));
        QCOMPARE(s.share.outcome().first().toMap()["value"].toString(), QString("One entry"));
    }

    void whatOthersWriteIsNoticed() {
        Sharing s;
        s.share.choose(s.url());
        QTRY_VERIFY(!s.share.isVisiting());
        s.phones.addThere("502", "Brachypelma hamorii");
        s.visitFromTheOther();
        QTRY_COMPARE_WITH_TIMEOUT(s.residents(), std::size_t{5}, 15'000);
    }

    void aFolderThatIsGoneSaysSo() {
        Sharing s;
        s.share.choose(s.url());
        QTRY_VERIFY(!s.share.isVisiting());
        std::filesystem::remove_all(s.folder);
        s.share.visit();
        QTRY_VERIFY(!s.share.isVisiting());
        QVERIFY2(!s.share.trouble().isEmpty() && !s.share.trouble().startsWith('['),
                 qPrintable(s.share.trouble()));
        QVERIFY(s.phones.at.desk.trouble().isEmpty());
        s.share.leave();
        QCOMPARE(s.share.folder(), QString());
        QCOMPARE(s.share.trouble(), QString());
    }

    void theInventedRoomIsNeverShared() {
        Sharing s;
        s.share.choose(s.url());
        QTRY_VERIFY(!s.share.isVisiting());
        s.phones.at.desk.open(s.phones.at.path, true);
        s.phones.at.settle();
        QCOMPARE(s.share.folder(), QString());
        s.share.visit();
        QVERIFY(!s.share.isVisiting());
    }
};

QTEST_MAIN(TestFolderShare)
#include "tst_folder_share.moc"
