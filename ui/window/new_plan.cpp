#include "ui/window/new_plan.h"

#include <QCoreApplication>

namespace yardcast::ui {

Plan emptyPlan()
{
    Mix worktop;
    worktop.id = "worktop";
    worktop.bag.waterL = 2.9;
    worktop.bag.maxAggregateMm = 4.0;
    worktop.strengthClass = "C30/37";
    worktop.extraCementPercent = 10.0;
    worktop.silicaFumePercent = 5.0;
    worktop.plasticiserPercent = 0.8;
    worktop.fibres = {{"AR glass", 3.0, {}}};
    worktop.maxWaterCement = 0.50;
    worktop.allowancePercent = 10.0;

    Mix body;
    body.id = "body";
    body.bag.waterL = 2.5;
    body.bag.maxAggregateMm = 8.0;
    body.extraCementPercent = 4.0;
    body.plasticiserPercent = 0.6;
    body.fibres = {{"PP", 0.9, {}}};
    body.maxWaterCement = 0.55;
    body.allowancePercent = 10.0;

    Plan plan;
    plan.title = QCoreApplication::translate("yardcast::ui::NewPlan", "New kitchen").toStdString();
    plan.mixer = Mixer{};
    plan.mixes = {worktop, body};
    return plan;
}

}  // namespace yardcast::ui
