#include "ui/panels/outline_model.h"

#include <array>

#include "ui/look/icons.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr std::array kPartIcons{"counter", "support", "panel", "front", "appliance"};
constexpr std::array kFixtureIcons{"water", "waste", "power", "gas", "wall", "tree", "door", "site"};
constexpr std::array kCutoutIcons{"sink", "hob", "tap", "drain", "opening"};

QString text(const std::string& words) { return QString::fromStdString(words); }

}  // namespace

QList<OutlineModel::Node> OutlineModel::nodesOf(const Plan& plan) const
{
    QList<Node> nodes;
    nodes.reserve(static_cast<qsizetype>(plan.parts.size()) + 1);
    for (const PartPtr& part : plan.parts) {
        const auto known = static_cast<qsizetype>(nodes.size());
        // While a part is dragged the others are the same objects.
        if (known < nodes_.size() && nodes_[known].part == part) {
            nodes.append(nodes_[known]);
            continue;
        }
        Node node;
        node.id = text(part->id);
        node.name = part->name ? text(*part->name) : QString();
        node.text = node.name.isEmpty() ? tr("%1  %2").arg(node.id, kindName(part->kind()))
                                        : tr("%1  %2").arg(node.id, node.name);
        node.icon = QLatin1String(kPartIcons[static_cast<std::size_t>(part->kind())]);
        node.part = part;
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            for (const Cutout& cutout : counter->cutouts) {
                node.leaves.append({text(cutout.id), tr("%1  %2").arg(text(cutout.id), purposeName(cutout.purpose)),
                                    QLatin1String(kCutoutIcons[static_cast<std::size_t>(cutout.purpose)])});
            }
        }
        nodes.append(node);
    }
    if (plan.site.fixtures.empty()) return nodes;
    Node site;
    site.kind = Kind::site;
    site.text = tr("Site");
    site.icon = QStringLiteral("site");
    for (const Fixture& fixture : plan.site.fixtures) {
        site.leaves.append({text(fixture.id), tr("%1  %2").arg(text(fixture.id), fixtureName(fixture.kind)),
                            QLatin1String(kFixtureIcons[static_cast<std::size_t>(fixture.kind)])});
    }
    nodes.append(site);
    return nodes;
}

int OutlineModel::rowOf(const QString& id, Kind kind) const
{
    for (qsizetype row = 0; row < nodes_.size(); ++row) {
        if (nodes_[row].kind == kind && nodes_[row].id == id) return static_cast<int>(row);
    }
    return -1;
}

void OutlineModel::setPlan(const PlanPtr& plan)
{
    const QList<Node> next = nodesOf(*plan);
    const auto isThere = [&](const Node& node) {
        return std::ranges::any_of(next, [&](const Node& n) { return n.kind == node.kind && n.id == node.id; });
    };
    for (int row = static_cast<int>(nodes_.size()) - 1; row >= 0; --row) {
        if (row < next.size() && next[row].kind == nodes_[row].kind && next[row].id == nodes_[row].id) continue;
        if (isThere(nodes_[row])) continue;
        beginRemoveRows({}, row, row);
        nodes_.removeAt(row);
        endRemoveRows();
    }
    for (int row = 0; row < next.size(); ++row) {
        const int from = row < nodes_.size() && nodes_[row].kind == next[row].kind && nodes_[row].id == next[row].id
                             ? row
                             : rowOf(next[row].id, next[row].kind);
        if (from < 0) {
            beginInsertRows({}, row, row);
            Node node = next[row];
            node.serial = nextSerial_++;
            nodes_.insert(row, node);
            endInsertRows();
            continue;
        }
        if (from != row) {
            beginMoveRows({}, from, from, {}, row);
            nodes_.move(from, row);
            endMoveRows();
        }
        Node& node = nodes_[row];
        node.part = next[row].part;
        setLeaves(row, next[row].leaves);
        if (node.text == next[row].text && node.name == next[row].name && node.icon == next[row].icon) continue;
        node.text = next[row].text;
        node.name = next[row].name;
        node.icon = next[row].icon;
        emit dataChanged(index(row, 0), index(row, 0));
    }
}

void OutlineModel::setLeaves(int row, const QList<Leaf>& leaves)
{
    if (nodes_[row].leaves == leaves) return;
    const QModelIndex parentIndex = index(row, 0);
    QList<Leaf>& shown = nodes_[row].leaves;
    qsizetype same = 0;
    while (same < shown.size() && same < leaves.size() && shown[same].id == leaves[same].id) ++same;
    if (same < shown.size()) {
        beginRemoveRows(parentIndex, static_cast<int>(same), static_cast<int>(shown.size()) - 1);
        shown.resize(same);
        endRemoveRows();
    }
    for (qsizetype leaf = 0; leaf < same; ++leaf) {
        if (shown[leaf] == leaves[leaf]) continue;
        shown[leaf] = leaves[leaf];
        const QModelIndex at = index(static_cast<int>(leaf), 0, parentIndex);
        emit dataChanged(at, at);
    }
    if (same < leaves.size()) {
        beginInsertRows(parentIndex, static_cast<int>(same), static_cast<int>(leaves.size()) - 1);
        shown = leaves;
        endInsertRows();
    }
}

void OutlineModel::setInk(const Ink& ink)
{
    icons_.clear();
    for (const auto& names : {QStringList(kPartIcons.begin(), kPartIcons.end()),
                              QStringList(kFixtureIcons.begin(), kFixtureIcons.end()),
                              QStringList(kCutoutIcons.begin(), kCutoutIcons.end())}) {
        for (const QString& name : names) icons_.insert(name, icon(name, ink));
    }
    if (!nodes_.isEmpty()) emit dataChanged(index(0, 0), index(rowCount() - 1, 0), {Qt::DecorationRole});
}

QIcon OutlineModel::iconNamed(const QString& name) const { return icons_.value(name); }

OutlineModel::Place OutlineModel::placeOf(const QModelIndex& at) const
{
    if (!at.isValid()) return {};
    const QModelIndex above = at.parent();
    if (!above.isValid()) return {nodes_[at.row()].kind, nodes_[at.row()].id, {}};
    const Node& node = nodes_[above.row()];
    const QString id = node.leaves[at.row()].id;
    return node.kind == Kind::site ? Place{Kind::fixture, id, {}} : Place{Kind::cutout, id, node.id};
}

QModelIndex OutlineModel::indexOfPart(const QString& part) const
{
    const int row = rowOf(part, Kind::part);
    return row < 0 ? QModelIndex() : index(row, 0);
}

QModelIndex OutlineModel::indexOfCutout(const QString& part, const QString& cutout) const
{
    const QModelIndex above = indexOfPart(part);
    if (!above.isValid()) return {};
    const QList<Leaf>& leaves = nodes_[above.row()].leaves;
    for (qsizetype row = 0; row < leaves.size(); ++row) {
        if (leaves[row].id == cutout) return index(static_cast<int>(row), 0, above);
    }
    return {};
}

QModelIndex OutlineModel::indexOfFixture(const QString& fixture) const
{
    const int site = rowOf({}, Kind::site);
    if (site < 0) return {};
    const QList<Leaf>& leaves = nodes_[site].leaves;
    for (qsizetype row = 0; row < leaves.size(); ++row) {
        if (leaves[row].id == fixture) return index(static_cast<int>(row), 0, index(site, 0));
    }
    return {};
}

QModelIndex OutlineModel::index(int row, int column, const QModelIndex& above) const
{
    if (row < 0 || column != 0 || row >= rowCount(above)) return {};
    return createIndex(row, column, above.isValid() ? nodes_[above.row()].serial : quintptr(0));
}

QModelIndex OutlineModel::parent(const QModelIndex& at) const
{
    if (!at.isValid() || at.internalId() == 0) return {};
    for (qsizetype row = 0; row < nodes_.size(); ++row) {
        if (nodes_[row].serial == at.internalId()) return createIndex(static_cast<int>(row), 0, quintptr(0));
    }
    return {};
}

int OutlineModel::rowCount(const QModelIndex& above) const
{
    if (!above.isValid()) return static_cast<int>(nodes_.size());
    return above.internalId() == 0 ? static_cast<int>(nodes_[above.row()].leaves.size()) : 0;
}

int OutlineModel::columnCount(const QModelIndex&) const { return 1; }

QVariant OutlineModel::data(const QModelIndex& at, int role) const
{
    const QModelIndex above = at.parent();
    if (above.isValid()) {
        const Leaf& leaf = nodes_[above.row()].leaves[at.row()];
        if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return leaf.text;
        if (role == Qt::DecorationRole) return iconNamed(leaf.icon);
        return {};
    }
    const Node& node = nodes_[at.row()];
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return node.text;
    if (role == Qt::EditRole) return node.name;
    if (role == Qt::DecorationRole) return iconNamed(node.icon);
    return {};
}

bool OutlineModel::setData(const QModelIndex& at, const QVariant& value, int role)
{
    const Place place = placeOf(at);
    if (role != Qt::EditRole || place.kind != Kind::part) return false;
    const QString name = value.toString().trimmed();
    if (name == nodes_[at.row()].name) return false;
    emit renameAsked(place.id, name);
    return true;
}

Qt::ItemFlags OutlineModel::flags(const QModelIndex& at) const
{
    if (!at.isValid()) return {};
    switch (placeOf(at).kind) {
    case Kind::part: return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable;
    case Kind::site: return Qt::ItemIsEnabled;
    case Kind::cutout:
    case Kind::fixture: return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    }
    return {};
}

}  // namespace yardcast::ui
