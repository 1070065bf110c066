//! Which plural form a count takes, by rules as the Unicode CLDR writes them (UTS 35, Language Plural Rules).

/// The forms, in the order of their rules; `other` is what is left.
pub const FORMS: [&str; 6] = ["zero", "one", "two", "few", "many", "other"];

/// The rule of each form that a language has besides `other`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rules(Vec<(&'static str, Rule)>);

/// Conditions: one group of them must hold, and of a group all.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Rule(Vec<Vec<Condition>>);

/// `i % 10 = 2..4`: what is looked at, by what it is divided, whether it must be in the ranges, and those.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Condition {
    /// Whether the count itself is looked at; else what follows a decimal point, which no count has.
    of_count: bool,
    divided: Option<u64>,
    is: bool,
    ranges: Vec<(u64, u64)>,
}

impl Rules {
    /// Adds the rule of a form; nothing where it can't be read.
    pub fn add(&mut self, form: &str, rule: &str) -> Option<()> {
        let form = FORMS.into_iter().find(|known| *known == form && form != "other")?;
        let groups = rule.split(" or ").map(|group| group.split(" and ").map(condition).collect::<Option<Vec<_>>>());
        self.0.push((form, Rule(groups.collect::<Option<_>>()?)));
        Some(())
    }

    /// The form of a count.
    pub fn form(&self, count: u64) -> &'static str {
        let holds = |rule: &Rule| rule.0.iter().any(|group| group.iter().all(|condition| condition.holds(count)));
        self.0.iter().find(|(_, rule)| holds(rule)).map_or("other", |(form, _)| form)
    }

    /// Every form that some count takes.
    pub fn forms(&self) -> impl Iterator<Item = &'static str> {
        self.0.iter().map(|(form, _)| *form).chain(["other"])
    }
}

impl Condition {
    fn holds(&self, count: u64) -> bool {
        let looked_at = if self.of_count { count } else { 0 };
        let looked_at = self.divided.map_or(looked_at, |by| looked_at.checked_rem(by).unwrap_or(looked_at));
        self.ranges.iter().any(|(from, to)| (*from..=*to).contains(&looked_at)) == self.is
    }
}

/// `n % 100 != 11..14,20`.
fn condition(text: &str) -> Option<Condition> {
    let (left, right, is) = match text.split_once("!=") {
        Some((left, right)) => (left, right, false),
        None => text.split_once('=').map(|(left, right)| (left, right, true))?,
    };
    let (of, divided) = match left.split_once('%') {
        Some((of, by)) => (of.trim(), Some(by.trim().parse().ok()?)),
        None => (left.trim(), None),
    };
    let range = |text: &str| {
        let (from, to) = text.split_once("..").unwrap_or((text, text));
        Some((from.trim().parse().ok()?, to.trim().parse().ok()?))
    };
    let of_count = match of {
        "n" | "i" => true,
        "v" | "w" | "f" | "t" | "c" | "e" => false,
        _ => return None,
    };
    Some(Condition { of_count, divided, is, ranges: right.split(',').map(range).collect::<Option<_>>()? })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rules(of: &[(&str, &str)]) -> Rules {
        let mut rules = Rules::default();
        of.iter().for_each(|(form, rule)| rules.add(form, rule).unwrap());
        rules
    }

    /// Rules and whole numbers as `plurals.json` of CLDR has them for Ukrainian and Czech
    /// (`pluralRule-count-*` with its `@integer` samples).
    #[test]
    fn counts_take_the_forms_that_cldr_samples_for_them() {
        let ukrainian = rules(&[
            ("one", "v = 0 and i % 10 = 1 and i % 100 != 11"),
            ("few", "v = 0 and i % 10 = 2..4 and i % 100 != 12..14"),
            ("many", "v = 0 and i % 10 = 0 or v = 0 and i % 10 = 5..9 or v = 0 and i % 100 = 11..14"),
        ]);
        for (form, counts) in [
            ("one", [1, 21, 31, 41, 51, 61, 71, 81, 101, 1001].as_slice()),
            ("few", &[2, 3, 4, 22, 23, 24, 32, 34, 42, 62, 102, 1002]),
            ("many", &[0, 5, 11, 12, 13, 14, 19, 100, 1000, 10_000, 100_000, 1_000_000]),
        ] {
            counts.iter().for_each(|count| assert_eq!(ukrainian.form(*count), form, "{count}"));
        }
        let czech = rules(&[("one", "i = 1 and v = 0"), ("few", "i = 2..4 and v = 0"), ("many", "v != 0")]);
        for (form, counts) in [("one", [1].as_slice()), ("few", &[2, 3, 4]), ("other", &[0, 5, 19, 100, 1000])] {
            counts.iter().for_each(|count| assert_eq!(czech.form(*count), form, "{count}"));
        }
    }

    #[test]
    fn what_is_no_rule_is_refused() {
        for rule in ["", "n", "n = ", "x = 1", "n % = 1", "n = 1..", "n = one"] {
            assert_eq!(Rules::default().add("one", rule), None, "{rule}");
        }
        assert_eq!(Rules::default().add("lots", "n = 1"), None);
        assert_eq!(Rules::default().add("other", "n = 1"), None);
    }
}
