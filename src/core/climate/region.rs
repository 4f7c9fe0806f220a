//! Countries, and their states, provinces and territories.

use serde::{Deserialize, Serialize};

/// A country that the listed places lie in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Country {
    /// Canada.
    #[serde(rename = "ca")]
    Canada,
    /// The United States of America.
    #[serde(rename = "us")]
    UnitedStates,
}

impl Country {
    /// Both countries, in the order of their codes.
    pub const ALL: [Self; 2] = [Self::Canada, Self::UnitedStates];

    /// Its code in lower case (ISO 3166-1), as in the identities of places.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Canada => "ca",
            Self::UnitedStates => "us",
        }
    }

    /// Code of its money (ISO 4217).
    pub const fn currency_code(self) -> &'static str {
        match self {
            Self::Canada => "CAD",
            Self::UnitedStates => "USD",
        }
    }
}

macro_rules! regions {
    ($($country:ident { $($variant:ident $code:literal $name:literal;)* })*) => {
        /// A US state, the District of Columbia, or a Canadian province or territory, named by its postal code
        /// (no code is used in both countries).
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum Region { $($(#[doc = $name] #[serde(rename = $code)] $variant,)*)* }

        impl Region {
            /// Every region: Canada's first, sorted by postal code within each country.
            pub const ALL: &'static [Region] = &[$($(Region::$variant,)*)*];

            /// Its postal code, such as `MA`.
            pub const fn code(self) -> &'static str { match self { $($(Region::$variant => $code,)*)* } }

            /// Its name in English, but Québec as its people write it.
            pub const fn name(self) -> &'static str { match self { $($(Region::$variant => $name,)*)* } }

            /// The country it belongs to.
            pub const fn country(self) -> Country {
                match self { $($(Region::$variant => Country::$country,)*)* }
            }

            /// The region with this postal code (capital letters), if there is one.
            pub fn from_code(code: &str) -> Option<Region> {
                match code { $($($code => Some(Region::$variant),)*)* _ => None }
            }
        }
    };
}

regions! {
    Canada {
        Ab "AB" "Alberta";
        Bc "BC" "British Columbia";
        Mb "MB" "Manitoba";
        Nb "NB" "New Brunswick";
        Nl "NL" "Newfoundland and Labrador";
        Ns "NS" "Nova Scotia";
        Nt "NT" "Northwest Territories";
        Nu "NU" "Nunavut";
        On "ON" "Ontario";
        Pe "PE" "Prince Edward Island";
        Qc "QC" "Québec";
        Sk "SK" "Saskatchewan";
        Yt "YT" "Yukon";
    }
    UnitedStates {
        Ak "AK" "Alaska";
        Al "AL" "Alabama";
        Ar "AR" "Arkansas";
        Az "AZ" "Arizona";
        Ca "CA" "California";
        Co "CO" "Colorado";
        Ct "CT" "Connecticut";
        Dc "DC" "District of Columbia";
        De "DE" "Delaware";
        Fl "FL" "Florida";
        Ga "GA" "Georgia";
        Hi "HI" "Hawaii";
        Ia "IA" "Iowa";
        Id "ID" "Idaho";
        Il "IL" "Illinois";
        In "IN" "Indiana";
        Ks "KS" "Kansas";
        Ky "KY" "Kentucky";
        La "LA" "Louisiana";
        Ma "MA" "Massachusetts";
        Md "MD" "Maryland";
        Me "ME" "Maine";
        Mi "MI" "Michigan";
        Mn "MN" "Minnesota";
        Mo "MO" "Missouri";
        Ms "MS" "Mississippi";
        Mt "MT" "Montana";
        Nc "NC" "North Carolina";
        Nd "ND" "North Dakota";
        Ne "NE" "Nebraska";
        Nh "NH" "New Hampshire";
        Nj "NJ" "New Jersey";
        Nm "NM" "New Mexico";
        Nv "NV" "Nevada";
        Ny "NY" "New York";
        Oh "OH" "Ohio";
        Ok "OK" "Oklahoma";
        Or "OR" "Oregon";
        Pa "PA" "Pennsylvania";
        Ri "RI" "Rhode Island";
        Sc "SC" "South Carolina";
        Sd "SD" "South Dakota";
        Tn "TN" "Tennessee";
        Tx "TX" "Texas";
        Ut "UT" "Utah";
        Va "VA" "Virginia";
        Vt "VT" "Vermont";
        Wa "WA" "Washington";
        Wi "WI" "Wisconsin";
        Wv "WV" "West Virginia";
        Wy "WY" "Wyoming";
    }
}
