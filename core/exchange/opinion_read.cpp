// Questions and answers that come from elsewhere: limits first, then all or nothing.
#include <functional>
#include <map>

#include "exchange/manifest.h"
#include "exchange/opinion_text.h"
#include "exchange/refuse.h"
#include "exchange/tally.h"
#include "exchange/zip_reader.h"
#include "pictures/inspect.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr ZipLimits limits{.files = opinionlimit::photos + 1,
                           .directoryBytes = 16'384,
                           .totalBytes = opinionlimit::photoBytes + opinionlimit::jsonBytes,
                           .ratio = 100,
                           .nameBytes = 160};

/// What the reader of zip files says of bundles, said of these files.
template <class T>
Result<T> ofOpinion(Result<T> result) {
    if (result || result.error().message.id != "bundle.notABundle") return result;
    return refuse({"opinion.neither"});
}

/// The one JSON of a file, and how large everything else in it is.
struct Opened {
    std::string text;
    std::map<std::string, std::uint64_t> others;
};

Result<Opened> openZip(const fs::path& path, const std::string& wanted, const std::string& other) {
    BURROW_TRY(auto zip, ofOpinion(ZipReader::open(path, limits)));
    std::optional<std::string> text;
    Opened opened;
    while (true) {
        BURROW_TRY(const auto item, ofOpinion(zip.next()));
        if (!item) break;
        if (item->name == other) {
            return refuse({wanted == questionName ? "opinion.isAnswer" : "opinion.isQuestion"});
        }
        if (item->name != wanted) {
            opened.others[item->name] = item->bytes;
            continue;
        }
        BURROW_TRY(const auto bytes, zip.readAll(opinionlimit::jsonBytes));
        text = std::string(textOf(bytes));
    }
    if (!text) return refuse({"opinion.neither"});
    opened.text = *std::move(text);
    return opened;
}

using OnPhoto = std::function<Done(const OpinionPhoto&, const Bytes&)>;

/// Gives each photo that the question names, whole, with the right hash, and a picture.
Result<OpinionQuestion> readQuestion(const fs::path& path, const OnPhoto& onPhoto) {
    BURROW_TRY(const auto opened, openZip(path, questionName, answerName));
    BURROW_TRY(auto question, questionFrom(opened.text));
    std::map<std::string, OpinionPhoto> wanted;
    for (const auto& photo : question.photos) wanted[filename::photo(photo.picture)] = photo;
    bool isSame = wanted.size() == opened.others.size();
    for (const auto& [name, photo] : wanted) {
        const auto at = opened.others.find(name);
        isSame = isSame && at != opened.others.end() && at->second == photo.bytes;
    }
    if (!isSame) return refuse({"opinion.otherFiles"});
    BURROW_TRY(auto zip, ZipReader::open(path, limits));
    while (true) {
        BURROW_TRY(const auto item, zip.next());
        if (!item) break;
        const auto at = wanted.find(item->name);
        if (at == wanted.end()) continue;
        BURROW_TRY(const auto bytes, zip.readAll(pictures::Limits().bytes));
        if (Sha256::of(bytes) != at->second.picture) return refuse({"bundle.wrongHash"});
        const auto info = pictures::inspect(bytes);
        if (!info || info->format != pictures::Format::jpeg) return refuse({"opinion.noPicture"});
        BURROW_DO(onPhoto(at->second, bytes));
        wanted.erase(at);
    }
    // The file has changed between two looks.
    if (!wanted.empty()) return refuse({"bundle.damaged"});
    return question;
}

/// Files that go again unless all of them are there.
class Written {
public:
    explicit Written(Files& files) : files_(files) {}
    Written(const Written&) = delete;
    Written& operator=(const Written&) = delete;
    ~Written() {
        for (const auto& path : paths_) static_cast<void>(files_.remove(path));
    }
    Done write(const fs::path& path, const Bytes& bytes) {
        if (!files_.exists(path)) paths_.push_back(path);
        return files_.write(path, bytes);
    }
    void keep() { paths_.clear(); }

private:
    Files& files_;
    std::vector<fs::path> paths_;
};

}  // namespace

Result<OpinionQuestion> peekQuestion(const fs::path& path) {
    return readQuestion(path, [](const OpinionPhoto&, const Bytes&) { return Done(); });
}

Result<OpinionQuestion> openQuestion(const fs::path& path, const fs::path& folder, Files& files) {
    Written written(files);
    BURROW_TRY(auto question,
               readQuestion(path, [&](const OpinionPhoto& photo, const Bytes& bytes) {
                   return written.write(folder / (photo.picture.hex() + ".jpg"), bytes);
               }));
    written.keep();
    return question;
}

Result<OpinionAnswer> readAnswer(const fs::path& path) {
    BURROW_TRY(const auto opened, openZip(path, answerName, questionName));
    if (!opened.others.empty()) return refuse({"opinion.otherFiles"});
    return answerFrom(opened.text);
}

std::optional<OpinionKind> opinionKind(const fs::path& path) {
    auto zip = ZipReader::open(path, limits);
    while (zip) {
        const auto item = zip->next();
        if (!item || !*item) break;
        if ((*item)->name == questionName) return OpinionKind::question;
        if ((*item)->name == answerName) return OpinionKind::answer;
    }
    return std::nullopt;
}

}  // namespace burrow::exchange
