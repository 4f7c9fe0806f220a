//! Answers to a complete case. Never fails: every question has a default.

use super::answers::Answers;
use super::offer::Offer;
use super::questions::Id;
use super::resolved::Resolved;
use crate::core::case::{
    Case, Circuit, Dampness, DoorKind, Drain, DrainKind, HeaterKind, HouseHeat, Household, Known, LabelScale,
    PeakSeason, Place, PresentHeater, Prices, Room, RoomKind, Supply, TankSigns, Tariff, TariffKind, YesNo,
};
use crate::core::climate::{mains::Mains, places, prices};
use crate::core::label::energy_factor;
use crate::core::site::Outlet;
use crate::core::units::{
    GALLON_M3, KWH_J, THERM_J, ZERO_C_K, celsius, cubic_metres, kelvins, metres, seconds, to_celsius, watts,
};
use uom::si::f64::{Length, ThermodynamicTemperature, VolumeRate};
use uom::si::volume_rate::cubic_meter_per_second;

/// The seed of every case's synthetic year unless another is given.
pub const DEFAULT_SEED: u64 = 20_260_101;

/// Completes answers into a case with the default seed and no offer.
pub fn complete(answers: &Answers) -> Case {
    complete_with(answers, &Offer::default())
}

/// Completes answers and an offer into a case with the default seed.
pub fn complete_with(answers: &Answers, offer: &Offer) -> Case {
    case_of(&Resolved::of(answers), offer, DEFAULT_SEED)
}

/// The case of resolved values and an offer.
pub fn case_of(r: &Resolved, offer: &Offer, seed: u64) -> Case {
    Case {
        household: household(r),
        heater: heater(r),
        room: room(r),
        drain: Drain {
            kind: option(r, Id::DrainKind, DrainKind::from_code, DrainKind::None),
            distance: length(r, Id::DrainDistance),
            rise: length(r, Id::DrainRise),
        },
        circuit: Circuit {
            supply: option(r, Id::Supply, Supply::from_code, Supply::V240),
            breaker_a: r.base(Id::Breaker),
            own_120v: option(r, Id::Own120, Outlet::from_code, Outlet::No),
            free_spaces: r.base(Id::FreeSpaces),
        },
        place: place(r),
        prices: money(r),
        site: super::site::of(r),
        offer: offer.complete(),
        seed,
    }
}

pub(super) fn option<T>(r: &Resolved, id: Id, from_code: fn(&str) -> Option<T>, fallback: T) -> Known<T> {
    let known = r.code(id);
    Known::new(from_code(known.value).unwrap_or(fallback), known.from)
}

pub(super) fn yes_no(r: &Resolved, id: Id) -> Known<YesNo> {
    option(r, id, YesNo::from_code, YesNo::No)
}

fn temperature(r: &Resolved, id: Id) -> Known<ThermodynamicTemperature> {
    r.base(id).map(|k| celsius(k - ZERO_C_K))
}

fn length(r: &Resolved, id: Id) -> Known<Length> {
    r.base(id).map(metres)
}

fn household(r: &Resolved) -> Household {
    Household {
        adults: r.base(Id::Adults),
        teenagers: r.base(Id::Teenagers),
        children: r.base(Id::Children),
        showers_per_day: r.base(Id::ShowersPerDay),
        shower_time: r.base(Id::ShowerTime).map(seconds),
        shower_flow: r.base(Id::ShowerFlow).map(VolumeRate::new::<cubic_meter_per_second>),
        baths_per_week: r.base(Id::BathsPerWeek),
        tub: r.base(Id::TubVolume).map(cubic_metres),
        showers_in_a_row: r.base(Id::ShowersInARow),
        dishwasher_loads_per_week: r.base(Id::DishwasherLoads),
        hot_washes_per_week: r.base(Id::HotWashes),
        runs_out_now: yes_no(r, Id::RunsOutNow),
    }
}

fn heater(r: &Resolved) -> PresentHeater {
    PresentHeater {
        kind: option(r, Id::HeaterKind, HeaterKind::from_code, HeaterKind::Electric),
        age_years: r.base(Id::HeaterAge),
        nominal_volume: r.base(Id::HeaterVolume).map(cubic_metres),
        uniform_energy_factor: uniform_energy_factor(r),
        first_hour_rating: r.base(Id::HeaterFirstHour).map(cubic_metres),
        input: r.base(Id::HeaterInput).map(watts),
        setpoint: temperature(r, Id::Setpoint),
        anode_changed: yes_no(r, Id::AnodeChanged),
        signs: option(r, Id::Signs, TankSigns::from_code, TankSigns::None),
        hardness_kg_per_m3: r.base(Id::Hardness),
        shares_flue: yes_no(r, Id::SharesFlue),
    }
}

/// The label's factor, converted where it is on the scale of the test before 2017. What stands in for a factor that
/// nobody read is on the new scale already.
fn uniform_energy_factor(r: &Resolved) -> Known<f64> {
    let factor = r.base(Id::HeaterFactor);
    let scale = option(r, Id::LabelScale, LabelScale::from_code, LabelScale::Uniform);
    if factor.is_assumed() || scale.value == LabelScale::Uniform {
        return factor;
    }
    let kind = option(r, Id::HeaterKind, HeaterKind::from_code, HeaterKind::Electric).value;
    let [volume_m3, first_hour_m3, input_w] =
        [Id::HeaterVolume, Id::HeaterFirstHour, Id::HeaterInput].map(|id| r.base(id).value);
    factor.map(|f| energy_factor::uniform(kind, f, volume_m3, first_hour_m3, input_w))
}

fn room(r: &Resolved) -> Room {
    Room {
        kind: option(r, Id::RoomKind, RoomKind::from_code, RoomKind::Basement),
        volume: r.base(Id::RoomVolume).map(cubic_metres),
        headroom: length(r, Id::Headroom),
        way_in: length(r, Id::WayIn),
        door: option(r, Id::Door, DoorKind::from_code, DoorKind::Solid),
        winter: temperature(r, Id::RoomWinter),
        summer: temperature(r, Id::RoomSummer),
        dampness: option(r, Id::Dampness, Dampness::from_code, Dampness::Normal),
        house_heat: option(r, Id::HouseHeat, HouseHeat::from_code, HouseHeat::Gas),
        house_cooled: yes_no(r, Id::HouseCooled),
        dehumidifier: yes_no(r, Id::Dehumidifier),
    }
}

fn place(r: &Resolved) -> Place {
    let id = r.code(Id::Place);
    let listed = places::by_id(id.value).unwrap_or_else(places::typical);
    let outdoor_mean = temperature(r, Id::OutdoorMean);
    let outdoor_range = r.base(Id::OutdoorRange).map(kelvins);
    let curve = Mains::from_outdoor(outdoor_mean.value, outdoor_range.value);
    let cold_tap = r.base(Id::ColdTap);
    Place {
        id: id.map(|_| listed.id.to_owned()),
        outdoor_mean,
        outdoor_range,
        summer_dew_point: id.map(|_| celsius(listed.summer_dew_point_c)),
        winter_dew_point: id.map(|_| celsius(listed.winter_dew_point_c)),
        elevation: id.map(|_| metres(listed.elevation_m)),
        cold_water_shift: cold_tap.map(|k| kelvins(k - ZERO_C_K - to_celsius(curve.annual_mean()))),
    }
}

fn money(r: &Resolved) -> Prices {
    let listed = places::by_id(r.code(Id::Place).value).unwrap_or_else(places::typical);
    Prices {
        electricity: r.base(Id::PriceElectricity).map(|p| p * KWH_J),
        gas: r.base(Id::PriceGas).map(|p| p * THERM_J),
        propane: r.base(Id::PricePropane).map(|p| p * GALLON_M3),
        oil: r.base(Id::PriceOil).map(|p| p * GALLON_M3),
        installed_same: r.base(Id::InstalledSame),
        installed_heat_pump: r.base(Id::InstalledHeatPump),
        rebate: r.base(Id::Rebate),
        horizon_years: r.base(Id::Horizon),
        discount_rate: r.base(Id::DiscountRate),
        price_growth: r.base(Id::PriceGrowth),
        grid_emission: r.code(Id::Place).map(|_| prices::of(listed).grid_kg_co2_per_kwh),
        grid_change: r.base(Id::GridChange),
        tariff: Tariff {
            kind: option(r, Id::Tariff, TariffKind::from_code, TariffKind::Flat),
            peak: r.base(Id::PricePeak).map(|p| p * KWH_J),
            low: r.base(Id::PriceLow).map(|p| p * KWH_J),
            from_hour: r.base(Id::PeakFrom),
            to_hour: r.base(Id::PeakTo),
            weekdays_only: yes_no(r, Id::PeakDays),
            season: option(r, Id::PeakSeason, PeakSeason::from_code, PeakSeason::Year),
        },
    }
}
