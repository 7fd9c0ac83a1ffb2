#include "ui/document/autosave.h"

#include <utility>

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QLockFile>
#include <QUndoStack>

#include "core/io/plan_file.h"
#include "ui/document/file_session.h"
#include "ui/document/plan_document.h"

namespace yardcast::ui {

namespace {

QString writeBackup(const QString& file, const Plan& plan)
{
    return QString::fromStdString(writeFileAtomically(corePath(file), writePlan(plan)));
}

bool isFar(const QString& backup)
{
    return QFileInfo(backup).absolutePath() == QFileInfo(backupFolder()).absoluteFilePath();
}

}  // namespace

Autosave::Autosave(PlanDocument& document, FileSession& session, QObject* parent)
    : QObject(parent), document_(document), session_(session),
      owner_(QString::number(QCoreApplication::applicationPid())), startedAt_(QDateTime::currentDateTime())
{
    pool_.setMaxThreadCount(1);
    due_.setSingleShot(true);
    due_.setInterval(kDelayMs);
    connect(&due_, &QTimer::timeout, this, &Autosave::start);
    connect(&document, &PlanDocument::committedChanged, this, &Autosave::changed);
    connect(&session, &FileSession::saved, this, &Autosave::removeOwn);
    connect(&session, &FileSession::leaving, this, &Autosave::removeOwn);
}

Autosave::~Autosave() { pool_.waitForDone(); }

void Autosave::adopt(const Backup& restored) { adopted_.append(restored.file); }

void Autosave::flush()
{
    if (due_.isActive()) {
        due_.stop();
        start();
    }
    pool_.waitForDone();
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
    if (again_ || writing_) flush();
}

void Autosave::changed()
{
    // Not started anew by each change: a busy hand must not put the backup off for ever.
    if (!due_.isActive()) due_.start();
}

void Autosave::start()
{
    if (document_.undoStack()->isClean()) {
        if (!backup_.isEmpty() && adopted_.isEmpty()) removeOwn();
        return;
    }
    if (writing_) {
        again_ = true;
        return;
    }
    const bool beside = !session_.isUntitled() && session_.ownsLock();
    QString first = backup_;
    QString second;
    if (first.isEmpty()) {
        if (session_.isUntitled()) {
            first = untitledBackup(startedAt_, owner_);
            for (int number = 2; QFileInfo::exists(first); ++number) {
                first = untitledBackup(startedAt_, owner_ + "-" + QString::number(number));
            }
        } else if (beside) {
            first = nextSibling();
        }
    }
    if (!session_.isUntitled()) {
        second = farBackup(session_.path(), owner_);
        if (first.isEmpty()) first = std::exchange(second, {});
    }
    writing_ = true;
    pool_.start([this, first, second, plan = document_.committed()] {
        QString used = first;
        if (isFar(first)) QDir().mkpath(backupFolder());
        QString reason = writeBackup(first, *plan);
        if (!reason.isEmpty() && !second.isEmpty() && second != first) {
            QDir().mkpath(backupFolder());
            used = second;
            reason = writeBackup(second, *plan);
        }
        QMetaObject::invokeMethod(this, [this, used, reason] {
            writing_ = false;
            finished(used, reason);
            if (std::exchange(again_, false)) start();
        });
    });
}

void Autosave::finished(const QString& backup, const QString& reason)
{
    if (!reason.isEmpty()) {
        if (!std::exchange(toldFailure_, true)) emit failed(reason);
        return;
    }
    toldFailure_ = false;
    if (backup_ != backup) {
        if (!backup_.isEmpty()) adopted_.append(backup_);
        backup_ = backup;
        backupLock_.reset();
        if (isFar(backup)) {
            backupLock_ = std::make_unique<QLockFile>(lockOfBackup(backup));
            backupLock_->setStaleLockTime(0);
            backupLock_->tryLock(0);
        }
    }
    emit written(backup);
}

void Autosave::removeOwn()
{
    due_.stop();
    again_ = false;
    // A write in progress would bring the backup back after it was removed: its end is awaited and its name taken.
    pool_.waitForDone();
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
    backupLock_.reset();
    if (!backup_.isEmpty()) deleteBackup(backup_);
    for (const QString& file : std::as_const(adopted_)) deleteBackup(file);
    backup_.clear();
    adopted_.clear();
}

QString Autosave::nextSibling() const
{
    for (int number = 1; number <= kMostBackupsOfOneFile; ++number) {
        const QString name = siblingBackup(session_.path(), number);
        if (!QFileInfo::exists(name)) return name;
    }
    return {};
}

}  // namespace yardcast::ui
