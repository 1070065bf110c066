//! Dates, working days and lead times against check values and themselves.

use super::*;
use proptest::prelude::*;

fn date(written: &str) -> Date {
    Date::parse(written).unwrap_or_else(|error| panic!("{error}"))
}

fn closed(days: &[&str]) -> Calendar {
    Calendar::new(days.iter().map(|day| date(day)))
}

#[test]
fn a_date_is_read_in_one_notation_and_printed_with_the_month_in_letters() {
    assert_eq!(date("2027-01-11").to_string(), "11 Jan 2027");
    assert_eq!(date(" 2027-12-01 ").to_string(), "1 Dec 2027");
    assert_eq!(date("2028-02-29").iso(), "2028-02-29");
    for written in
        ["03/01/2027", "1 Mar 2027", "2027-3-1", "2027.03.01", "20270301", "2027-03-01T00:00", "", "２０２７-03-01"]
    {
        assert_eq!(Date::parse(written), Err(DateError::Notation(written.into())));
    }
    for written in ["2027-02-29", "2027-13-01", "2027-00-10", "2027-04-31", "2100-02-29"] {
        assert_eq!(Date::parse(written), Err(DateError::NoSuchDay(written.into())));
    }
    assert_eq!(Date::parse("2027-02-30").unwrap_err().to_string(), "the calendar has no day `2027-02-30`");
}

/// Source: check values SD-05: three of them.
#[test]
fn working_days_leave_out_weekends_closed_days_and_the_first_day() {
    let none = Calendar::default();
    assert_eq!(none.minus_working_days(date("2026-07-10"), 10), date("2026-06-26"));
    let observed = closed(&["2026-07-03"]);
    assert_eq!(observed.minus_working_days(date("2026-07-10"), 10), date("2026-06-25"));
    let winter = closed(&["2026-12-25", "2027-01-01"]);
    assert_eq!(winter.plus_working_days(date("2026-12-24"), 5), date("2027-01-04"));
}

/// Source: check values SD-06 (ISO 8601): 1 January 2027 is the Friday of week 53 of 2026.
#[test]
fn a_week_may_belong_to_the_year_before_or_after() {
    assert_eq!((date("2021-01-03").iso_week(), date("2021-01-03").weekday()), ((2020, 53), 7));
    assert_eq!((date("2024-12-30").iso_week(), date("2024-12-30").weekday()), ((2025, 1), 1));
    assert_eq!(date("2027-01-01").iso_week(), (2026, 53));
    assert_eq!(date("2027-01-01").weekday(), 5);
}

#[test]
fn zero_working_days_is_the_day_itself_even_if_closed() {
    let calendar = closed(&["2027-05-31"]);
    assert_eq!(calendar.plus_working_days(date("2027-05-31"), 0), date("2027-05-31"));
    assert!(!calendar.is_working(date("2027-05-31")));
    assert!(!calendar.is_working(date("2027-05-29")));
    assert_eq!(calendar.plus_working_days(date("2027-05-28"), 1), date("2027-06-01"));
}

#[test]
fn months_end_on_the_last_day_there_is() {
    assert_eq!(date("2027-01-31").plus_months(1), date("2027-02-28"));
    assert_eq!(date("2028-03-31").plus_months(-1), date("2028-02-29"));
}

#[test]
fn reckoning_past_the_last_day_stops_there() {
    let last = date("9999-12-31");
    assert_eq!(last.plus_days(i64::MAX), last);
    assert_eq!(last.plus_months(i64::MAX), last);
    assert_eq!(Calendar::default().plus_working_days(date("9999-12-30"), i64::MAX), last);
}

#[test]
fn a_lead_time_is_read_in_every_notation() {
    let rows = [
        ("6-8 weeks", "6 to 8 weeks"),
        ("6–8 weeks", "6 to 8 weeks"),
        ("6 to 8 weeks", "6 to 8 weeks"),
        ("12 weeks", "12 weeks"),
        ("1 week", "1 week"),
        ("10 working days", "10 working days"),
        ("10 business days", "10 working days"),
        ("5 days", "5 days"),
        ("3 months", "3 months"),
        ("in stock", "in stock"),
        ("In Stock", "in stock"),
        ("ex stock", "in stock"),
        ("stock item", "in stock"),
        ("off-the-shelf", "in stock"),
        ("next day", "1 day"),
        ("8 wks", "8 weeks"),
        ("3-4 weeks ARO", "3 to 4 weeks"),
        ("6 wks. from order", "6 weeks"),
        ("2 mo", "2 months"),
    ];
    for (written, printed) in rows {
        let lead = LeadTime::parse(written).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(lead.to_string(), printed);
        assert_eq!(LeadTime::parse(printed), Ok(lead));
    }
    let lead = LeadTime::parse("6-8 weeks").unwrap();
    assert_eq!((lead.least, lead.most, lead.unit), (6, 8, SpanUnit::Week));
    assert_eq!(lead.latest(), Span { count: 8, unit: SpanUnit::Week });
    assert_eq!(Span::parse("1 working day").unwrap().to_string(), "1 working day");
}

const LONGEST: &str = "write the longest that it may take in whole days, working days, weeks or months, such as `6-8 weeks`, or `in stock`";

/// Who writes a book in another language writes its times in it too.
#[test]
fn a_lead_time_is_read_in_other_words_and_printed_in_these() {
    let rows = [
        ("6 Wochen", "6 weeks"),
        ("2-3 Wochen", "2 to 3 weeks"),
        ("4 a 6 semanas", "4 to 6 weeks"),
        ("12 días hábiles", "12 working days"),
        ("two weeks", "2 weeks"),
        ("6/8 weeks", "6 to 8 weeks"),
        ("approx. 3 weeks", "3 weeks"),
        ("Ships in 2 weeks", "2 weeks"),
        ("sofort lieferbar", "in stock"),
        ("entrega inmediata", "in stock"),
    ];
    for (written, printed) in rows {
        let lead = LeadTime::parse(written).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(lead.to_string(), printed, "{written}");
    }
}

#[test]
fn what_is_no_lead_time_says_so() {
    let rows = [
        ("6", "`6` doesn't say days, weeks or months", "write `6 weeks`, `6 days` or `6 working days`"),
        ("8-6 weeks", "`8-6 weeks` runs backwards", "write the shorter time first, such as `6-8 weeks`"),
        ("1.5 weeks", "`1.5 weeks` is not a stretch of time", LONGEST),
        ("2 weeks from template", "`2 weeks from template` is not a stretch of time", "write `2 weeks`"),
        ("6 semanas tras la plantilla", "`6 semanas tras la plantilla` is not a stretch of time", "write `6 weeks`"),
        ("soon", "`soon` is not a stretch of time", LONGEST),
        ("-3 days", "`-3 days` is not a stretch of time", LONGEST),
        ("521 weeks", "`521 weeks` is more than ten years", "check the number"),
        ("99999999999 days", "`99999999999 days` is more than ten years", "check the number"),
    ];
    for (written, message, remedy) in rows {
        let error = LeadTime::parse(written).unwrap_err();
        assert_eq!((error.to_string().as_str(), error.remedy().text()), (message, remedy));
    }
    assert_eq!(Span::parse("6-8 weeks"), Err(LeadTimeError::NotOne("6-8 weeks".into())));
}

#[test]
fn the_last_day_to_order_allows_for_the_longest_lead_time() {
    let (needed, none) = (date("2027-03-01"), Calendar::default());
    let order_by = |lead: &str| LeadTime::parse(lead).unwrap().before(needed, &none).iso();
    assert_eq!(order_by("6-8 weeks"), "2027-01-04");
    assert_eq!(order_by("10 working days"), "2027-02-15");
    assert_eq!(order_by("5 days"), "2027-02-24");
    assert_eq!(order_by("3 months"), "2026-12-01");
    assert_eq!(order_by("in stock"), "2027-03-01");
    let lasts = Span::parse("10 working days").unwrap();
    assert_eq!(lasts.after(needed, &none), date("2027-03-15"));
}

proptest! {
    #[test]
    fn a_date_is_read_as_written_in_files(days in -200_000..200_000_i64) {
        let day = date("2027-01-01").plus_days(days);
        prop_assert_eq!(Date::parse(&day.iso()), Ok(day));
        prop_assert_eq!(date("2027-01-01").days_until(day), days);
    }

    #[test]
    fn as_many_working_days_lie_between_as_were_added(start in 0..3000_i64, count in 1..300_i64, off in proptest::collection::vec(0..3500_i64, 0..20)) {
        let day = |n| date("2025-01-01").plus_days(n);
        let calendar = Calendar::new(off.into_iter().map(day));
        let end = calendar.plus_working_days(day(start), count);
        prop_assert!(calendar.is_working(end));
        prop_assert_eq!(calendar.working_days_between(day(start), end), count.unsigned_abs());
    }
}
