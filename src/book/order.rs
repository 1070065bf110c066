//! What the supplier has said of an order, and when.

use crate::units::{Date, LeadTime};
use crate::vocabulary::{Slot, record};

record! {
    group
    #[derive(Default)]
    pub struct Order = ORDER("order", "what the supplier has said and when, and whether it is ordered") {
        quote: Slot<String> = "quote", "the number of the supplier's quotation", "Q-1182";
        good_until: Slot<Date> = "good until", "the last day on which the quotation holds", "2027-02-28";
        available_on: Slot<Date> = "available on",
            "the day on which the supplier last said that it can be had",
            "2027-01-12";
        placed_on: Slot<Date> = "placed on", "the day on which it was ordered", "2027-01-14";
        promised_for: Slot<Date> = "promised for", "the day on which the supplier says it comes", "2027-03-30";
        load: Slot<String> = "load",
            "which load of its supplier's it comes with, where there are several: each has a page to receive it",
            "second load";
        claim_within: Slot<LeadTime> = "claim within",
            "how long after it came its supplier takes a claim, where that is another time than the supplier's usual one",
            "2 days";
        claimed_on: Slot<Date> = "claimed on",
            "the day on which what came otherwise than approved was claimed of its supplier",
            "2027-04-02";
    }
}
