// The species that are known, found by any of their names, and each fact with its source.
#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "room/own_profiles.h"
#include "viewmodels/other_hand.h"
#include "viewmodels/profilemodel.h"
#include "viewmodels/speciesmodel.h"

using namespace burrow;
using namespace burrow::test;

class TestSpecies : public QObject {
    Q_OBJECT

private slots:
    void areFoundByAnyName_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("name");
        QTest::newRow("name") << "brachypelma HAMORII"
                              << "Brachypelma hamorii";
        QTest::newRow("part") << "pulchra"
                              << "Grammostola pulchra";
        QTest::newRow("trade name") << "mexican red knee"
                                    << "Brachypelma hamorii";
        QTest::newRow("misspelling") << "hamorri"
                                     << "Brachypelma hamorii";
        QTest::newRow("spaces") << "  giant   forest scorpion "
                                << "Heterometrus spinifer";
    }
    void areFoundByAnyName() {
        QFETCH(QString, typed);
        QFETCH(QString, name);
        DeskFixture at;
        at.openRoom();
        SpeciesModel species;
        const QAbstractItemModelTester tester(&species);
        species.setDesk(&at.desk);
        species.setFilter(typed);
        QVERIFY2(names(species).contains(name), qPrintable(names(species).join(", ")));
        QVERIFY(species.count() < 5);
    }

    void allAreThereUntilSomethingIsTyped() {
        DeskFixture at;
        SpeciesModel species;
        const QAbstractItemModelTester tester(&species);
        species.setFilter("no such species");
        species.setDesk(&at.desk);
        QCOMPARE(species.count(), 0);
        QCOMPARE(species.summary(), QString("0 species"));
        QSignalSpy resets(&species, &QAbstractItemModel::modelReset);
        species.setFilter("");
        QCOMPARE(static_cast<std::size_t>(species.count()), at.reference.profiles.all().size());
        QCOMPARE(resets.count(), 0);
    }

    void saysHowManyAreKeptHere() {
        DeskFixture at;
        at.openRoom();
        SpeciesModel species;
        species.setDesk(&at.desk);
        species.setFilter("Brachypelma hamorii");
        QCOMPARE(note(species), QString("Ground-dwelling tarantula. One kept here"));
        OtherHand hand(at);
        hand.add("402", "Mexican red knee");  // recorded under another of its names
        QCOMPARE(note(species), QString("Ground-dwelling tarantula. 2 kept here"));
        species.setFilter("Caribena versicolor");  // was sold
        QVERIFY(!note(species).contains("kept"));
    }

    void profilesHaveASourceForEachFact() {
        DeskFixture at;
        for (const auto& profile : at.reference.profiles.all()) {
            ProfileModel model;
            model.setDesk(&at.desk);
            model.setSpecies(QString::fromStdString(profile.name));
            QVERIFY(!model.isMissing());
            QVERIFY(model.lines().size() >= 12);
            for (const auto& entry : model.lines()) {
                const auto line = entry.toMap();
                const auto name = line.value("name").toString();
                QVERIFY(!line.value("value").toString().isEmpty());
                QVERIFY2(!name.startsWith('['), qPrintable(name));
                const bool isAdvice = name == "Housing" || name == "Handling" || name == "Law";
                const bool isName = name == "Other names" || name == "In the trade";
                if (isAdvice || isName) continue;
                QVERIFY2(!line.value("source").toString().isEmpty(), qPrintable(name));
            }
        }
    }

    void whatCanHurtComesFirst() {
        DeskFixture at;
        ProfileModel model;
        model.setDesk(&at.desk);
        model.setSpecies("Poecilotheria metallica");
        QVERIFY(model.cautions().size() >= 2);
        const auto gravest = model.cautions().at(0).toMap().value("word").toString();
        QVERIFY2(gravest.startsWith("strong venom", Qt::CaseInsensitive), qPrintable(gravest));
        QVERIFY(gravest.contains("medical care"));
        for (const auto& caution : model.cautions()) {
            QVERIFY(!caution.toMap().value("advice").toString().isEmpty());
        }
        model.setSpecies("Heterometrus spinifer");
        QStringList lines;
        for (const auto& line : model.lines()) lines.append(line.toMap().value("name").toString());
        QVERIFY(lines.contains("Body length") && !lines.contains("Leg span"));
        model.setSpecies("Damon diadema");
        QCOMPARE(model.kind(), QString("Climbing whip spider"));
    }

    void theKeepersOwnAreKnownToo() {
        DeskFixture at;
        at.openRoom();
        auto own = *at.reference.profiles.find("Grammostola rosea");
        own.name = "Grammostola porteri";  // shipped as an old name of G. rosea
        own.otherNames.clear();
        own.tradeNames = {"own rose"};
        OtherHand hand(at);
        QVERIFY(keepProfiles(hand.book(), at.reference.profiles, std::vector{own}).has_value());
        at.desk.refresh();
        at.settle();
        QVERIFY(at.desk.profiles().find("own rose") != nullptr);
        SpeciesModel species;
        species.setDesk(&at.desk);
        QCOMPARE(static_cast<std::size_t>(species.count()), at.reference.profiles.all().size() + 1);
        ProfileModel model;
        model.setDesk(&at.desk);
        model.setSpecies("Grammostola porteri");
        QCOMPARE(model.name(), QString("Grammostola porteri"));
    }

    void strangersAreSaidToBeUnknown() {
        DeskFixture at;
        ProfileModel model;
        QVERIFY(model.isMissing());
        model.setDesk(&at.desk);
        model.setSpecies("Nobody nullus");
        QVERIFY(model.isMissing());
        QCOMPARE(model.name(), QString("Nobody nullus"));
        QVERIFY(model.lines().isEmpty() && model.cautions().isEmpty());
        model.setSpecies("Mexican redknee");
        QCOMPARE(model.name(), QString("Brachypelma hamorii"));
    }

private:
    static QStringList names(const SpeciesModel& species) {
        QStringList names;
        for (int i = 0; i < species.rowCount(); ++i) {
            names.append(species.data(species.index(i), SpeciesModel::NameRole).toString());
        }
        return names;
    }
    static QString note(const SpeciesModel& species) {
        return species.data(species.index(0), SpeciesModel::NoteRole).toString();
    }
};

QTEST_GUILESS_MAIN(TestSpecies)
#include "tst_species.moc"
