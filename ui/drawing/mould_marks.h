#pragma once

#include <string>
#include <vector>

#include "ui/drawing/mould_painter.h"
#include "ui/drawing/picture_frame.h"
#include "ui/drawing/running_dimensions.h"

/// Inner seam of the pictures of moulds: everything that is written over and around them.
namespace yardcast::ui {

class MouldMarks {
public:
    MouldMarks(const MouldSubject& subject, const MouldLook& look, const PaintStyle& style);
    QRectF bounds() const { return frame().bounds(); }
    void paint(QPainter& painter) const;

private:
    struct Balloon {
        QString text;
        QPointF anchor;     ///< in what it stands for
        QRectF home;        ///< box of that
        QPointF at;
        QSizeF size;
        bool marked = false;
        QRectF box() const { return {at - QPointF(size.width() / 2.0, size.height() / 2.0), size}; }
    };
    struct DiagonalWords {
        QString text;
        QPointF at;
        double angleDeg = 0.0;
    };
    struct CutoutName {
        QString text;
        QRectF box;
    };
    /// Everything written, so that none lies over another.
    void place();
    PictureFrame frame() const;
    void addRows();
    void addCutouts(RunningRow& across, RunningRow& up) const;
    std::vector<Balloon> balloons(const std::vector<QRectF>& taken) const;
    /// The two ends of the cut, outside the boards.
    std::vector<QRectF> sectionMarks() const;
    void paintSectionMarks(QPainter& painter) const;
    /// Of those that find room; their boxes are taken then.
    std::vector<DiagonalWords> diagonalWords(std::vector<QRectF>& taken) const;
    void paintDiagonals(QPainter& painter) const;
    std::vector<CutoutName> cutoutNames() const;
    void paintLeader(QPainter& painter, const Balloon& balloon) const;
    void paintBalloon(QPainter& painter, const Balloon& balloon) const;

    const MouldSubject& subject_;
    const MouldLook& look_;
    PaintStyle style_;
    double unit_;
    QRectF body_;       ///< boards
    QRectF inside_;
    QPointF corner_;
    std::vector<RunningRow> rows_;
    std::vector<CutoutName> names_;
    std::vector<DiagonalWords> diagonals_;
    std::vector<Balloon> numbers_;
};

class StandingMarks {
public:
    StandingMarks(const MouldSubject& subject, const PaintStyle& style);
    QRectF bounds() const { return frame().bounds(); }
    void paint(QPainter& painter) const;

private:
    PictureFrame frame() const;

    const MouldSubject& subject_;
    PaintStyle style_;
    QRectF body_;
};

}  // namespace yardcast::ui
