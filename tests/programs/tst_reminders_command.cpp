// `burrow reminders`: what a device would say, for scripts.
#include <QtTest>

#include "programs/burrow.h"

using namespace burrow::test;

namespace {

QString text(const nlohmann::json& value) {
    return QString::fromStdString(value.get<std::string>());
}

}  // namespace

class TestRemindersCommand : public QObject {
    Q_OBJECT

private slots:
    void saysWhatAndWhen() {
        const Shell burrow;
        QCOMPARE(burrow("demo room.book --animals 60 --seed 3 --until 2026-05-08").status, 0);
        const auto before = burrow.bookBytes("room.book");
        const auto noon = burrow("reminders room.book --on 2026-05-08T12:00 --json");
        QCOMPARE(noon.status, 0);
        const auto list = noon.json();
        QVERIFY(list.is_array() && !list.empty() && list.size() <= 3);
        const auto& round = list.back();
        QCOMPARE(text(round["id"]), QString("round"));
        QCOMPARE(text(round["when"]), QString("2026-05-08T16:30:00Z"));  // 18:30 in Berlin
        QCOMPARE(text(round["local"]), QString("2026-05-08T18:30"));
        QVERIFY(round["text"].get<std::string>().find(" to feed") != std::string::npos);
        QVERIFY(!round["subjects"].empty());
        QCOMPARE(text(round["keys"].front()), QString("round 2026-05-08"));
        // The same question has the same answer, and asking writes nothing.
        QCOMPARE(burrow("reminders room.book --on 2026-05-08T12:00 --json").out, noon.out);
        QCOMPARE(burrow.bookBytes("room.book"), before);
        const auto told = burrow("reminders room.book --on 2026-05-08T12:00 --json --told",
                                 {QString::fromStdString("[{\"at\":1778234400000,\"keys\":" +
                                                         round["keys"].dump() + "}]")});
        for (const auto& other : told.json()) QVERIFY(text(other["id"]) != "round");
    }

    void quietHoursHold() {
        const Shell burrow;
        QCOMPARE(burrow("demo room.book --animals 60 --seed 3 --until 2026-05-08").status, 0);
        const auto moved =
            burrow("reminders room.book --on 2026-05-08T06:00 --round 06:30 --json").json();
        QCOMPARE(text(moved.back()["local"]), QString("2026-05-08T08:00"));
        const auto night = burrow("reminders room.book --on 2026-05-08T23:00 --json").json();
        for (const auto& one : night) QCOMPARE(text(one["local"]), QString("2026-05-09T08:00"));
        const auto none =
            burrow("reminders room.book --on 2026-05-08T23:00 --quiet 00:00-00:00 --json").json();
        QCOMPARE(text(none.back()["local"]), QString("2026-05-08T23:00"));
        const auto plain = burrow("reminders room.book --on 2026-05-08T12:00");
        QVERIFY(plain.out.contains("18:30") && plain.out.contains("the round"));
    }

    void oddInput() {
        const Shell burrow;
        QCOMPARE(burrow("demo room.book --animals 3 --until 2026-05-08").status, 0);
        for (const char* words :
             {"reminders room.book --on yesterday", "reminders room.book --round 25:00",
              "reminders room.book --quiet 21:30", "reminders nothing.book"}) {
            const auto run = burrow(words);
            QCOMPARE(run.status, 1);
            QVERIFY2(!run.err.isEmpty() && !run.err.contains('['), words);
        }
    }
};

QTEST_GUILESS_MAIN(TestRemindersCommand)
#include "tst_reminders_command.moc"
