//! The valve that shuts the gas of a thing.

use crate::assess::rules::judges;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::supply::{Valve, is_none};

/// There is none by the words at the opening, or the sheet asks for one and nobody tells of it.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.gas.spanned().filter(|there| !is_none(&there.words))?;
    fitted.selection.kind.get().filter(|kind| judges::fuelled(**kind))?;
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.gas.spanned());
    let is_asked = needs.is_some_and(|needs| needs.is.valve == Some(Valve::There));
    let (name, opening) = (&fitted.selection.name.value, &fitted.opening.name.value);
    let (severity, message) = match there.is.valve {
        Some(Valve::There) => return None,
        Some(Valve::NotThere) => (
            if is_asked { Severity::Stop } else { Severity::Query },
            phrase!(
                "nothing shuts the gas of `{name}` at the opening `{opening}` by its words: `{}`",
                name,
                opening,
                there.words
            ),
        ),
        None if is_asked => (
            Severity::Query,
            phrase!(
                "the sheet of `{name}` asks for a gas valve, and nobody tells of one at the opening `{opening}`",
                name,
                opening
            ),
        ),
        None => return None,
    };
    let finding = fitted.finding(severity, there.span, message).source("IRC G2420.5 (from memory)");
    let finding = match needs.filter(|_| is_asked) {
        Some(needs) => finding.also(needs.span, "needs this"),
        None => finding,
    };
    Some(finding.remedy(
        "have a licensed trade set a valve that can be reached with the thing in its place, and write where it is",
    ))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(there: &str, needs: &str) -> Trial {
        Trial::of("service/gas")
            .opening("hole", &format!("{{takes: range, service: {{gas: '{there}'}}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", &format!("fit: {{needs: {{gas: '{needs}'}}}}"))
    }

    /// Source: IRC G2420.5 (from memory): a valve for each appliance, in the same room.
    #[test]
    fn the_gas_of_a_thing_can_be_shut_off() {
        let carries = "natural gas, branch carries 65000 Btu/h";
        let plain = "natural gas, 51000 Btu/h";
        range(&format!("{carries}, no isolating valve"), plain)
            .finds("nothing shuts the gas of `Range` at the opening `hole` by its words: `natural gas, branch carries 65000 Btu/h, no isolating valve`")
            .weighs("query")
            .cautions();
        range(&format!("{carries}, ohne Absperrhahn"), plain).finds_one();
        range(&format!("{carries}, no shut-off"), &format!("{plain}, with shut-off")).finds_one().weighs("stop");
        range(carries, &format!("{plain}, with shut-off"))
            .finds("the sheet of `Range` asks for a gas valve, and nobody tells of one at the opening `hole`")
            .weighs("query");
        range(&format!("{carries}, shut-off in the pot cabinet"), &format!("{plain}, with shut-off")).stays_silent();
        range(&format!("{carries}, llave de corte detrás"), plain).stays_silent();
        range(carries, plain).stays_silent();
    }
}
