// The document of a book that is taken along, validated against its schema by Python's jsonschema, an
// implementation of JSON Schema draft 2020-12.
#include <QProcess>
#include <QtTest>
#include <set>

#include "exchange/leave.h"
#include "support/assets.h"
#include "support/full_book.h"

using namespace burrow;
using namespace burrow::exchange;
using namespace burrow::test;
using nlohmann::json;

namespace {

const char* const validator = R"(
import json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1], encoding="utf-8"))
Draft202012Validator.check_schema(schema)
document = json.load(open(sys.argv[2], encoding="utf-8"))
errors = list(Draft202012Validator(schema).iter_errors(document))
for error in errors[:5]: print(list(error.absolute_path), error.message[:200])
sys.exit(1 if errors else 0)
)";

/// What the validator says; empty where it has nothing to say.
QString complaintsAbout(const std::filesystem::path& schema,
                        const std::filesystem::path& document) {
    QProcess python;
    python.start(BURROW_PYTHON, {"-c", validator, QString::fromStdString(schema.string()),
                                 QString::fromStdString(document.string())});
    if (!python.waitForFinished(60'000)) return "does not end";
    const auto said = python.readAllStandardOutput() + python.readAllStandardError();
    return python.exitCode() == 0 ? QString() : "wrong: " + QString::fromUtf8(said);
}

}  // namespace

class TestLeavingSchema : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() {
        fillWithEverything(room_);
        const auto report = leave(room_.book, folder_.path(), {}).value();
        QVERIFY(report.events > 19);
        document_ = json::parse(slurp(folder_.path() / "book.json"));
    }

    void documentFitsItsSchema() {
        QCOMPARE(slurp(folder_.path() / "book.schema.json"), std::string(leaveSchema()));
        QCOMPARE(complaintsAbout(folder_.path() / "book.schema.json", folder_.path() / "book.json"),
                 QString());
    }

    /// The schema is no empty promise: what is not in it is refused.
    void schemaRefuses_data() {
        QTest::addColumn<QString>("pointer");
        QTest::addColumn<QByteArray>("value");
        QTest::newRow("unknown member") << "/animals/0/colour" << QByteArray("\"red\"");
        QTest::newRow("unknown field of an event")
            << "/animals/0/events/0/colour" << QByteArray("\"red\"");
        QTest::newRow("word") << "/animals/0/sex" << QByteArray("\"both\"");
        QTest::newRow("day") << "/animals/0/events/0/on_day" << QByteArray("\"8.5.2026\"");
        QTest::newRow("id") << "/animals/0/id" << QByteArray("\"7\"");
        QTest::newRow("version") << "/version" << QByteArray("2");
        QTest::newRow("clock as a number") << "/journal/0/hlc" << QByteArray("116539999999999999");
    }
    void schemaRefuses() {
        QFETCH(QString, pointer);
        QFETCH(QByteArray, value);
        auto changed = document_;
        changed[json::json_pointer(pointer.toStdString())] = json::parse(value.toStdString());
        const auto path = folder_.path() / "changed.json";
        std::ofstream(path) << changed.dump();
        QVERIFY(complaintsAbout(folder_.path() / "book.schema.json", path).startsWith("wrong"));
    }

    /// A new kind or field of events is a row in a table of the core; the schema has to follow.
    void schemaKnowsEveryKindAndField() {
        const auto schema = json::parse(leaveSchema());
        const auto& event = schema["$defs"]["event"]["properties"];
        std::vector<std::string> kinds;
        for (const auto& kind : factKinds()) kinds.emplace_back(kind.name);
        QCOMPARE(event["event"]["enum"].get<std::vector<std::string>>(), kinds);
        for (const auto& field : factFields()) {
            QVERIFY2(event.contains(std::string(field.name)), std::string(field.name).c_str());
            QVERIFY2(leaveDescription().find(
                         "`" + std::string(field.name == "text" ? "note" : field.name) + "`") !=
                         std::string_view::npos,
                     std::string(field.name).c_str());
        }
        QCOMPARE(event.size(), factFields().size() + 4);
        for (const auto& kind : kinds) {
            QVERIFY(leaveDescription().find("`" + kind + "`") != std::string_view::npos);
        }
    }

    /// Every field of every kind stands in the document as it was written down.
    void documentHoldsEverything() {
        const auto& animal = document_["animals"][0];
        QCOMPARE(animal["number"], "214");
        std::set<std::string> kinds;
        std::set<std::string> fields;
        for (const auto& each : document_["animals"]) {
            for (const auto& event : each["events"]) {
                kinds.insert(event["event"].get<std::string>());
                for (const auto& [name, value] : event.items()) fields.insert(name);
            }
        }
        QCOMPARE(kinds.size(), factKinds().size());
        QCOMPARE(fields.size(), factFields().size() + 4);
        // What was corrected and taken back is in the journal only.
        const auto count = [&](const char* kind) {
            return std::count_if(document_["journal"].begin(), document_["journal"].end(),
                                 [&](const json& entry) { return entry["kind"] == kind; });
        };
        QVERIFY(count("amend") == 1 && count("retract") == 1);
        QCOMPARE(document_["journal"].size(),
                 static_cast<std::size_t>(
                     room_.book.connection().integer("SELECT count(*) FROM entry").value()));
        QCOMPARE(document_["room"]["rules"]["feed.interval.adult"], "20-25");
    }

private:
    TestBook room_;
    ScratchFolder folder_;
    json document_;
};

QTEST_GUILESS_MAIN(TestLeavingSchema)
#include "tst_leaving_schema.moc"
