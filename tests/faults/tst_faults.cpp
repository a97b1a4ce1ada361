// The device fails at every single call of a keeper's session: no book is damaged, nothing that was
// acknowledged is lost, and what went wrong is said. By default every few calls are tried;
// BURROW_FAULTS=all tries every one.
#include <QtTest>

#include <set>

#include "exchange/bring.h"
#include "faults/faulty_vfs.h"
#include "journal/check.h"
#include "journal/hlc.h"
#include "journal/merge.h"
#include "journal/restore.h"
#include "journal/rows.h"
#include "support/assets.h"
#include "support/book.h"
#include "support/long_run.h"

using namespace burrow;
using namespace burrow::test;
namespace fs = std::filesystem;
using storage::Access;

namespace {

/// What a session was told.
struct Ledger {
    std::set<EntryId> acknowledged;
    std::set<EntryId> refused;  ///< of acts that ended in an error, and were said not to be there
    std::vector<Error> errors;
    bool isCreated = false;
    bool isBackedUp = false;
    int deeds = 0;

    template <class T>
    bool note(const Result<T>& done) {
        ++deeds;
        if (!done) errors.push_back(done.error());
        return done.has_value();
    }
};

/// Written but not flushed: nobody can know whether the device has it, and the keeper is told so.
bool isUnsure(const Error& error) { return error.message.id == "book.unsure"; }

/// Everything a keeper does in a small room, with whatever trouble noted and gone on from.
class Session {
public:
    /// Each draws identifiers of its own.
    Session(fs::path path, std::uint64_t seed) : path_(std::move(path)), random_(seed) {}

    void run(Ledger& ledger) {
        ledger_ = &ledger;
        create();
        if (!book_) return;
        log(FactKind::watered);
        log(FactKind::offered);
        amendAndUndo();
        many();
        bringIn();
        backUp(BackupReason::daily);
        mergeFrom("first", false);
        log(FactKind::moulted);
        reopen();
        longNotes();
        mergeFrom("second", true);
        restoreFirst();
        log(FactKind::dampened);
        backUp(BackupReason::asked);
    }

    [[nodiscard]] Surroundings surroundings() { return {clock_, random_, Zone::utc()}; }
    [[nodiscard]] Backups backups() const { return {path_, clock_, Zone::utc()}; }

private:
    void create() {
        auto made = Book::create(path_, "Kiln Row", "KR", surroundings());
        ledger_->isCreated = ledger_->note(made);
        if (!made) return;
        book_ = std::make_unique<Book>(*std::move(made));
        subject_ = SubjectId{book_->newId()};
        Subject subject;
        subject.number = "214";
        subject.species = "Brachypelma hamorii";
        write({SetDraft{ThingType::subject, subject_.uuid, toFields(subject)}});
    }

    /// One act. The ids are drawn beforehand, so that those of a refused act are known.
    void write(std::vector<Draft> drafts) {
        if (!book_) return;  // could not be opened again
        std::vector<EntryId> ids;
        for (auto& draft : drafts) {
            auto* fact = std::get_if<FactDraft>(&draft);
            if (fact == nullptr) continue;
            fact->id = EntryId{book_->newId()};
            ids.push_back(*fact->id);
        }
        const auto done = book_->record(drafts);
        if (ledger_->note(done)) {
            ledger_->acknowledged.insert(done->entries.begin(), done->entries.end());
        } else if (!isUnsure(done.error())) {
            ledger_->refused.insert(ids.begin(), ids.end());
        }
        clock_.set({clock_.now().ms + 60'000});
    }

    FactDraft fact(FactKind kind, std::string text = {}) {
        FactDraft draft{subject_, kind, {}, std::nullopt};
        if (kind == FactKind::offered) draft.body.outcome = Outcome::ate;
        if (!text.empty()) draft.body.text = std::move(text);
        return draft;
    }
    void log(FactKind kind) { write({fact(kind)}); }

    void amendAndUndo() {
        const auto history = burrow::history(*book_, subject_, 1);
        if (ledger_->note(history) && !history->empty()) {
            FactBody body = history->front().body;
            body.text = "on second thoughts";
            write({AmendDraft{history->front().id, body, std::nullopt}});
        }
        const auto undone = book_->undo();
        if (ledger_->note(undone)) {
            const auto& ids = undone->first.entries;
            ledger_->acknowledged.insert(ids.begin(), ids.end());
        }
    }

    void many() {
        std::vector<Draft> drafts;
        for (int i = 0; i < 40; ++i) drafts.emplace_back(fact(FactKind::watered));
        write(std::move(drafts));
    }

    void bringIn() {
        std::string events("code,at,event,note\n");
        for (int i = 0; i < 30; ++i) events += "214,2026-05-01,seen,from a spreadsheet\n";
        const auto brought = exchange::bring(*book_, {{exchange::CsvKind::events, events}}, {});
        if (ledger_->note(brought)) {
            const auto& ids = brought->changes.entries;
            ledger_->acknowledged.insert(ids.begin(), ids.end());
        }
    }

    /// Thirty entries of another device: all of them, or none. May be taken back again.
    void mergeFrom(const std::string& device, bool takesBack) {
        if (!book_) return;
        std::vector<Entry> entries;
        for (int i = 1; i <= 30; ++i) {
            const auto at = Instant{clock_.now().ms + i};
            entries.push_back({EntryId{Uuid::named(device + std::to_string(i))},
                               DeviceId{Uuid::named(device)}, i, i, hlc::pack(at.ms, 0), "watered",
                               subject_.uuid, nlohmann::json::object(), at, at,
                               Zone::utc().dayOf(at), "UTC"});
        }
        std::set<EntryId> ids;
        for (const auto& entry : entries) ids.insert(entry.id);
        const auto merged = mergeAll(entries);
        const bool isIn = ledger_->note(merged);
        if (isIn || !isUnsure(merged.error())) {
            (isIn ? ledger_->acknowledged : ledger_->refused).insert(ids.begin(), ids.end());
        }
        if (!isIn || !takesBack) return;
        if (ledger_->note(takeBackArrival(*book_))) {
            for (const auto& id : ids) ledger_->acknowledged.erase(id);
        }
    }
    Result<MergeReport> mergeAll(const std::vector<Entry>& entries) {
        BURROW_TRY(auto merge, Merge::begin(*book_, {"a file", std::nullopt}));
        for (const auto& entry : entries) BURROW_DO(merge.add(entry));
        return merge.commit();
    }

    void backUp(BackupReason reason) {
        ledger_->isBackedUp |= ledger_->note(backups().make(reason));
    }

    void reopen() {
        book_.reset();
        for (int tries = 0; tries < 2 && !book_; ++tries) {
            auto again = Book::open(path_, Access::readWrite, surroundings());
            if (ledger_->note(again)) book_ = std::make_unique<Book>(*std::move(again));
        }
    }

    void longNotes() {
        if (!book_) return;
        for (int i = 0; i < 3; ++i) write({fact(FactKind::note, std::string(3900, 'x'))});
    }

    void restoreFirst() {
        const auto kept = backups().list();
        if (!ledger_->note(kept) || kept->empty() || !book_) return;
        ledger_->note(restore(backups(), kept->back().file, surroundings()));
    }

    fs::path path_;
    FixedClock clock_{fridayEvening};
    SeededRandom random_;
    Ledger* ledger_ = nullptr;
    std::unique_ptr<Book> book_;
    SubjectId subject_;
};

std::set<EntryId> entriesOf(Book& book) {
    std::set<EntryId> ids;
    for (const auto& [n, entry] : got(entriesAfter(book.connection(), 0, wholeHistory))) {
        ids.insert(entry.id);
    }
    return ids;
}

/// What is wrong with what a session left behind; empty if nothing is.
std::string wrongWith(Session& session, const fs::path& path, const Ledger& ledger,
                      bool mayKeepRefused) {
    if (!ledger.isCreated) {
        // What could not be made leaves nothing in the way of the next try.
        const auto again = Book::create(path, "Kiln Row", "KR", session.surroundings());
        if (again) return {};
        // Where the power went just before it was said, the book may be there, whole.
        if (!mayKeepRefused || again.error().message.id != "book.exists") {
            return "cannot be made again: " + describe(again.error());
        }
    }
    auto book = Book::open(path, Access::readWrite, session.surroundings());
    if (!book) return "cannot be opened: " + describe(book.error());
    const auto report = check(*book);
    if (!report) return "cannot be checked: " + describe(report.error());
    if (!report->isSound()) return "not sound: " + report->findings[0].id;
    auto there = entriesOf(*book);
    for (const auto& id : ledger.refused) {
        if (!mayKeepRefused && there.contains(id)) return "refused, but there";
    }
    // What a restore took out of the book is in the backup that was made first.
    for (const auto& backup : got(session.backups().list())) {
        auto copy = Book::open(backup.file, Access::readOnly, session.surroundings());
        if (!copy) return "backup cannot be opened: " + describe(copy.error());
        if (!check(*copy)->isSound()) return "backup is not sound";
        there.merge(entriesOf(*copy));
    }
    for (const auto& id : ledger.acknowledged) {
        if (!there.contains(id)) return "acknowledged, but lost";
    }
    for (const auto& file : fs::directory_iterator(path.parent_path())) {
        const auto name = file.path().filename().string();
        if (name.ends_with(".part")) return "left behind: " + name;
    }
    const auto after =
        book->record(SetDraft{ThingType::book, book->id().uuid, {{"contact", "after all"}}});
    return after ? std::string() : "cannot be written: " + describe(after.error());
}

}  // namespace

class TestFaults : public QObject {
    Q_OBJECT

private slots:
    void everySessionCallMayFail_data() {
        QTest::addColumn<int>("fault");
        QTest::addColumn<bool>("lasting");
        QTest::addColumn<int>("trouble");
        const auto row = [](const char* title, Fault fault, bool lasting, Trouble trouble) {
            QTest::newRow(title) << static_cast<int>(fault) << lasting << static_cast<int>(trouble);
        };
        row("short write", Fault::shortWrite, false, Trouble::full);
        row("no room once", Fault::noRoom, false, Trouble::full);
        row("no room from then on", Fault::noRoom, true, Trouble::full);
        row("write error", Fault::writeError, false, Trouble::inputOutput);
        row("write errors from then on", Fault::writeError, true, Trouble::inputOutput);
        row("read error", Fault::readError, false, Trouble::inputOutput);
        row("flush error", Fault::syncError, false, Trouble::inputOutput);
        row("flush errors from then on", Fault::syncError, true, Trouble::inputOutput);
        row("cannot open or remove", Fault::openError, false, Trouble::inputOutput);
        row("power cut", Fault::powerCut, true, Trouble::inputOutput);
    }
    void everySessionCallMayFail() {
        QFETCH(int, fault);
        QFETCH(bool, lasting);
        QFETCH(int, trouble);
        const auto words = englishWords();
        const bool all = qEnvironmentVariable("BURROW_FAULTS") == "all";
        const bool cutsPower = static_cast<Fault>(fault) == Fault::powerCut;
        FaultyVfs device;
        long tried = 0;
        long last = 0;
        std::size_t told = 0;
        for (long n = 1;; n += all ? 1 : 1 + n % 7 + n / 8) {
            ScratchFolder folder;
            const auto path = folder.path() / "kiln-row.book";
            Ledger ledger;
            auto session = std::make_unique<Session>(path, 1);
            device.arm(static_cast<Fault>(fault), n, lasting);
            session->run(ledger);
            const bool hasStruck = device.hasStruck();
            Session after(path, 2);
            session.reset();
            if (cutsPower && hasStruck) {
                device.restorePower(static_cast<std::uint64_t>(n));
            }
            device.disarm();
            if (!hasStruck) {
                QVERIFY2(ledger.errors.empty(), "trouble without a fault");
                last = n;
                break;
            }
            ++tried;
            for (const auto& error : ledger.errors) {
                QVERIFY2(words.knows(error.message.id), error.message.id.c_str());
                const bool isTold = static_cast<int>(error.trouble) == trouble ||
                                    // After the first failure others follow from it.
                                    error.trouble == Trouble::notFound ||
                                    error.trouble == Trouble::inputOutput;
                QVERIFY2(isTold,
                         qPrintable(QString("call %1: %2").arg(n).arg(error.message.id.c_str())));
                told += static_cast<int>(error.trouble) == trouble ? 1U : 0U;
            }
            const auto wrong = wrongWith(after, path, ledger, cutsPower);
            QVERIFY2(wrong.empty(), qPrintable(QString("call %1: %2").arg(n).arg(wrong.c_str())));
        }
        qInfo("%ld of %ld calls failed, %zu times it was said", tried, last, told);
        QVERIFY(tried > 5 && told > 0);
    }

    /// A file gets its name only after its bytes are on the device.
    void backupsAreFlushedBeforeTheyAreNamed() {
        FaultyVfs device;
        ScratchFolder folder;
        Session session(folder.path() / "kiln-row.book", 1);
        Ledger ledger;
        device.arm(Fault::powerCut, 1'000'000, true);
        session.run(ledger);
        QVERIFY(ledger.isBackedUp);
        for (const auto& path : device.unflushed()) {
            QVERIFY2(path.find(".part") == std::string::npos, path.c_str());
        }
    }
};

int main(int argc, char** argv) {
    burrow::test::allowLongRun("BURROW_FAULTS");
    TestFaults test;
    return QTest::qExec(&test, argc, argv);
}
#include "tst_faults.moc"
