//! The country that the work is in.

use crate::vocabulary::supply::PlugStandard;
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
    /// The receptacle that the rooms there have, where every one of 220 to 240 V is of one standard (IEC's list of plugs by
    /// country, from memory).
    pub fn receptacle(self) -> Option<PlugStandard> {
        match self {
            Self::Germany | Self::Austria | Self::Netherlands | Self::Luxembourg | Self::Spain | Self::Portugal => {
                Some(PlugStandard::Schuko)
            }
            Self::Norway | Self::Sweden | Self::Finland | Self::Iceland => Some(PlugStandard::Schuko),
            Self::France | Self::Belgium | Self::Poland | Self::Czechia => Some(PlugStandard::French),
            Self::UnitedKingdom | Self::Ireland | Self::Singapore => Some(PlugStandard::Bs1363),
            Self::Australia | Self::NewZealand => Some(PlugStandard::As3112),
            _ => None,
        }
    }

    /// Whether appliances and lights are sold there by North American sheets.
    pub fn is_north_american(self) -> bool {
        matches!(self, Self::UnitedStates | Self::Canada | Self::Mexico)
    }
}
