//! Runs a check so that one that fails ends neither the other checks nor the program.

use std::cell::Cell;
use std::panic::{self, AssertUnwindSafe};
use std::sync::Once;

use crate::finding::{Finding, Remark, phrase};
use crate::source::Place;

use super::source::unchecked;
use super::{Findings, Rule};

thread_local! {
    /// Whether this thread is inside a check.
    static CHECKING: Cell<bool> = const { Cell::new(false) };
}

/// What the check of a rule finds; where the check itself fails, a stop that says so and carries the
/// rule's caution.
pub(super) fn run(rule: &Rule, check: impl FnOnce(&mut Findings<'_>)) -> Vec<Finding> {
    silence();
    let mut findings = Findings::of(rule);
    CHECKING.set(true);
    // What a check had found when it failed is dropped with it: half an answer is none.
    let whole = panic::catch_unwind(AssertUnwindSafe(|| check(&mut findings))).is_ok();
    CHECKING.set(false);
    if whole {
        return findings.told();
    }
    let message = phrase!("the check of `{}` failed on this book: nothing was checked by it", rule.code);
    let place = Place::Path("book.yaml".into());
    let mut failed = Findings::of(&unchecked::RULE);
    failed.push(Remark { caution: rule.caution, ..Remark::stop(place, message) });
    failed.told()
}

/// A check that fails is told as a finding, and not as a trace on the terminal too.
fn silence() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let usual = panic::take_hook();
        panic::set_hook(Box::new(move |failure| {
            if !CHECKING.get() {
                usual(failure);
            }
        }));
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::fit::width;
    use crate::finding::{Code, Severity};

    #[test]
    fn a_check_that_fails_is_a_stop_that_names_the_rule() {
        let found = run(&width::RULE, |findings| {
            findings.push(Remark::note(Place::Path("a".into()), "half an answer"));
            panic!("planted");
        });
        let [finding] = found.as_slice() else { panic!("{found:?}") };
        assert_eq!((finding.rule, finding.severity), (Code::UNCHECKED, Severity::Stop));
        assert_eq!(finding.message.text(), "the check of `fit/width` failed on this book: nothing was checked by it");
        assert!(!crate::assess::rules::can_be_waived(finding.rule));
        // The next check on this thread is heard as before.
        assert_eq!(run(&width::RULE, |_| {}), []);
    }

    #[test]
    fn a_check_that_fails_keeps_the_rule_s_caution() {
        use crate::assess::rules::clear::above_cooktop;
        let found = run(&above_cooktop::RULE, |_| panic!("planted"));
        assert!(found.iter().all(|finding| finding.caution == above_cooktop::RULE.caution));
        assert!(above_cooktop::RULE.caution.is_some());
    }
}
