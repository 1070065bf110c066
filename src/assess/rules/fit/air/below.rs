//! Air below what hangs or stands above the floor, against what is there.

use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::Fitting;
use crate::units::Length;
use crate::vocabulary::Trait;

/// What the sheet asks to be clear below it, against what is said to be there, or the floor: what is let into a counter
/// is judged by `fit/below`.
pub(super) fn judge(context: &Context<'_>, fitted: &Placement<'_>, fitting: &Fitting) -> Option<Remark> {
    let opening = fitted.opening;
    if opening.takes_one(Trait::DropsIn) || opening.takes_one(Trait::CutIntoCounter) {
        return None;
    }
    let air = &fitted.option.fit.get()?.air;
    let asked = air.bottom.spanned().filter(|asked| asked.value.vent.is_none() && asked.value.holds.is_empty())?;
    // Where the opening is higher than it and the air above it, it may be set higher.
    let above = fitting.height.air;
    let spare = fitting.height.play().map_or(Length::ZERO, |play| (play - above).max(Length::ZERO));
    let (what, clear, at) = match opening.below.spanned().filter(|said| !said.value.is_said_to_be_free()) {
        Some(said) => (Phrase::name(&said.value.what), *said.value.clear.get()?, said.span),
        None => {
            let sill = opening.sill.spanned()?;
            (Phrase::from("the floor"), sill.value, sill.span)
        }
    };
    let left = clear + spare;
    let short = Some(asked.value.length - left).filter(|short| *short > Length::ZERO)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "{what} is {} below `{}` in the opening `{}`, {} less than the {} that the maker's sheet asks for",
        what,
        say(left),
        fitted.selection.name.value,
        opening.name.value,
        say(short),
        say(asked.value.length)
    );
    let finding = fitted.finding(Severity::Stop, at, message).also(asked.span, "its sheet");
    Some(finding.remedy("set it higher, move what is below it, or choose a model that asks for less"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn heater(opening: &str, air: &str) -> Trial {
        Trial::of("fit/air").opening("heater", &format!("{{takes: water heater, {opening}}}")).selection(
            "selection: Heater\nkind: water heater\nplace: heater",
            &format!("size: {{height: 600 mm}}\nfit: {{air: {{{air}}}}}"),
        )
    }

    /// Source: the maker's own sheet.
    #[test]
    fn what_is_below_a_heater_is_as_far_as_its_sheet_asks() {
        let shelf = "sill: 1200 mm, height: 600 mm, below: {what: shelf, clear: 20 mm}";
        heater(shelf, "bottom: 600 mm")
            .finds("`shelf` is ≈ 13/16\" (20 mm) below `Heater` in the opening `heater`, ≈ 22 13/16\" (580 mm) less than the ≈ 23 5/8\" (600 mm) that the maker's sheet asks for")
            .weighs("stop")
            .cautions();
        heater("sill: 400 mm, height: 600 mm", "bottom: 600 mm").finds_one().says("the floor is");
        heater("sill: 1200 mm, height: 600 mm", "bottom: 600 mm").stays_silent();
        heater("sill: 1200 mm, height: 600 mm, below: nothing", "bottom: 600 mm").stays_silent();
        heater(shelf, "bottom: 20 mm").stays_silent();
        // It may hang higher in an opening that is higher than it.
        heater("sill: 400 mm, height: 900 mm", "top: 50 mm, bottom: 600 mm").stays_silent();
        heater("sill: 400 mm, height: 900 mm", "top: 200 mm, bottom: 600 mm").finds_one();
    }
}
