//! How bright a work surface is.

use super::hung;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say_area};
use crate::book::{DetailName, ProductOption};
use crate::finding::{Severity, phrase};
use crate::units::{Area, Length};

declare! {
    /// The lights over a work surface give less light than food wants
    ///
    /// ## What it checks
    /// Lumens times quantity over the surface that they light by themselves (`hangs: lights`): at least
    /// 50 lumens a square foot (50 footcandles, 538 lux) where food is prepared, before any loss.
    ///
    /// ## Why it matters
    /// At sixty one needs twice the light that one needed at thirty. Knives are sharp.
    ///
    /// ## Remedy
    /// Brighter lamps, or light under the wall cabinets besides.
    ///
    /// ## Example
    /// ```yaml
    /// lumens: 240
    /// quantity: 2
    /// hangs: {over: island, lights: 16 sq ft}     # 30 footcandles
    /// ```
    ///
    /// ## Source
    /// IES RP-28-16 and the kitchen association's text of 2015: 50 footcandles; lumens are footcandles
    /// times square feet (IES).
    "light/level", Query,
    due: RoughInClosed, tells: [Client],
    living: "living.light.level",
    judges: lights,
    sources: ["IES RP-28-16", "NKBA text of 2015"],
    caution: None,
    Check::Book(check)
}

/// Footcandles where food is prepared (IES RP-28-16).
const WANTED: i128 = 50;
/// One foot.
const FOOT: Length = Length::from_inches(12);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for hung in hung(context).filter(|hung| hung.over_work()) {
        let Some(area) = hung.hangs.lights.get() else { continue };
        let Some((lumens, footcandles)) = footcandles(hung.option, hung.count(), *area) else { continue };
        if footcandles.0 >= footcandles.1 * WANTED {
            continue;
        }
        let message = phrase!(
            "`{}` gives {lumens} lumens over {}, {} footcandles; {WANTED} are asked for where food is prepared",
            hung.selection.name.value,
            lumens,
            say_area(*area, context.book.project.units),
            footcandles.0 / footcandles.1,
            WANTED
        );
        let at = hung.option.detail(DetailName::Lumens).map_or(hung.selection.span, |detail| detail.span);
        let finding = about(hung.room, hung.selection, hung.option, Severity::Query, at, message);
        findings
            .push(finding.source("IES RP-28-16").remedy("choose brighter lamps, or add light under the wall cabinets"));
    }
}

/// All the lumens, and footcandles as a fraction: lumens times a square foot, over the area.
fn footcandles(option: &ProductOption, count: Option<usize>, area: Area) -> Option<(i128, (i128, i128))> {
    let each = i128::from(option.count(DetailName::Lumens)?.0);
    let lumens = each.checked_mul(i128::try_from(count?).ok()?)?;
    let foot = i128::from(FOOT.nanometres());
    let square_foot = foot.checked_mul(foot)?;
    (area > Area::ZERO).then_some((lumens, (lumens.checked_mul(square_foot)?, area.square_nanometres())))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(lumens: u32) -> Trial {
        Trial::of("light/level").selection(
            "selection: Pendants\nkind: pendant\nhangs: {over: island, lights: 16 sq ft}",
            &format!("lumens: {lumens}\nquantity: 2"),
        )
    }

    /// Source: check values LT-09, LT-12: 50 fc over 16 ft² are 800 lm; 30 fc fail.
    #[test]
    fn fifty_footcandles_fall_on_a_counter_where_food_is_prepared() {
        island(400).stays_silent();
        island(240)
            .finds("`Pendants` gives 480 lumens over 16 sq ft (≈ 1.5 m²), 30 footcandles; 50 are asked for where food is prepared")
            .weighs("query");
        island(399).finds_one();
    }
}
