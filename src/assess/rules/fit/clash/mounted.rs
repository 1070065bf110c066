//! A light that is set on the glass of a mirror.

use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::Plan;
use crate::vocabulary::Kind;

/// Each light and mirror once: glass is drilled where it is cut, and never on site.
pub fn ask(plan: &Plan<'_>) -> Vec<Remark> {
    let lights = plan.of_kind(Kind::WallLight);
    let pairs = lights.flat_map(|light| plan.of_kind(Kind::Mirror).map(move |mirror| (light, mirror)));
    let told = pairs.filter(|(light, mirror)| light.is_set_on(mirror)).map(|(light, mirror)| {
        let message = phrase!("`{}` is set on the glass of `{}`", light.name, mirror.name);
        let finding = Remark::query(light.span, message).room(&plan.room.folder).part(light.name);
        let finding = finding.also(mirror.span, Phrase::name(mirror.name)).source("common practice");
        finding.remedy(
            "have the glass drilled where it is cut, to the place of the box that is measured on site; or move one of them",
        )
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-81.
    #[test]
    fn a_light_on_a_mirror_is_asked_about() {
        let wall = |sconce: &str| {
            Trial::of("fit/clash").room(&format!(
                "outline: 8' x 5'\nfixtures:\n  mirror: {{wall: A, centre: 48\", sill: 42\", width: 30\", height: 36\", depth: 1\", takes: mirror}}\n  sconce: {{wall: A, {sconce}, width: 5\", height: 9\", depth: 6\", takes: wall light}}"
            ))
        };
        wall("centre: 40\", sill: 62\"")
            .finds("`sconce` is set on the glass of `mirror`")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:5:3"])
            .remedies("have the glass drilled where it is cut, to the place of the box that is measured on site; or move one of them");
        wall("centre: 20\", sill: 62\"").stays_silent();
        wall("centre: 48\", sill: 80\"").stays_silent();
    }
}
