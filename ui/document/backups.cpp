#include "ui/document/backups.h"

#include <algorithm>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLockFile>
#include <QStandardPaths>

namespace yardcast::ui {

namespace {

QString absolute(const QString& file) { return QFileInfo(file).absoluteFilePath(); }

QString pathMark(const QString& planFile)
{
    return QString::fromLatin1(QCryptographicHash::hash(absolute(planFile).toUtf8(), QCryptographicHash::Sha256)
                                   .toHex()
                                   .left(16));
}

/// Enough of the name to be recognised by a person who looks into the folder, within what file systems allow.
QString shortName(const QString& planFile) { return QFileInfo(planFile).completeBaseName().left(40); }

bool belongsToALivingWindow(const QString& backup)
{
    const QString name = lockOfBackup(backup);
    if (!QFileInfo::exists(name)) return false;
    QLockFile lock(name);
    lock.setStaleLockTime(0);
    if (lock.tryLock(0)) return false;
    return lock.error() == QLockFile::LockFailedError;
}

bool sameContent(const QString& a, const QString& b)
{
    QFile first(a);
    QFile second(b);
    if (first.size() != second.size()) return false;
    return first.open(QIODevice::ReadOnly) && second.open(QIODevice::ReadOnly) && first.readAll() == second.readAll();
}

void newestFirst(QList<Backup>& backups)
{
    std::ranges::stable_sort(backups, [](const Backup& a, const Backup& b) { return a.writtenAt > b.writtenAt; });
}

}  // namespace

QString siblingBackup(const QString& planFile, int number)
{
    const QFileInfo info(planFile);
    const QString suffix = number > 1 ? QString::number(number) : QString();
    return QDir(info.absolutePath()).filePath("." + info.fileName() + ".autosave" + suffix);
}

QString backupFolder()
{
    return QDir(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation)).filePath("backups");
}

QString farBackup(const QString& planFile, const QString& owner)
{
    return QDir(backupFolder())
        .filePath("of-" + pathMark(planFile) + "-" + shortName(planFile) + "-" + owner + ".autosave");
}

QString untitledBackup(const QDateTime& startedAt, const QString& owner)
{
    return QDir(backupFolder())
        .filePath("untitled-" + startedAt.toString("yyyyMMdd-HHmmss") + "-" + owner + ".autosave");
}

QString lockOfBackup(const QString& backup) { return backup + ".lock"; }

QString lockOfPlan(const QString& planFile)
{
    const QFileInfo info(planFile);
    return QDir(info.absolutePath()).filePath("." + info.fileName() + ".lock");
}

QList<Backup> backupsOf(const QString& planFile, bool ownsPlanLock)
{
    QStringList candidates;
    if (ownsPlanLock) {
        for (int number = 1; number <= kMostBackupsOfOneFile; ++number) {
            candidates.append(siblingBackup(planFile, number));
        }
    }
    const QDir folder(backupFolder());
    for (const QString& name : folder.entryList({"of-" + pathMark(planFile) + "-*.autosave"}, QDir::Files)) {
        candidates.append(folder.filePath(name));
    }

    const QFileInfo plan(planFile);
    QList<Backup> found;
    for (const QString& candidate : candidates) {
        const QFileInfo info(candidate);
        if (!info.isFile()) continue;
        if (plan.exists() && info.lastModified() <= plan.lastModified()) continue;
        if (belongsToALivingWindow(candidate) || sameContent(candidate, planFile)) continue;
        found.append({candidate, absolute(planFile), info.lastModified()});
    }
    newestFirst(found);
    return found;
}

QList<Backup> untitledBackups()
{
    const QDir folder(backupFolder());
    QList<Backup> found;
    for (const QString& name : folder.entryList({"untitled-*.autosave"}, QDir::Files)) {
        const QString file = folder.filePath(name);
        if (!belongsToALivingWindow(file)) found.append({file, {}, QFileInfo(file).lastModified()});
    }
    newestFirst(found);
    return found;
}

bool deleteBackup(const QString& backup)
{
    if (!belongsToALivingWindow(backup)) QFile::remove(lockOfBackup(backup));
    return QFile::remove(backup) || !QFileInfo::exists(backup);
}

}  // namespace yardcast::ui
