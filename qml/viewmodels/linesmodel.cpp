#include "viewmodels/linesmodel.h"

namespace burrow {

void LinesModel::show(std::vector<LineRow> rows) {
    const auto before = rows_.size();
    bring(rows_, std::move(rows));
    if (rows_.size() != before) emit countChanged();
}

QVariant LinesModel::data(const QModelIndex& index, int role) const {
    const auto* row = rowAt(rows_, index);
    if (row == nullptr) return {};
    switch (role) {
        case KeyRole: return row->key;
        case HeadingRole: return row->heading;
        case NoteRole: return row->note;
        case TagRole: return row->tag;
        case NameRole: return row->name;
        case ValueRole: return row->value;
        case SubRole: return row->sub;
        case SubjectRole: return row->subject;
        case EstimatedRole: return row->estimated;
        case MarkedRole: return row->marked;
        default: return {};
    }
}

QHash<int, QByteArray> LinesModel::roleNames() const {
    return {{KeyRole, "key"},      {HeadingRole, "heading"}, {NoteRole, "note"},
            {TagRole, "tag"},      {NameRole, "name"},       {ValueRole, "value"},
            {SubRole, "sub"},      {SubjectRole, "subject"}, {EstimatedRole, "estimated"},
            {MarkedRole, "marked"}};
}

}  // namespace burrow
