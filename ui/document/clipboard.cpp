#include "ui/document/clipboard.h"

#include "core/io/plan_file.h"

namespace yardcast::ui {

namespace {
/// Nobody copies a book to paste parts from; keeps a stray large text from being parsed in the event loop.
constexpr qsizetype kLargestText = 4 << 20;
}

std::unique_ptr<QMimeData> partsToMime(const Plan& plan, const QStringList& ids)
{
    std::vector<Part> parts;
    for (const PartPtr& part : plan.parts) {
        if (ids.contains(QString::fromStdString(part->id))) parts.push_back(*part);
    }
    if (parts.empty()) return nullptr;
    const std::string text = writeParts(parts);
    auto data = std::make_unique<QMimeData>();
    data->setData(kPartsMime, QByteArray::fromStdString(text));
    data->setText(QString::fromStdString(text));
    return data;
}

std::vector<Part> partsFromMime(const QMimeData* data)
{
    if (!mayHoldParts(data)) return {};
    const QByteArray bytes = data->hasFormat(kPartsMime) ? data->data(kPartsMime) : data->text().toUtf8();
    if (bytes.size() > kLargestText) return {};
    return readParts(bytes.toStdString());
}

bool mayHoldParts(const QMimeData* data)
{
    if (!data) return false;
    if (data->hasFormat(kPartsMime)) return true;
    if (!data->hasText()) return false;
    const QString start = data->text().left(64).trimmed();
    return start.startsWith('{') || start.startsWith('[');
}

}  // namespace yardcast::ui
