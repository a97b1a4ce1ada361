#include "exchange/bad_rows.h"

#include "base/files.h"

namespace burrow::exchange {

std::string badRowsFile(std::string_view source, std::span<const BadRow> bad,
                        const std::function<std::string(const Message&)>& say) {
    const auto reader = CsvReader::open(source);
    if (!reader) return {};
    const char delimiter = reader->delimiter();
    auto text = reader->rawHeader() + delimiter + "reason\n";
    for (const auto& row : bad) {
        auto reason = say(row.reason);
        if (!row.column.empty()) reason.insert(0, row.column + ": ");
        text += row.raw + delimiter + csvCell(reason, delimiter) + '\n';
    }
    return text;
}

std::filesystem::path badRowsPath(const std::filesystem::path& source) {
    return freePath(source.parent_path(), source.stem().string() + ".bad", ".csv");
}

}  // namespace burrow::exchange
