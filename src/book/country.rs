//! The country that the work is in.

use crate::vocabulary::words;

words! {
    /// A country, by its two letters in ISO 3166-1.
    pub enum Country {
        UnitedStates = "US" also "USA" "United States",
        Canada = "CA" also "Canada",
        Mexico = "MX" also "Mexico" "México",
        UnitedKingdom = "GB" also "UK" "United Kingdom" "Great Britain" "Britain",
        Ireland = "IE" also "Ireland",
        Germany = "DE" also "Germany" "Deutschland",
        Austria = "AT" also "Austria" "Österreich",
        Switzerland = "CH" also "Switzerland",
        France = "FR" also "France",
        Belgium = "BE",
        Netherlands = "NL" also "Netherlands",
        Luxembourg = "LU",
        Spain = "ES" also "Spain" "España",
        Portugal = "PT",
        Italy = "IT" also "Italy",
        Denmark = "DK",
        Norway = "NO" also "Norway" "Norge",
        Sweden = "SE",
        Finland = "FI",
        Iceland = "IS",
        Poland = "PL",
        Czechia = "CZ",
        Greece = "GR",
        Australia = "AU" also "Australia",
        NewZealand = "NZ" also "New Zealand",
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

impl Country {
    /// Whether appliances and lights are sold there by North American sheets.
    pub fn is_north_american(self) -> bool {
        matches!(self, Self::UnitedStates | Self::Canada | Self::Mexico)
    }
}
