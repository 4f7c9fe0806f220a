//! What energy costs and emits where nobody has looked at a bill yet, by state or province.
//!
//! **Source.** All figures are from memory, rounded: average residential prices of about [`PRICE_YEAR`], with
//! taxes and delivery, as the US Energy Information Administration (electricity, natural gas; propane and oil by
//! region) and Canadian utilities and Statistics Canada publish them. Tariffs differ by utility and by year far
//! more than that: on screen these always stand beside "take it from your bill". Grid emission is the mean of
//! the electricity consumed: for a US state that of the subregion of the US Environmental Protection Agency's
//! eGRID 2022 tables which serves most of it, for a province that of Canada's national inventory for 2022.
//!
//! Where a fuel is not sold to households by pipe or truck, or no figure is remembered, the country's mean
//! stands in, so that every price is there. Money is that of the place: US dollars, Canadian dollars.

use super::places::Place;
use super::region::{Country, Region};

/// The year, about, of the prices.
pub const PRICE_YEAR: u16 = 2024;

/// CO₂ of burning a therm of natural gas, kg (US Environmental Protection Agency, emission factors for
/// greenhouse gas inventories: 53.06 kg a million Btu; from memory).
pub const GAS_KG_CO2_PER_THERM: f64 = 5.306;
/// CO₂ of burning a US gallon of propane, kg (the same source, from memory).
pub const PROPANE_KG_CO2_PER_GAL: f64 = 5.72;
/// CO₂ of burning a US gallon of heating oil, distillate number 2, kg (the same source, from memory).
pub const OIL_KG_CO2_PER_GAL: f64 = 10.21;

/// Default prices and grid emission of a place. Prices in the money of its country.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnergyPrices {
    /// The country whose money this is.
    pub country: Country,
    /// Electricity, per kWh.
    pub electricity_per_kwh: f64,
    /// Natural gas, per therm.
    pub gas_per_therm: f64,
    /// Propane, per US gallon.
    pub propane_per_gal: f64,
    /// Heating oil, per US gallon.
    pub oil_per_gal: f64,
    /// CO₂ of a kWh from the grid, kg.
    pub grid_kg_co2_per_kwh: f64,
}

/// The default prices and grid emission of a listed place.
pub fn of(place: &Place) -> EnergyPrices {
    of_region(place.region)
}

/// The default prices and grid emission of a state or province; the country's where it has none of its own.
pub fn of_region(region: Region) -> EnergyPrices {
    let national = of_country(region.country());
    let own = own_figures(region);
    EnergyPrices {
        country: region.country(),
        electricity_per_kwh: own.electricity_per_kwh,
        gas_per_therm: own.gas_per_therm.unwrap_or(national.gas_per_therm),
        propane_per_gal: own.propane_per_gal.unwrap_or(national.propane_per_gal),
        oil_per_gal: own.oil_per_gal.unwrap_or(national.oil_per_gal),
        grid_kg_co2_per_kwh: own.grid_kg_co2_per_kwh,
    }
}

/// A country's mean prices and grid emission.
pub const fn of_country(country: Country) -> EnergyPrices {
    let (electricity_per_kwh, gas_per_therm, propane_per_gal, oil_per_gal, grid_kg_co2_per_kwh) =
        match country {
            Country::Canada => (0.16, 1.30, 3.80, 6.10, 0.11),
            Country::UnitedStates => (0.165, 1.45, 2.60, 3.75, 0.37),
        };
    EnergyPrices {
        country,
        electricity_per_kwh,
        gas_per_therm,
        propane_per_gal,
        oil_per_gal,
        grid_kg_co2_per_kwh,
    }
}

/// A region's own figures; `None` where the country's stands in.
struct OwnFigures {
    electricity_per_kwh: f64,
    gas_per_therm: Option<f64>,
    propane_per_gal: Option<f64>,
    oil_per_gal: Option<f64>,
    grid_kg_co2_per_kwh: f64,
}

/// A figure of the table; `-` where the region has none of its own.
macro_rules! figure {
    (-) => {
        None
    };
    ($x:literal) => {
        Some($x)
    };
}

macro_rules! own_figures {
    ($($region:ident $electricity:literal $gas:tt $propane:tt $oil:tt $grid:literal;)*) => {
        const fn own_figures(region: Region) -> OwnFigures {
            match region {
                $(Region::$region => OwnFigures {
                    electricity_per_kwh: $electricity,
                    gas_per_therm: figure!($gas),
                    propane_per_gal: figure!($propane),
                    oil_per_gal: figure!($oil),
                    grid_kg_co2_per_kwh: $grid,
                },)*
            }
        }
    };
}

// Region, then per kWh, therm of gas, gallon of propane, gallon of oil, and kg CO₂ a kWh. Provinces in Canadian
// dollars, states in US dollars.
own_figures! {
    Ab 0.230 0.95 2.80 - 0.470;
    Bc 0.120 1.25 3.80 - 0.015;
    Mb 0.100 1.00 3.40 - 0.002;
    Nb 0.150 2.30 4.90 5.90 0.300;
    Nl 0.150 - 5.20 5.90 0.020;
    Ns 0.190 2.50 4.90 5.90 0.660;
    Nt 0.410 - 6.00 7.20 0.180;
    Nu 0.350 - - 7.20 0.840;
    On 0.140 1.20 3.80 6.20 0.050;
    Pe 0.190 - 4.90 5.80 0.300;
    Qc 0.080 1.50 4.20 6.00 0.002;
    Sk 0.200 1.00 2.90 - 0.700;
    Yt 0.190 - 5.50 7.00 0.080;
    Ak 0.245 1.20 4.50 4.20 0.440;
    Al 0.150 1.80 2.80 - 0.410;
    Ar 0.125 1.70 2.60 - 0.360;
    Az 0.151 1.90 3.10 - 0.350;
    Ca 0.320 2.00 3.10 - 0.230;
    Co 0.150 1.20 2.40 - 0.510;
    Ct 0.300 1.85 3.40 3.65 0.240;
    Dc 0.175 1.75 3.30 3.80 0.300;
    De 0.167 1.65 3.30 3.80 0.300;
    Fl 0.148 2.80 4.40 - 0.370;
    Ga 0.142 1.65 2.90 - 0.410;
    Hi 0.429 4.80 6.00 - 0.660;
    Ia 0.132 1.20 1.80 3.30 0.430;
    Id 0.118 0.95 2.40 - 0.270;
    Il 0.160 1.15 2.10 3.30 0.470;
    In 0.152 1.15 2.40 3.30 0.450;
    Ks 0.141 1.45 2.10 - 0.430;
    Ky 0.131 1.50 2.60 3.30 0.430;
    La 0.119 1.60 2.80 - 0.360;
    Ma 0.296 2.10 3.40 3.65 0.240;
    Md 0.180 1.70 3.30 3.80 0.300;
    Me 0.260 2.05 3.40 3.65 0.240;
    Mi 0.193 1.10 2.30 3.30 0.550;
    Mn 0.153 1.10 2.10 3.30 0.430;
    Mo 0.129 1.50 2.10 3.30 0.580;
    Ms 0.137 1.45 2.80 - 0.360;
    Mt 0.127 1.00 2.40 - 0.270;
    Nc 0.138 1.65 3.20 3.70 0.280;
    Nd 0.115 0.90 1.80 3.30 0.430;
    Ne 0.116 1.20 1.80 3.30 0.430;
    Nh 0.238 1.95 3.40 3.65 0.240;
    Nj 0.180 1.30 3.30 3.80 0.300;
    Nm 0.144 1.10 2.60 - 0.350;
    Nv 0.150 1.45 3.10 - 0.310;
    Ny 0.242 1.60 3.30 3.80 0.240;
    Oh 0.160 1.35 2.60 3.30 0.450;
    Ok 0.124 1.60 2.20 - 0.440;
    Or 0.143 1.50 3.10 - 0.270;
    Pa 0.180 1.55 3.30 3.80 0.360;
    Ri 0.290 1.90 3.40 3.65 0.240;
    Sc 0.144 1.55 3.20 - 0.280;
    Sd 0.129 1.05 1.90 3.30 0.430;
    Tn 0.128 1.30 3.00 - 0.420;
    Tx 0.150 1.75 2.80 - 0.350;
    Ut 0.124 1.15 2.40 - 0.270;
    Va 0.146 1.70 3.20 3.70 0.280;
    Vt 0.219 1.65 3.40 3.65 0.240;
    Wa 0.122 1.55 3.10 - 0.270;
    Wi 0.174 1.10 2.10 3.30 0.550;
    Wv 0.149 1.30 3.20 3.70 0.450;
    Wy 0.129 1.20 2.40 - 0.400;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_region_has_plausible_prices() {
        for &region in Region::ALL {
            let p = of_region(region);
            assert_eq!(p.country, region.country());
            // A Canadian dollar is about 0.73 US dollars; fuels there are taxed more.
            let dollar = if p.country == Country::Canada { 1.7 } else { 1.0 };
            for (what, price, low, high) in [
                ("electricity", p.electricity_per_kwh, 0.07, 0.50),
                ("gas", p.gas_per_therm, 0.80, 5.00),
                ("propane", p.propane_per_gal, 1.60, 6.00 * dollar),
                ("oil", p.oil_per_gal, 3.00, 4.50 * dollar),
                ("grid", p.grid_kg_co2_per_kwh, 0.0, 0.90),
            ] {
                assert!((low..=high).contains(&price), "{} of {region:?}: {price}", what);
            }
        }
    }

    /// The country's mean lies within its regions, and not at their edge.
    #[test]
    fn national_means_lie_among_their_regions() {
        let figures: [fn(&EnergyPrices) -> f64; 5] = [
            |p| p.electricity_per_kwh,
            |p| p.gas_per_therm,
            |p| p.propane_per_gal,
            |p| p.oil_per_gal,
            |p| p.grid_kg_co2_per_kwh,
        ];
        for country in Country::ALL {
            for (i, figure) in figures.iter().enumerate() {
                let national = figure(&of_country(country));
                let regions: Vec<f64> = Region::ALL
                    .iter()
                    .filter(|r| r.country() == country)
                    .map(|&r| figure(&of_region(r)))
                    .collect();
                let below = regions.iter().filter(|&&r| r < national).count();
                let above = regions.iter().filter(|&&r| r > national).count();
                assert!(below >= 2 && above >= 2, "figure {i} of {country:?}: {below} below, {above} above");
            }
        }
    }

    #[test]
    fn a_missing_price_is_the_countrys() {
        let california = of_region(Region::Ca);
        assert_eq!(california.oil_per_gal, of_country(Country::UnitedStates).oil_per_gal);
        assert_ne!(california.electricity_per_kwh, of_country(Country::UnitedStates).electricity_per_kwh);
        let nunavut = of_region(Region::Nu);
        assert_eq!(nunavut.gas_per_therm, of_country(Country::Canada).gas_per_therm);
        assert_eq!(nunavut.propane_per_gal, of_country(Country::Canada).propane_per_gal);
    }

    /// The factors a unit of fuel against those a unit of heat times the fuel's heat content, all of the same
    /// table (from memory): propane 62.87 kg and 0.091 million Btu a gallon, oil 73.96 kg and 0.138.
    #[test]
    fn combustion_factors_agree_with_heat_contents() {
        assert!((GAS_KG_CO2_PER_THERM - 53.06 * 0.1).abs() < 1e-3);
        assert!((PROPANE_KG_CO2_PER_GAL - 62.87 * 0.091).abs() < 0.01);
        assert!((OIL_KG_CO2_PER_GAL - 73.96 * 0.138).abs() < 0.01);
    }
}
