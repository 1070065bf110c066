//! A duct that ends in the house, in a flue, or in what something else blows into.

use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Ends, is_no_duct};

/// Where else than out of the house its air goes, by its words.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    ends_inside(fitted).or_else(|| with_others(fitted))
}

/// Air that is blown into a hollow of the house.
fn ends_inside(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.duct.spanned()?;
    let is_one = matches!(fitted.selection.kind.get()?, Kind::Hood | Kind::Dryer | Kind::Fan);
    if !is_one || there.is.ends != Some(Ends::Inside) || is_no_duct(&there.words) {
        return None;
    }
    let message = phrase!(
        "the duct of `{}` ends in the house by its words (`{}`), where its damp, grease or lint stays",
        fitted.selection.name.value,
        there.words
    );
    let finding = fitted.finding(Severity::Query, there.span, message);
    let remedy = "have it led out of the house, and write where: `through the roof`, `through the wall`";
    Some(finding.remedy(remedy).source("IRC M1502.3, M1503.3, M1504.3 (from memory)"))
}

/// Air that goes where something else blows, or burns.
fn with_others(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.duct.spanned().filter(|there| !is_no_duct(&there.words))?;
    let kind = *fitted.selection.kind.get()?;
    let name = &fitted.selection.name.value;
    let leaves_something = matches!(kind, Kind::Hood | Kind::Dryer);
    let message = if there.is.in_a_flue && (leaves_something || kind == Kind::Fan) {
        phrase!(
            "the duct of `{name}` goes through a flue by its words (`{}`): what is burnt there can come back into the house",
            name,
            there.words
        )
    } else if there.is.shared && leaves_something {
        phrase!(
            "the duct of `{name}` serves something else too by its words (`{}`): grease and lint go where they burn",
            name,
            there.words
        )
    } else {
        return None;
    };
    let finding = fitted.finding(Severity::Query, there.span, message);
    let remedy = "have it led out of the house on its own way, and write that: `through the roof`, `through the wall`";
    Some(finding.remedy(remedy).source("IRC M1501.1, M1502.2, M1503.3 (from memory)"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn thing(kind: &str, there: &str) -> Trial {
        Trial::of("service/duct")
            .opening("hole", &format!("{{takes: {kind}, service: {{duct: '{there}'}}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: hole"), "model: M")
    }

    /// Source: IRC M1502.2 and M1503.3 (from memory): each has a duct of its own.
    #[test]
    fn each_duct_is_its_thing_s_own_and_no_flue() {
        thing("hood", "8\" round, shared with the dryer, through the roof")
            .finds("the duct of `It` serves something else too by its words (`8\" round, shared with the dryer, through the roof`): grease and lint go where they burn")
            .weighs("query")
            .cautions();
        thing("hood", "through the existing 8\" flue of the boiler").finds_one().weighs("query").cautions();
        for there in [
            "shared with the bath fan, 4\" rigid, 14 ft",
            "100 mm, compartido con el baño",
            "4\" rigid into the chimney",
        ] {
            thing("dryer", there).finds_one();
        }
        for there in ["4\" rigid, not shared, through the roof", "4\" rigid, through the wall past the flue"] {
            thing("dryer", there).stays_silent();
        }
        thing("hood", "6\" round in the chimney of the hood, through the roof").stays_silent();
        thing("fan", "4\" round, joins the other fan, through the roof").stays_silent();
    }
}
