#pragma once

#include <QDateTime>
#include <QList>
#include <QString>

/// Where backups of unsaved work lie and which of them are worth offering. A backup is a whole plan file, so that it
/// can also be opened by hand.
namespace yardcast::ui {

struct Backup {
    QString file;         ///< the backup itself
    QString of;           ///< the plan file it belongs to; empty: a plan that was never saved
    QDateTime writtenAt;  ///< local time
    friend bool operator==(const Backup&, const Backup&) = default;
};

inline constexpr int kMostBackupsOfOneFile = 20;

/// ".NAME.autosave" beside the plan file; from the second on ".NAME.autosave2" and so on.
QString siblingBackup(const QString& planFile, int number = 1);
/// The folder for backups of plans without a file, and of files in folders that cannot be written. Not created.
QString backupFolder();
/// Beside no file: in `backupFolder()`, told apart by the full path of the plan file; of one owner (a process).
QString farBackup(const QString& planFile, const QString& owner);
/// A name in `backupFolder()` for a plan that has no file yet.
QString untitledBackup(const QDateTime& startedAt, const QString& owner);
/// The lock beside a backup in `backupFolder()`: held while the window that writes it lives.
QString lockOfBackup(const QString& backup);
/// The lock beside a plan file, ".NAME.lock": held while a window has it open.
QString lockOfPlan(const QString& planFile);

/// Backups of this file that are newer than it, hold something else than it, and belong to no living window; newest
/// first. `ownsPlanLock`: the caller holds the lock of the file, so what lies beside it belongs to nobody else.
QList<Backup> backupsOf(const QString& planFile, bool ownsPlanLock);
/// Backups of plans that were never saved and whose window no longer lives; newest first.
QList<Backup> untitledBackups();
/// Deletes one that the person asked to delete, with its lock file. True when it is gone.
bool deleteBackup(const QString& backup);

}  // namespace yardcast::ui
