#include "ui/look/icons.h"

#include <memory>

#include <QFile>
#include <QHash>
#include <QIconEngine>
#include <QPainter>
#include <QSvgRenderer>

#include "ui/look/theme.h"

/// Q_INIT_RESOURCE must stand outside any namespace.
static void initialiseResources() { Q_INIT_RESOURCE(resources); }

namespace yardcast::ui {

void loadResources()
{
    static const bool loaded = (initialiseResources(), true);
    Q_UNUSED(loaded);
}

namespace {

QString pathOf(const QString& name) { return QStringLiteral(":/icons/%1.svg").arg(name); }

QByteArray recoloured(QByteArray svg, const QColor& colour)
{
    const QByteArray name = colour.name().toLatin1();
    for (const char* drawn : {"#1D2226", "#1d2226", "currentColor"}) svg.replace(drawn, name);
    return svg;
}

/// Renders the drawing anew for every size asked, so nothing is ever scaled from pixels.
class InkIconEngine : public QIconEngine {
public:
    InkIconEngine(const QByteArray& svg, const QColor& colour, const QColor& disabled)
        : normal_(std::make_shared<QSvgRenderer>(recoloured(svg, colour))),
          disabled_(std::make_shared<QSvgRenderer>(recoloured(svg, disabled)))
    {
    }

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override
    {
        const int side = qMin(rect.width(), rect.height());
        QRectF square(0, 0, side, side);
        square.moveCenter(QRectF(rect).center());
        (mode == QIcon::Disabled ? disabled_ : normal_)->render(painter, square);
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override
    {
        const quint64 key = quint64(quint32(size.width())) << 33 | quint64(quint32(size.height())) << 1 |
                            (mode == QIcon::Disabled ? 1 : 0);
        if (const auto known = pixmaps_.constFind(key); known != pixmaps_.constEnd()) return *known;
        QImage image(size, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paint(&painter, QRect(QPoint(), size), mode, state);
        painter.end();
        return *pixmaps_.insert(key, QPixmap::fromImage(image));
    }

    QIconEngine* clone() const override { return new InkIconEngine(*this); }
    QString key() const override { return QStringLiteral("yardcast"); }

private:
    std::shared_ptr<QSvgRenderer> normal_;
    std::shared_ptr<QSvgRenderer> disabled_;
    QHash<quint64, QPixmap> pixmaps_;
};

}  // namespace

bool hasIcon(const QString& name)
{
    loadResources();
    return QFile::exists(pathOf(name));
}

QIcon icon(const QString& name, const QColor& colour, const QColor& disabled)
{
    loadResources();
    QFile file(pathOf(name));
    if (!file.open(QIODevice::ReadOnly)) return {};
    return QIcon(new InkIconEngine(file.readAll(), colour, disabled));
}

QIcon icon(const QString& name, const Ink& ink) { return icon(name, ink.ink, disabledOf(ink)); }

}  // namespace yardcast::ui
