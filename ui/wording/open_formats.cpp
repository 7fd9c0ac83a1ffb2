#include "ui/wording/open_formats.h"

#include <QCoreApplication>

#include "core/exports/drawings.h"
#include "core/exports/stl.h"

namespace yardcast::ui {

namespace {

struct Words {
    Q_DECLARE_TR_FUNCTIONS(OpenFormats)
public:
    static DrawingWords ofDrawings()
    {
        return {tr("seen from above, as it stands; mm").toStdString(),
                tr("seen from above, as it lies in the mould; mm").toStdString(),
                tr("MIRRORED: left and right are swapped, for it is cast face down").toStdString(),
                tr("not mirrored: left and right as in the kitchen").toStdString(),
                tr("front edge: stand here").toStdString()};
    }
};

}  // namespace

std::string planDxf(const Plan& plan, const std::vector<CastingPtr>& castings, const std::string& partId)
{
    return dxfText(planDrawing(plan, castings, Words::ofDrawings(), partId));
}

std::string mouldDxf(const std::vector<MouldPtr>& moulds, const std::string& partId)
{
    return dxfText(mouldDrawing(moulds, Words::ofDrawings(), partId));
}

std::string formersStl(const std::vector<MouldPtr>& moulds, const std::string& partId)
{
    return stlBytes(formersModel(moulds, partId));
}

std::string kitchenStl(const Plan& plan, const std::vector<CastingPtr>& castings, const std::string& partId)
{
    return stlBytes(kitchenModel(plan, castings, partId));
}

}  // namespace yardcast::ui
