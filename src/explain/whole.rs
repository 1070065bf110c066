//! A whole example of each kind: what stands in the room's file, and what stands in the item's.

use crate::book::vocabulary::OPTION;
use crate::vocabulary::{FieldType, Kind};

use super::kinds::capital;

/// What the example of any kind may say, where a field's own example is of one kind.
const USUAL: [(&str, &str); 3] = [("model", "V-7"), ("price", "85.00"), ("photos", "[{kind}.jpg]")];

/// The files of an example, each under a line that says where it stands. What goes into an opening is written with
/// its opening; of all else the record alone tells everything, made of the examples of its fields.
pub fn files(kind: Kind) -> String {
    let written = match kind {
        Kind::Basin => include_str!("examples/basin.yaml"),
        Kind::Bathtub => include_str!("examples/bathtub.yaml"),
        Kind::Cooktop => include_str!("examples/cooktop.yaml"),
        Kind::Dishwasher => include_str!("examples/dishwasher.yaml"),
        Kind::Dryer => include_str!("examples/dryer.yaml"),
        Kind::Grill => include_str!("examples/grill.yaml"),
        Kind::Hood => include_str!("examples/hood.yaml"),
        Kind::Microwave => include_str!("examples/microwave.yaml"),
        Kind::MirrorCabinet => include_str!("examples/mirror-cabinet.yaml"),
        Kind::PanelDishwasher => include_str!("examples/panel-dishwasher.yaml"),
        Kind::PanelRefrigerator => include_str!("examples/panel-refrigerator.yaml"),
        Kind::Range => include_str!("examples/range.yaml"),
        Kind::Refrigerator => include_str!("examples/refrigerator.yaml"),
        Kind::ShowerTray => include_str!("examples/shower-tray.yaml"),
        Kind::Sink => include_str!("examples/sink.yaml"),
        Kind::Toilet => include_str!("examples/toilet.yaml"),
        Kind::WallOven => include_str!("examples/wall-oven.yaml"),
        Kind::WarmingDrawer => include_str!("examples/warming-drawer.yaml"),
        Kind::WaterHeater => include_str!("examples/water-heater.yaml"),
        Kind::Washer => include_str!("examples/washer.yaml"),
        _ => return format!("# in things.yaml\n{}", record(kind)),
    };
    written.to_string()
}

/// A selection of that kind with what it needs, as one would write it.
fn record(kind: Kind) -> String {
    let mut lines = vec![format!("selection: {}", capital(kind.name())), format!("kind: {}", kind.name())];
    let mut groups: Vec<(&str, Vec<String>)> = Vec::new();
    for path in kind.needs() {
        let (group, key) = path.split_once('.').unwrap_or(("", path));
        let record = OPTION.field(group).map(|field| field.shape);
        let field = match record {
            Some(FieldType::Record(inner)) => key.split('.').next().and_then(|key| inner.field(key)),
            _ => OPTION.field(key),
        };
        let Some(field) = field else { continue };
        if group.is_empty() {
            let usual = USUAL.iter().find(|(key, _)| *key == field.key).map_or(field.example, |(_, usual)| usual);
            lines.push(format!("{}: {}", field.key, usual.replace("{kind}", &kind.name().replace(' ', "-"))));
            continue;
        }
        let line = format!("  {}: {}", field.key, field.example);
        match groups.iter_mut().find(|(name, _)| *name == group) {
            Some((_, lines)) if lines.contains(&line) => {}
            Some((_, lines)) => lines.push(line),
            None => groups.push((group, vec![line])),
        }
    }
    for (group, inner) in groups {
        lines.push(format!("{group}:"));
        lines.extend(inner);
    }
    // What only warms says what it is warmed by.
    if matches!(kind, Kind::TowelWarmer | Kind::FloorHeating) {
        lines.push("fit: {needs: {water: flow and return of the heating}}".into());
    }
    // What no kind needs of itself, and the review asks of the thing where it stands.
    match kind {
        Kind::Door => lines.push("hinge: left".into()),
        Kind::Wallpaper => lines.push("papered: {along: 40', height: 8'}".into()),
        _ => {}
    }
    lines.join("\n") + "\n"
}
