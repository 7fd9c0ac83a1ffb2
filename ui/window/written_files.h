#pragma once

#include <functional>

#include <QString>

namespace yardcast::ui {

class FileSession;
class MessageBar;

/// Where a file for other programs is proposed: beside the plan, by its name; `about` comes behind it ("mould C1").
QString proposedFile(const FileSession& session, const QString& about, const QString& extension);
/// With the ending, where the person gave none.
QString withEnding(const QString& file, const QString& extension);
/// Says in the message bar what was written and opens it on request; or what was not, why, and `again` elsewhere.
void tellWritten(MessageBar& messages, const QString& id, bool written, const QString& file, const QString& reason,
                 const std::function<void()>& again);

}  // namespace yardcast::ui
