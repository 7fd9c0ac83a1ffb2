#include "ui/window/written_files.h"

#include <QCoreApplication>
#include <QDesktopServices>
#include <QDir>
#include <QFileInfo>
#include <QUrl>

#include "ui/document/file_session.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"

namespace yardcast::ui {

namespace {
struct WrittenFiles {
    Q_DECLARE_TR_FUNCTIONS(WrittenFiles)
};
}  // namespace

QString proposedFile(const FileSession& session, const QString& about, const QString& extension)
{
    const QString path = session.path();
    const QString name = path.isEmpty() ? WrittenFiles::tr("kitchen") : QFileInfo(path).completeBaseName();
    const QDir folder = path.isEmpty() ? QDir(documentsFolder()) : QFileInfo(path).dir();
    return folder.filePath((about.isEmpty() ? name : name + QLatin1Char(' ') + about) + QLatin1Char('.') + extension);
}

QString withEnding(const QString& file, const QString& extension)
{
    return QFileInfo(file).suffix().isEmpty() ? file + QLatin1Char('.') + extension : file;
}

void tellWritten(MessageBar& messages, const QString& id, bool written, const QString& file, const QString& reason,
                 const std::function<void()>& again)
{
    const QString path = QDir::toNativeSeparators(file);
    if (written) {
        messages.show({id, Message::Weight::note, WrittenFiles::tr("Written: %1").arg(path), {},
                       {{WrittenFiles::tr("Open it"), [file] { QDesktopServices::openUrl(QUrl::fromLocalFile(file)); }}},
                       {}});
        return;
    }
    messages.show({id, Message::Weight::stop,
                   WrittenFiles::tr("%1 was not written: %2. What stood there is as it was. Choose a folder that you may "
                                    "write to, or make room.")
                       .arg(path, reason),
                   {}, {{WrittenFiles::tr("Save it elsewhere..."), again}}, {}});
}

}  // namespace yardcast::ui
