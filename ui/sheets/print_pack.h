#pragma once

#include <memory>

#include <QDate>
#include <QImage>
#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"

class QPagedPaintDevice;

/// What is printed: A4 sheets, black and white safe, each with frame, title block and page number; anything to scale
/// carries a scale bar and a check line of 100 mm.
namespace yardcast::ui {

/// What the sheets say besides the plan.
struct SheetOptions {
    QDate date = QDate::currentDate();  ///< in every title block
    double frontLookDeg = 90.0;         ///< direction of the front elevation, as in Projection::front
    /// Of the sheets "mould" and "template": only this part, casting, cutout or piece of a mould; empty for all.
    QString only{};
};

/// Names of the sheets in the order of the job: "shopping", "saw", "plan", "front", "strength", "steel",
/// "mould", "template", "mix", "pour", "lift".
QStringList sheetNames();
/// Those that are printed unless others are asked for: all but the templates, which take many pages.
QStringList usualSheetNames();
/// What a person calls the sheet: "Shopping list" and so on; empty for an unknown name.
QString sheetTitle(const QString& name);

/// The pages of the named sheets (in the order of sheetNames, unknown names left out), laid out once and painted one by
/// one, on any thread, one at a time. Keeps plan and assessment.
class SheetPack {
public:
    SheetPack(PlanPtr plan, AssessmentPtr assessment, const QStringList& sheets, const SheetOptions& options = {});
    ~SheetPack();

    int count() const;
    bool isLandscape(int page) const;
    /// "Mould, C1 counter".
    QString title(int page) const;
    /// The page as it is printed, so many pixels wide.
    QImage picture(int page, int widthPx) const;

private:
    struct Pages;
    std::unique_ptr<Pages> pages_;
};

/// Paints the named sheets (in the order of sheetNames, unknown names left out) on a device that prints A4 without
/// margins; sets its pages up. Returns the number of pages, or 0 when the device could not be painted on.
int paintPack(QPagedPaintDevice& device, const Plan& plan, const Assessment& assessment, const QStringList& sheets,
              const SheetOptions& options = {});
/// How many pages paintPack would give.
int packPageCount(const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                  const SheetOptions& options = {});

/// The same as a PDF; the file is whole or as it was before. False: `error` (may be null) says why.
bool writePackPdf(const QString& path, const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                  QString* error, const SheetOptions& options = {});

/// What `writePlanSvg` can draw: "plan", "strength", "steel", "mould", "lift".
QStringList svgViews();
/// A drawing in true size: one unit of the view box is one mm of the plan, width and height say so in mm. All views are
/// from above, as it stands; `partId` draws one part alone (uprights from their broad side where they are not seen from
/// above), empty the whole plan. "plan" has dimensions; "strength" and "steel" say in words what they show, also where
/// there is nothing. "mould" is as it lies in the mould, and says so. False: `error` says why (an unknown view or part, a file that cannot be written).
bool writePlanSvg(const QString& path, const Plan& plan, const Assessment& assessment, const QString& view,
                  const QString& partId, QString* error);

}  // namespace yardcast::ui
