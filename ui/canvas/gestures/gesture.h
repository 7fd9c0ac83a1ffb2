#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>

#include "ui/canvas/tool.h"

namespace yardcast::ui {

/// One drag with the select tool, from the moment it is more than a click. It previews through the document; the
/// tool commits it under `name`, or cancels it.
class Gesture {
public:
    explicit Gesture(ToolHost& host) : host_(host) {}
    virtual ~Gesture() = default;
    Gesture(const Gesture&) = delete;
    Gesture& operator=(const Gesture&) = delete;

    /// The entry in the undo list, as the plan was before.
    virtual QString name() const = 0;
    virtual void move(const PointerEvent& event) = 0;
    /// A size typed meanwhile: previewed; empty, or why not, in words.
    virtual QString typed(const TypedSize& size) = 0;
    /// The size as it is, for the field to start with.
    virtual QString currentSize() const { return {}; }
    /// False for what changes no plan (a band that chooses).
    virtual bool changesPlan() const { return true; }
    /// What else is to be taken back when the gesture is cancelled, besides the preview.
    virtual void cancelled() {}
    virtual void paint(QPainter&, const PaintStyle&) {}
    virtual QRectF paintBounds() const { return {}; }

protected:
    ToolHost& host() const { return host_; }

private:
    ToolHost& host_;
};

}  // namespace yardcast::ui
