//! The country that the work is in.

use crate::vocabulary::words;

words! {
    /// A country, by its two letters in ISO 3166-1.
    pub enum Country {
        UnitedStates = "US",
        Canada = "CA",
        Mexico = "MX",
        UnitedKingdom = "GB",
        Ireland = "IE",
        Germany = "DE",
        Austria = "AT",
        Switzerland = "CH",
        France = "FR",
        Belgium = "BE",
        Netherlands = "NL",
        Luxembourg = "LU",
        Spain = "ES",
        Portugal = "PT",
        Italy = "IT",
        Denmark = "DK",
        Norway = "NO",
        Sweden = "SE",
        Finland = "FI",
        Iceland = "IS",
        Poland = "PL",
        Czechia = "CZ",
        Greece = "GR",
        Australia = "AU",
        NewZealand = "NZ",
        Japan = "JP",
        Korea = "KR",
        China = "CN",
        Singapore = "SG",
        India = "IN",
        SouthAfrica = "ZA",
        Brazil = "BR",
        Argentina = "AR",
        Chile = "CL",
        Colombia = "CO",
        Israel = "IL",
        Emirates = "AE",
    }
}
