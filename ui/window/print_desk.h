#pragma once

#include <functional>
#include <string>
#include <vector>

#include <QObject>
#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"

class QPagedPaintDevice;
class QWidget;

namespace yardcast::ui {

class Commands;
class MessageBar;
struct Workbench;

/// Print, preview, and files for other programs. What goes on paper is the committed plan with an assessment of exactly that plan.
class PrintDesk : public QObject {
    Q_OBJECT

public:
    /// `lookDeg` tells from where the elevation is looked at now.
    PrintDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
              std::function<double()> lookDeg);

    /// All tell the outcome in the message bar.
    bool writePdf(const QString& file, const QStringList& sheets);
    bool writeSvg(const QString& file);
    bool writeDxf(const QString& file);
    bool writeStl(const QString& file);

private:
    QStringList askSheets(const QString& doIt);
    void print();
    void preview();
    void exportPdf();
    void exportSvg();
    void exportDxf();
    void exportStl();
    std::vector<CastingPtr> castings() const;
    bool writeWhole(const QString& file, const std::string& bytes);
    int paint(QPagedPaintDevice& device, const QStringList& sheets);
    /// Of the committed plan, with strength and hours at the refinement of paper.
    AssessmentPtr assessment();
    QString proposedFile(const QString& extension) const;
    bool tell(bool written, const QString& file, const QString& reason);

    QWidget& window_;
    Workbench& bench_;
    MessageBar& messages_;
    std::function<double()> lookDeg_;
    StrengthAssessor strength_;
    ReadinessAssessor readiness_;
};

}  // namespace yardcast::ui
