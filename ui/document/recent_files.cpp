#include "ui/document/recent_files.h"

#include <QFileInfo>
#include <QSettings>

namespace yardcast::ui {

namespace {
constexpr auto kKey = "recent_files";
}

RecentFiles::RecentFiles(QSettings& settings, QObject* parent) : QObject(parent), settings_(settings) {}

QStringList RecentFiles::files() const
{
    QStringList there = stored();
    there.removeIf([](const QString& file) { return !QFileInfo::exists(file); });
    return there.mid(0, kMost);
}

void RecentFiles::add(const QString& file)
{
    const QString path = QFileInfo(file).absoluteFilePath();
    QStringList files = stored();
    files.removeAll(path);
    files.prepend(path);
    store(files.mid(0, 2 * kMost));
}

void RecentFiles::remove(const QString& file)
{
    QStringList files = stored();
    if (files.removeAll(QFileInfo(file).absoluteFilePath()) > 0) store(files);
}

void RecentFiles::clear() { store({}); }

QStringList RecentFiles::stored() const { return settings_.value(kKey).toStringList(); }

void RecentFiles::store(const QStringList& files)
{
    settings_.setValue(kKey, files);
    emit changed();
}

}  // namespace yardcast::ui
