//! How high pendants hang above what they light.

use super::{Hung, hung};
use crate::assess::codes::metric;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::HangsOver;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::overhead::at;
use crate::units::Length;

declare! {
    /// A light hangs too low to see or to pass, or too high to light
    ///
    /// ## What it checks
    /// The lowest part of each light above the top of what it hangs over: {30"} to {36"}
    /// for an island, a counter or a table, and {3"} more at the top for each foot of ceiling above {8'};
    /// over a path at least {84"} from the floor. A counter of which nobody says how high it is is that of the room's runs, and a
    /// table {30"}: there only what is a foot less, or two feet more, is told.
    ///
    /// ## Why it matters
    /// One talks across an island under the lights, and looks at each other. Over a path they meet the
    /// tall.
    ///
    /// ## Remedy
    /// Set the drop so; have the box placed and the cord left long until the island stands.
    ///
    /// ## Example
    /// ```yaml
    /// hangs: {over: island, top: 36", bottom: 62"}     # 26" above the top
    /// ```
    ///
    /// ## Source
    /// American Lighting Association's advice, as trade pages quote it; the {3"} a foot is a rule of
    /// trade pages.
    "light/height", Query,
    due: RoughInClosed, tells: [Client, Installer],
    living: "living.light.height",
    judges: [Pendant],
    sources: ["American Lighting Association, as trade pages quote it", "common practice"],
    caution: None,
    Check::Book(check)
}

const SOURCE: &str = "American Lighting Association, as trade pages quote it";
/// Least and most above a top (LT-01, LT-02).
const ABOVE: (Length, Length) = (Length::from_inches(30), Length::from_inches(36));
/// The ceiling from which lights may hang higher, and how much a foot.
const USUAL_CEILING: Length = Length::from_inches(96);
/// Least above a floor that one walks on.
const HEADROOM: Length = Length::from_inches(84);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for hung in hung(context) {
        let Some(bottom) = hung.hangs.bottom.get() else { continue };
        let points = hung.count().unwrap_or(1).max(bottom.0.len());
        // One light is told, the first that hangs wrong: its neighbours are set by it.
        findings.extend((0..points).find_map(|number| judge(context, &hung, at(&bottom.0, number)?, number)));
    }
}

fn judge(context: &Context<'_>, hung: &Hung<'_>, bottom: Length, number: usize) -> Option<Remark> {
    let units = context.book.project.units;
    let name = &hung.selection.name.value;
    let message = if hung.hangs.over.get() == Some(&HangsOver::Path) {
        let headroom = metric::advised(HEADROOM, bottom, units);
        (bottom < headroom).then(|| {
            phrase!(
                "`{name}` hangs {} above a path, {} at least are asked for",
                name,
                say_room(bottom, units),
                say_room(headroom, units)
            )
        })?
    } else {
        let over = *hung.hangs.over.get()?;
        let Some(top) = hung.hangs.top.get().copied() else { return over_a_table(context, hung, bottom, number) };
        let above = bottom - top;
        let most = ABOVE.1 + raise(hung.ceiling(context, number));
        let (least, most) = (metric::advised(ABOVE.0, above, units), metric::advised_most(most, above, units));
        if above >= least && above <= most {
            return None;
        }
        phrase!(
            "`{name}` hangs {} above the {over}; {} to {} are usual",
            name,
            say(above, units),
            over,
            say(least, units),
            say(most, units)
        )
    };
    Some(told(hung, number, message))
}

fn told(hung: &Hung<'_>, number: usize, message: Phrase) -> Remark {
    let own = hung.hangs.bottom.get().and_then(|bottom| bottom.0.get(number).or(bottom.0.first()));
    let at = own.map_or(hung.selection.span, |bottom| bottom.span);
    let finding = about(hung.room, hung.selection, hung.option, Severity::Query, at, message).source(SOURCE);
    finding.remedy("set the drop so, or try it with a string and the people who will sit there")
}

/// Over a table of which nobody says how high it is: as far from what is usual as no table is from another.
fn over_a_table(context: &Context<'_>, hung: &Hung<'_>, bottom: Length, number: usize) -> Option<Remark> {
    let units = context.book.project.units;
    let is_over_one = hung.hangs.over.get() == Some(&HangsOver::Table);
    let above = bottom - TABLE;
    let is_far = above < ABOVE.0 - FAR || above > ABOVE.1 + raise(hung.ceiling(context, number)) + FAR.times(2);
    let message = phrase!(
        "`{}` hangs {} above the floor over a table; {} to {} above its top are usual",
        hung.selection.name.value,
        say(bottom, units),
        say(metric::advised(ABOVE.0, bottom, units), units),
        say(metric::advised_most(ABOVE.1, bottom, units), units)
    );
    (is_over_one && is_far).then(|| told(hung, number, message))
}

/// How high a table is (common practice), and how far nobody hangs a light from what is usual over it.
const TABLE: Length = Length::from_inches(30);
const FAR: Length = Length::from_inches(12);

/// Three inches for each foot of ceiling above eight.
fn raise(ceiling: Option<Length>) -> Length {
    let above = ceiling.map_or(Length::ZERO, |ceiling| ceiling - USUAL_CEILING);
    if above <= Length::ZERO { Length::ZERO } else { above.half().half() }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn over(what: &str, top: &str, bottom: &str, ceiling: &str) -> Trial {
        let hangs = format!("hangs: {{over: {what}, top: {top}, bottom: {bottom}}}");
        Trial::of("light/height")
            .room(&format!("ceiling: {ceiling}"))
            .selection(&format!("selection: Pendants\nkind: pendant\n{hangs}"), "quantity: 2")
    }

    /// Source: check values LT-01, LT-02: 66 to 72" over a counter of 36", 60 to 66" over a table of 30".
    #[test]
    fn thirty_to_thirty_six_inches_above_a_top() {
        for bottom in ["66\"", "72\""] {
            over("island", "36\"", bottom, "8'").stays_silent();
        }
        over("island", "36\"", "62\"", "8'")
            .finds("`Pendants` hangs 26\" (660 mm) above the island; 30\" (762 mm) to 36\" (914 mm) are usual")
            .weighs("query");
        over("island", "36\"", "72 1/16\"", "8'").finds_one();
        over("table", "30\"", "60\"", "8'").stays_silent();
        over("table", "30\"", "59\"", "8'").finds_one();
    }

    /// Source: check values LT-03: at ten feet six inches more, up to 42".
    #[test]
    fn under_a_high_ceiling_they_may_hang_higher() {
        over("island", "36\"", "78\"", "10'").stays_silent();
        over("island", "36\"", "78 1/8\"", "10'").finds_one();
        over("island", "36\"", "78\"", "8'").finds_one();
    }

    /// Source: check values LT-03 in millimetres: a quarter of what 2545 mm are above eight feet, on 914.4 mm.
    #[test]
    fn in_millimetres_they_are_round() {
        let hangs = "hangs: {over: table, top: 750 mm, bottom: 2000 mm}";
        Trial::of("light/height")
            .metric()
            .room("ceiling: 2545 mm")
            .selection(&format!("selection: Pendants\nkind: pendant\n{hangs}"), "quantity: 2")
            .finds("`Pendants` hangs 1250 mm (≈ 49 3/16\") above the table; 750 mm (≈ 29 1/2\") to 945 mm (≈ 37 3/16\") are usual");
    }

    /// Source: check values LT-06: 84" over a walking path.
    #[test]
    fn a_path_keeps_its_headroom() {
        over("path", "0\"", "84\"", "9'").stays_silent();
        over("path", "0\"", "83\"", "9'")
            .finds("`Pendants` hangs 6'-11\" (2108 mm) above a path, 7'-0\" (2134 mm) at least are asked for");
    }

    /// What nobody says is the room's own, or usual.
    #[test]
    fn over_a_table_or_a_counter_of_which_no_height_is_told() {
        let hangs = |over: &str, bottom: &str| {
            Trial::of("light/height")
                .metric()
                .room("ceiling: 2650 mm\nruns: {a: {counter: {depth: 620 mm, height: 920 mm}, parts: [{cabinet: b, width: 600 mm}]}}")
                .selection(&format!("selection: Pendants\nkind: pendant\nhangs: {{over: {over}, bottom: {bottom}}}"), "quantity: 1")
        };
        for wrong in ["700 mm", "1100 mm", "2500 mm"] {
            hangs("table", wrong).finds_one().says("above the floor over a table").weighs("query");
        }
        for right in ["1300 mm", "1450 mm", "1600 mm", "1900 mm"] {
            hangs("table", right).stays_silent();
        }
        hangs("counter", "1200 mm").finds_one().says("280 mm");
        hangs("counter", "1750 mm").stays_silent();
    }
}
