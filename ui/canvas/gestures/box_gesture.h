#pragma once

#include <functional>

#include "core/plan/plan.h"
#include "ui/canvas/gestures/gesture.h"

namespace yardcast::ui {

/// A box resized by its sides or corners: supports, panels, appliances, rectangular cutouts, fixtures with a size.
class BoxGesture : public Gesture {
public:
    /// What is resized and how its new box is written into a plan.
    struct Subject {
        QString called;
        Placement frame;           ///< of the box
        Box box;                   ///< as it was
        SnapTargets targets;       ///< in that frame
        std::function<Plan(const Plan&, const Box&)> write;
        std::function<QString(const Plan&)> figures;  ///< beside the size: mass, strips
    };

    BoxGesture(ToolHost& host, Subject subject, int sides, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;
    QString currentSize() const override;

    static Subject partSubject(ToolHost& host, const std::string& part);
    static Subject cutoutSubject(ToolHost& host, const std::string& part, const std::string& cutout);
    static Subject fixtureSubject(ToolHost& host, const std::string& fixture);

private:
    void preview(const Box& box);

    Subject subject_;
    int sides_;
    Point off_;
    Box now_;
};

/// A round cutout: its diameter.
class DiameterGesture : public Gesture {
public:
    DiameterGesture(ToolHost& host, std::string part, std::string cutout, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(double diameterMm);

    std::string part_;
    std::string cutout_;
    QString called_;
    Point centre_;  ///< plane of the view
    double wasMm_ = 0.0;
    double fromMm_ = 0.0;
};

/// One end of a front.
class FrontEndGesture : public Gesture {
public:
    FrontEndGesture(ToolHost& host, std::string part, int end, Point from);

    QString name() const override;
    void move(const PointerEvent& event) override;
    QString typed(const TypedSize& size) override;

private:
    void preview(Point inPlan);

    std::string part_;
    int end_;
    QString called_;
    Point still_;
    Point moved_;
    Point off_;
    Point now_;
    SnapTargets targets_;
};

}  // namespace yardcast::ui
