#pragma once

#include <QDir>
#include <QFile>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QtTest>

#include "core/plan/edits.h"
#include "ui/document/file_session.h"
#include "ui/document/plan_document.h"

namespace yardcast::ui::test {

inline QString sample(const QString& name)
{
    return QDir(YARDCAST_SOURCE_DIR).filePath("sample-projects/" + name + ".yardplan");
}

inline QByteArray bytesOf(const QString& file)
{
    QFile in(file);
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

inline void writeBytes(const QString& file, const QByteArray& bytes)
{
    QFile out(file);
    QVERIFY2(out.open(QIODevice::WriteOnly | QIODevice::Truncate), qPrintable(file));
    QCOMPARE(out.write(bytes), bytes.size());
}

/// A copy of a sample in a folder of its own.
inline QString copyOfSample(const QTemporaryDir& folder, const QString& name, const QString& as = "kitchen.yardplan")
{
    const QString file = folder.filePath(as);
    QFile::remove(file);
    QFile::copy(sample(name), file);
    QFile::setPermissions(file, QFile::ReadOwner | QFile::WriteOwner);
    return file;
}

/// Moves the first part by one millimetre: a change that can be counted.
inline void nudgeFirst(PlanDocument& document)
{
    document.apply("nudge", [](const Plan& plan) { return moveParts(plan, {plan.parts.front()->id}, {1.0, 0.0}); });
}

inline double firstX(const Plan& plan) { return plan.parts.front()->place.at.x; }

}  // namespace yardcast::ui::test
