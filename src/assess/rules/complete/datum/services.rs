//! Heights of services that their words count from a floor without its covering.

use crate::book::{Opening, Room, Service};
use crate::finding::{Remark, phrase};
use crate::source::Span;
use crate::vocabulary::Slot;
use crate::vocabulary::supply::{Worded, above_the_rough_floor};

/// The first such service of an opening: all other heights are taken from the finished floor.
pub(super) fn from_the_rough_floor(room: &Room, opening: &Opening) -> Option<Remark> {
    let all = &opening.service;
    let each = [
        (Service::Drain, words(&all.drain)),
        (Service::Water, words(&all.water)),
        (Service::Power, words(&all.power)),
        (Service::Gas, words(&all.gas)),
    ];
    let mut told = each.into_iter().filter_map(|(service, words)| Some((service, words?)));
    let (service, (_, at)) = told.find(|(_, (words, _))| above_the_rough_floor(words).is_some())?;
    let name = &opening.name.value;
    let message = phrase!(
        "the {service} at the opening `{name}` is told from a floor without its covering, and nobody says how high it is above the finished one",
        service,
        name
    );
    let finding = Remark::query(at, message).room(&room.folder).opening(&opening.name);
    Some(finding.remedy("write the height from the finished floor: less by all that is still to be laid on the other"))
}

fn words<T>(slot: &Slot<Worded<T>>) -> Option<(&str, Span)> {
    slot.spanned().map(|words| (words.value.words.as_str(), words.span))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_service_is_as_high_as_it_is_above_the_finished_floor() {
        let basin = |service: &str| {
            Trial::of("complete/datum")
                .room("floor build-up: 1/2\"")
                .opening("basin", &format!("{{takes: cabinet, service: {{{service}}}}}"))
        };
        for service in [
            "drain: '1 1/2\", 18\" above the subfloor'",
            "drain: 'DN 50, 450 mm über Rohboden'",
            "drain: '110 mm, centro a 220 mm del forjado'",
            "water: '1/2\", a 550 mm del suelo en bruto'",
        ] {
            basin(service).finds_one().says("is told from a floor without its covering").weighs("query");
        }
        for service in [
            "drain: '1 1/2\", 18\" AFF'",
            "drain: 'DN 50, 450 mm über OKFF'",
            "drain: '110 mm, centro a 220 mm del suelo acabado'",
            "drain: '3\" flange, 12\" from the finished wall'",
            "water: '3/8\" hot and cold, through the subfloor'",
        ] {
            basin(service).stays_silent();
        }
    }
}
