#pragma once

#include <optional>

#include <QAbstractButton>

#include "core/plan/finding.h"

namespace yardcast::ui {

/// A figure that answers a click or Enter with how it came about. Big: the figure and its unit beside it. Otherwise a
/// line of text, broken where the card is narrow, with a sign before it where it cautions.
class FigureButton : public QAbstractButton {
    Q_OBJECT

public:
    enum class Look { big, line };
    explicit FigureButton(Look look, QWidget* parent = nullptr);

    /// Code of the note behind the figure; empty: it cannot be clicked.
    const QString& code() const { return code_; }
    void setFigure(const QString& code, const QString& figure, const QString& unit = {},
                   std::optional<Severity> mark = {});
    const QString& figure() const { return figure_; }
    const QString& unit() const { return unit_; }
    std::optional<Severity> mark() const { return mark_; }
    /// In lighter ink with a small mark: the plan is newer than the figure.
    void setStale(bool stale);
    bool isStale() const { return stale_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override;

private:
    int textIndent() const;
    bool unitGoesBelow(int width) const;

    Look look_;
    QString code_;
    QString figure_;
    QString unit_;
    std::optional<Severity> mark_;
    bool stale_ = false;
};

}  // namespace yardcast::ui
