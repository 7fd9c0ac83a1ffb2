#include "ui/document/file_session.h"

#include <utility>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QFileSystemWatcher>
#include <QLockFile>
#include <QUndoStack>

#include "ui/document/backups.h"
#include "ui/document/plan_document.h"

namespace yardcast::ui {

namespace {

/// A file that is written in pieces by somebody else is looked at when it has come to rest.
constexpr int kLookAfterMs = 300;

QByteArray markOf(const QByteArray& text) { return QCryptographicHash::hash(text, QCryptographicHash::Sha256); }

QString withExtension(const QString& file)
{
    return QFileInfo(file).suffix().isEmpty() ? file + ".yardplan" : file;
}

bool hasStop(const std::vector<Finding>& problems)
{
    for (const Finding& problem : problems) {
        if (problem.severity == Severity::stop) return true;
    }
    return false;
}

/// The text of the file and what reading made of it.
struct Read {
    OpenOutcome outcome;
    std::optional<Plan> plan;
    QByteArray text;
};

Read read(const QString& file)
{
    Read result;
    FileText bytes = readFile(corePath(file));
    if (!bytes.text) {
        result.outcome.reason = QString::fromStdString(bytes.error);
        return result;
    }
    PlanReading reading = readPlan(*bytes.text);
    result.text = QByteArray::fromStdString(*bytes.text);
    result.outcome.problems = std::move(reading.problems);
    result.outcome.opened = reading.plan.has_value() && !hasStop(result.outcome.problems);
    if (result.outcome.opened) result.plan = std::move(reading.plan);
    return result;
}

}  // namespace

std::filesystem::path corePath(const QString& file) { return QFileInfo(file).filesystemFilePath(); }

FileSession::FileSession(PlanDocument& document, QObject* parent)
    : QObject(parent), document_(document), watcher_(new QFileSystemWatcher(this))
{
    lookSoon_.setSingleShot(true);
    lookSoon_.setInterval(kLookAfterMs);
    connect(&lookSoon_, &QTimer::timeout, this, &FileSession::lookAtDisk);
    connect(watcher_, &QFileSystemWatcher::fileChanged, this, [this] { lookSoon_.start(); });
    connect(watcher_, &QFileSystemWatcher::directoryChanged, this, [this] { lookSoon_.start(); });
    connect(document.undoStack(), &QUndoStack::cleanChanged, this,
            [this](bool clean) { emit modifiedChanged(!clean); });
}

FileSession::~FileSession() = default;

QString FileSession::name() const { return QFileInfo(path_).completeBaseName(); }

bool FileSession::hasUnsavedChanges() const { return !document_.undoStack()->isClean(); }

void FileSession::startUntitled(Plan plan)
{
    emit leaving();
    follow({});
    document_.reset(std::move(plan));
    emit pathChanged();
}

OpenOutcome FileSession::open(const QString& file)
{
    const QString absolute = QFileInfo(file).absoluteFilePath();
    Read found = read(absolute);
    if (!found.plan) return found.outcome;
    emit leaving();
    follow(absolute);
    rememberDisk(found.text);
    document_.reset(std::move(*found.plan));
    emit pathChanged();
    return found.outcome;
}

SaveOutcome FileSession::save(bool overwriteOthers)
{
    if (isUntitled()) return {SaveResult::failed, tr("The plan has no file yet.")};
    if (!overwriteOthers) {
        lookAtDisk();
        if (changedOnDisk_) return {SaveResult::changedOnDisk, {}};
    }
    SaveOutcome outcome = write(path_);
    if (outcome.isSaved()) emit saved();
    return outcome;
}

SaveOutcome FileSession::saveAs(const QString& file)
{
    const QString absolute = QFileInfo(withExtension(file)).absoluteFilePath();
    SaveOutcome outcome = write(absolute);
    if (!outcome.isSaved()) return outcome;
    // Before the path changes, so that backups under the old name are removed.
    emit saved();
    if (absolute != path_) {
        const QByteArray mark = textMark_;
        follow(absolute);
        textMark_ = mark;
        emit pathChanged();
    }
    const QFileInfo info(absolute);
    writtenAt_ = info.lastModified();
    sizeBytes_ = info.size();
    return outcome;
}

OpenOutcome FileSession::readAgain(const QString& nameOfStep)
{
    Read found = read(path_);
    if (!found.plan) return found.outcome;
    rememberDisk(found.text);
    document_.apply(nameOfStep, [&](const Plan&) { return std::move(*found.plan); });
    document_.undoStack()->setClean();
    emit saved();
    return found.outcome;
}

void FileSession::lookAtDisk()
{
    if (isUntitled()) return;
    const QFileInfo info(path_);
    bool changed = false;
    if (info.exists()) {
        if (!watcher_->files().contains(path_)) watcher_->addPath(path_);
        if (info.lastModified() != writtenAt_ || info.size() != sizeBytes_) {
            QFile file(path_);
            changed = !file.open(QIODevice::ReadOnly) || markOf(file.readAll()) != textMark_;
        }
    }
    if (changed == changedOnDisk_) return;
    changedOnDisk_ = changed;
    emit changedOnDiskChanged();
}

void FileSession::close()
{
    emit leaving();
    follow({});
}

void FileSession::follow(const QString& file)
{
    lookSoon_.stop();
    if (const QStringList watched = watcher_->files() + watcher_->directories(); !watched.isEmpty()) {
        watcher_->removePaths(watched);
    }
    lock_.reset();
    otherWindow_.reset();
    textMark_.clear();
    writtenAt_ = {};
    sizeBytes_ = -1;
    path_ = file;
    if (std::exchange(changedOnDisk_, false)) emit changedOnDiskChanged();
    if (file.isEmpty()) return;
    takeLock();
    watcher_->addPaths({file, QFileInfo(file).absolutePath()});
}

void FileSession::takeLock()
{
    auto lock = std::make_unique<QLockFile>(lockOfPlan(path_));
    lock->setStaleLockTime(0);
    if (lock->tryLock(0)) {
        lock_ = std::move(lock);
        return;
    }
    // A folder that cannot be written gives no lock and no warning either: nobody can save there.
    if (lock->error() != QLockFile::LockFailedError) return;
    OtherWindow other;
    QString program;
    lock->getLockInfo(&other.process, &other.computer, &program);
    otherWindow_ = other;
}

void FileSession::rememberDisk(const QByteArray& text)
{
    const QFileInfo info(path_);
    textMark_ = markOf(text);
    writtenAt_ = info.lastModified();
    sizeBytes_ = info.size();
    if (std::exchange(changedOnDisk_, false)) emit changedOnDiskChanged();
}

SaveOutcome FileSession::write(const QString& file)
{
    const std::string text = writePlan(*document_.committed());
    const std::string error = writeFileAtomically(corePath(file), text);
    if (!error.empty()) return {SaveResult::failed, QString::fromStdString(error)};
    if (file == path_) {
        rememberDisk(QByteArray::fromStdString(text));
    } else {
        textMark_ = markOf(QByteArray::fromStdString(text));
    }
    document_.undoStack()->setClean();
    return {SaveResult::saved, {}};
}

}  // namespace yardcast::ui
