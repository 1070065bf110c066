//! A sink in its cabinet.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::finding::{Finding, Severity};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// A sink does not fit its cabinet: its sides, its clips, its apron
    ///
    /// ## What it checks
    /// The sink's width and room for its clips on both sides, against the cabinet inside; the height of an
    /// apron against the opening left in the cabinet's front; and, for an undermount bowl, whether the
    /// reveal of its rim is said.
    ///
    /// ## Why it matters
    /// A 33" sink does not go into a 33" cabinet, whose inside is 31 1/2". An apron of 10" wants doors that
    /// are made shorter.
    ///
    /// ## Remedy
    /// Take a wider cabinet or a narrower sink; have the front made for the apron; agree the reveal with
    /// the fabricator.
    ///
    /// ## Example
    /// ```yaml
    /// cabinet: {inside width: 31 1/2"}      # for a sink of 33"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the cabinet's drawing.
    "fit/sink", Stop,
    due: WithThing, tells: [Installer],
    sources: ["the maker's sheet", "the cabinet's drawing"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted().filter(is_sink) {
        findings.extend(sides(context, &fitted));
        findings.extend(apron(context, &fitted));
        findings.extend(reveal(&fitted));
    }
}

fn is_sink(fitted: &Fitted<'_>) -> bool {
    fitted.selection.is(Kind::Sink)
}

fn sides(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let inside = fitted.opening.cabinet.get()?.inside_width.spanned()?;
    let width = *fitted.option.size.width.get()?;
    let clips = *fitted.option.fit.get()?.clips.get()?;
    let needs = width + clips.times(2);
    if needs <= inside.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = format!(
        "`{}` with its clips needs {} inside the cabinet, {} more than the {} there are",
        fitted.selection.name.value,
        say(needs),
        say(needs - inside.value),
        say(inside.value)
    );
    let finding = fitted.finding(RULE.code, Severity::Stop, inside.span, message);
    Some(finding.remedy("take a wider cabinet, or a narrower sink"))
}

fn apron(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let (apron, at) = fitted.option.length("apron height")?;
    let left = fitted.opening.apron_opening.spanned()?;
    if apron <= left.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = format!(
        "the apron of `{}` is {} high, {} more than the cabinet's front leaves for it",
        fitted.selection.name.value,
        say(apron),
        say(apron - left.value)
    );
    let finding = fitted.finding(RULE.code, Severity::Stop, at, message).also(left.span, "left for the apron");
    Some(finding.remedy("have the doors below made shorter, before the cabinets are ordered"))
}

fn reveal(fitted: &Fitted<'_>) -> Option<Finding> {
    let (mount, at) = fitted.option.words("mount")?;
    let unsaid = mount.to_lowercase().contains("undermount") && fitted.option.detail("reveal").is_none();
    let message =
        format!("nobody says whether the rim of `{}` shows, is flush, or is covered", fitted.selection.name.value);
    unsaid.then(|| {
        fitted
            .finding(RULE.code, Severity::Query, at, message)
            .remedy("agree it with the fabricator, and write `reveal: …`: `positive`, `flush` or `negative`")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn sink(opening: &str, option: &str) -> Trial {
        Trial::of("fit/sink")
            .opening("hole", &format!("{{takes: sink, {opening}}}"))
            .selection("selection: Sink\nkind: sink\nplace: hole", option)
    }

    /// Source: trade reports F-51: a 33" sink in a 33" box, 31 1/2" inside; a 36" box takes it.
    #[test]
    fn a_sink_as_wide_as_its_box_does_not_go_in() {
        let option = "size: {width: 33\"}\nfit: {clips: 1/2\"}";
        sink("cabinet: {inside width: 31 1/2\"}", option)
            .finds("`Sink` with its clips needs 34\" (863.6 mm) inside the cabinet, 2 1/2\" (63.5 mm) more than the 31 1/2\" (800.1 mm) there are")
            .weighs("stop");
        sink("cabinet: {inside width: 34 1/2\"}", option).stays_silent();
    }

    /// Source: trade reports F-49: an apron of 9" to 10", a stock front that leaves 6" to 8".
    #[test]
    fn an_apron_higher_than_the_front_leaves_stops() {
        sink("apron opening: 8\"", "apron height: 9 1/2\"").finds_one().weighs("stop");
        sink("apron opening: 9 1/2\"", "apron height: 9 1/2\"").stays_silent();
    }

    #[test]
    fn the_reveal_of_an_undermount_bowl_is_asked_for() {
        sink("width: 33\"", "mount: undermount").finds_one().weighs("query");
        sink("width: 33\"", "mount: undermount\nreveal: flush").stays_silent();
    }
}
