//! A waiver whose day is past.

use crate::assess::rules::{Check, declare};

declare! {
    /// A waiver held until a day that is past
    ///
    /// ## What it checks
    /// Waivers that say `until` a day, or until a milestone, against today. Once the day is past, what
    /// the waiver set aside stands again, and the waiver itself is told.
    ///
    /// ## Why it matters
    /// "Good enough until the counters come" is forgotten when the counters come.
    ///
    /// ## Remedy
    /// Mend what was set aside, or have it waived anew, with a reason, a name and a day.
    ///
    /// ## Example
    /// ```yaml
    /// waive:
    ///   - {rule: fit/play, because: shimmed for now, by: Ines, on: 2027-01-12, until: cabinets set}
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "waive/expired", Query,
    due: GoodsOrdered, tells: [],
    sources: ["the book's own format"],
    caution: None,
    Check::OfWaivers
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(rule: &'static str, until: &str) -> Trial {
        let waiver = format!("{{rule: fit/width, because: to be eased, by: Ines, on: 2027-01-02{until}}}");
        Trial::of(rule)
            .book("milestones: {demolition: 2027-01-14, cabinets set: 2027-04-05}")
            .opening("range", "{takes: range, width: 29 7/8\"}")
            .selection(
                &format!("selection: Range\nkind: range\nplace: range\nwaive: [{waiver}]"),
                "size: {width: 30\"}",
            )
    }

    #[test]
    fn a_waiver_holds_to_its_last_day_and_not_a_day_longer() {
        range("waive/expired", ", until: 2027-01-15").stays_silent();
        range("waive/expired", ", until: 2027-01-14")
            .finds("the waiver of `fit/width` by Ines held until 14 Jan 2027")
            .weighs("query");
        range("waive/expired", ", until: demolition")
            .finds("the waiver of `fit/width` by Ines held until demolition, 14 Jan 2027");
        range("waive/expired", ", until: cabinets set").stays_silent();
        range("waive/expired", "").stays_silent();
    }

    #[test]
    fn what_an_expired_waiver_set_aside_stands_again() {
        let waived = |until: &str| range("fit/width", until).finds_one().findings()[0].waived.is_some();
        assert!(waived(", until: 2027-01-15"));
        assert!(!waived(", until: 2027-01-14"));
    }

    #[test]
    fn a_waiver_never_removes_a_caution() {
        let way_in = Trial::of("fit/way-in")
            .book("way in: [{name: door, width: 29\", height: 80\"}]")
            .opening("fridge", "{takes: refrigerator}")
            .selection(
                "selection: Refrigerator\nkind: refrigerator\nplace: fridge\nwaive: [{rule: fit/way-in, because: by crane, by: Ines, on: 2027-01-02}]",
                "fit: {carton: 33\" x 34\" x 73\", weight: 348 lb}",
            )
            .finds_one()
            .cautions();
        assert!(way_in.findings()[0].waived.is_some());
    }
}
