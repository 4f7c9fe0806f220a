//! The classes of heater that may replace the present one: figures typical of the class in 2025, no
//! maker's, from memory, marked so on screen. An installer's offer by label figures takes their place.

use super::{Body, Candidate, CandidateId, Label, offer};
use crate::core::case::{Case, HeaterKind, YesNo};
use crate::core::label::present;
use crate::core::units::{GALLON_M3, cubic_metres, gallons, inches, watts};
use uom::si::f64::Mass;
use uom::si::mass::pound;
use uom::si::volume::cubic_meter;

/// A heat pump tank's class.
struct HeatPumpClass {
    id: CandidateId,
    nominal_gal: f64,
    factor: f64,
    first_hour_gal: f64,
    element_w: f64,
    output_w: f64,
    height_in: f64,
    diameter_in: f64,
    empty_lb: f64,
    volts: f64,
    breaker_a: f64,
    free_air_ft3: f64,
    sound_power_db: f64,
}

const HEAT_PUMPS: [HeatPumpClass; 5] = [
    HeatPumpClass {
        id: CandidateId::HeatPump40,
        nominal_gal: 40.0,
        factor: 3.35,
        first_hour_gal: 55.0,
        element_w: 4_500.0,
        output_w: 1_600.0,
        height_in: 61.0,
        diameter_in: 22.0,
        empty_lb: 180.0,
        volts: 240.0,
        breaker_a: 30.0,
        free_air_ft3: 700.0,
        sound_power_db: 50.0,
    },
    HeatPumpClass {
        id: CandidateId::HeatPump50,
        nominal_gal: 50.0,
        factor: 3.45,
        first_hour_gal: 65.0,
        element_w: 4_500.0,
        output_w: 1_700.0,
        height_in: 62.0,
        diameter_in: 22.5,
        empty_lb: 200.0,
        volts: 240.0,
        breaker_a: 30.0,
        free_air_ft3: 700.0,
        sound_power_db: 50.0,
    },
    HeatPumpClass {
        id: CandidateId::HeatPump65,
        nominal_gal: 65.0,
        factor: 3.55,
        first_hour_gal: 72.0,
        element_w: 4_500.0,
        output_w: 1_800.0,
        height_in: 64.0,
        diameter_in: 26.5,
        empty_lb: 250.0,
        volts: 240.0,
        breaker_a: 30.0,
        free_air_ft3: 700.0,
        sound_power_db: 52.0,
    },
    HeatPumpClass {
        id: CandidateId::HeatPump80,
        nominal_gal: 80.0,
        factor: 3.55,
        first_hour_gal: 88.0,
        element_w: 4_500.0,
        output_w: 1_800.0,
        height_in: 74.0,
        diameter_in: 26.5,
        empty_lb: 285.0,
        volts: 240.0,
        breaker_a: 30.0,
        free_air_ft3: 700.0,
        sound_power_db: 52.0,
    },
    HeatPumpClass {
        id: CandidateId::PlugIn50,
        nominal_gal: 50.0,
        factor: 2.95,
        first_hour_gal: 43.0,
        element_w: 0.0,
        output_w: 1_600.0,
        height_in: 63.0,
        diameter_in: 22.5,
        empty_lb: 195.0,
        volts: 120.0,
        breaker_a: 15.0,
        free_air_ft3: 450.0,
        sound_power_db: 50.0,
    },
];

impl HeatPumpClass {
    fn candidate(&self) -> Candidate {
        Candidate {
            id: self.id,
            called: String::new(),
            label: Label {
                kind: HeaterKind::HeatPump,
                nominal_volume: gallons(self.nominal_gal),
                uniform_energy_factor: self.factor,
                first_hour_rating: gallons(self.first_hour_gal),
                input: watts(self.element_w),
                heat_pump_output: watts(self.output_w),
            },
            body: Body {
                height: inches(self.height_in),
                diameter: inches(self.diameter_in),
                empty_mass: Mass::new::<pound>(self.empty_lb),
                volts: self.volts,
                breaker_a: self.breaker_a,
                free_air: cubic_metres(self.free_air_ft3 * 0.3048 * 0.3048 * 0.3048),
                sound_power_db: self.sound_power_db,
            },
        }
    }
}

/// The class of heat pump tank that a heater of this volume and voltage belongs to: the nearest.
pub(super) fn heat_pump_class(gal: f64, volts: f64) -> Candidate {
    let off = |c: &HeatPumpClass| (c.nominal_gal - gal).abs() + 10.0 * (c.volts - volts).abs();
    let nearest = HEAT_PUMPS.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    nearest.unwrap_or(&HEAT_PUMPS[0]).candidate()
}

/// Everything compared for a case: the present heater first, then the same again, then heat pumps by
/// size, the plug-in kind, and plain electric where the present one burns fuel. Heaters of the
/// installer's offer stand in the place of the classes of their kind.
pub fn candidates(case: &Case) -> Vec<Candidate> {
    let kind = case.heater.kind.value;
    let mut list = vec![present_heater(case)];
    let mut add = |of: HeaterKind| {
        let offered = case.offer.of_kind(of);
        if offered.clone().next().is_some() {
            list.extend(offered.map(|o| o.candidate.clone()));
        } else if of == HeaterKind::HeatPump {
            list.extend(HEAT_PUMPS.iter().map(HeatPumpClass::candidate));
        } else {
            list.push(tank(class(of), of, case));
        }
    };
    // The same again may be one of the heat pumps.
    if kind != HeaterKind::HeatPump {
        add(kind);
    }
    add(HeaterKind::HeatPump);
    if kind != HeaterKind::Electric {
        add(HeaterKind::Electric);
    }
    // Whatever else is offered: a gas tank in the place of an electric one, say.
    for o in &case.offer.heaters {
        if list.iter().all(|c| c.id != o.candidate.id) {
            list.push(o.candidate.clone());
        }
    }
    list
}

/// The class of a kind of heater.
const fn class(kind: HeaterKind) -> CandidateId {
    match kind {
        HeaterKind::Electric => CandidateId::ElectricTank,
        HeaterKind::Gas => CandidateId::GasTank,
        HeaterKind::Propane => CandidateId::PropaneTank,
        HeaterKind::Oil => CandidateId::OilTank,
        HeaterKind::HeatPump => CandidateId::HeatPump50,
    }
}

/// Which candidate is "the same again": the offer's heater of the present one's kind that comes nearest to
/// it in volume, or the class.
pub fn same_again(case: &Case) -> CandidateId {
    let present = case.heater.nominal_volume.value;
    let off = |o: &offer::Offered| (o.candidate.label.nominal_volume - present).abs();
    case.offer
        .of_kind(case.heater.kind.value)
        .min_by(|a, b| off(a).value.total_cmp(&off(b).value))
        .map_or_else(|| class(case.heater.kind.value), |o| o.candidate.id)
}

/// The heater that stands there, as far as its nameplate tells.
pub fn present_heater(case: &Case) -> Candidate {
    let h = &case.heater;
    Candidate {
        id: CandidateId::Keep,
        called: String::new(),
        label: Label {
            kind: h.kind.value,
            nominal_volume: h.nominal_volume.value,
            uniform_energy_factor: h.uniform_energy_factor.value,
            first_hour_rating: h.first_hour_rating.value,
            input: h.input.value,
            heat_pump_output: watts(if matches!(h.kind.value, HeaterKind::HeatPump) { 1_700.0 } else { 0.0 }),
        },
        body: tank_body(h.kind.value, h.nominal_volume.value.get::<cubic_meter>() / GALLON_M3),
    }
}

/// Nominal volumes on sale, US gallons; common practice, no source. Above 55 gal federal rules ask electric
/// tanks for a heat pump.
const ELECTRIC_GAL: [f64; 4] = [30.0, 40.0, 50.0, 55.0];
const FUEL_GAL: [f64; 5] = [30.0, 40.0, 50.0, 65.0, 75.0];

/// A new tank of a plain kind: the size on sale nearest the present one's, or one size up where the household
/// runs out of hot water now.
fn tank(id: CandidateId, kind: HeaterKind, case: &Case) -> Candidate {
    let present_gal = case.heater.nominal_volume.value.get::<cubic_meter>() / GALLON_M3;
    let sizes: &[f64] = if matches!(kind, HeaterKind::Electric) { &ELECTRIC_GAL } else { &FUEL_GAL };
    let nearest = (0..sizes.len())
        .min_by(|a, b| (sizes[*a] - present_gal).abs().total_cmp(&(sizes[*b] - present_gal).abs()))
        .unwrap_or(0);
    let up = usize::from(matches!(case.household.runs_out_now.value, YesNo::Yes));
    plain(id, kind, sizes[(nearest + up).min(sizes.len() - 1)])
}

/// A tank without a heat pump, of a volume in US gallons, new, with figures typical of its kind.
pub fn plain(id: CandidateId, kind: HeaterKind, gal: f64) -> Candidate {
    Candidate {
        id,
        called: String::new(),
        label: Label {
            kind,
            nominal_volume: gallons(gal),
            uniform_energy_factor: present::typical_uniform_energy_factor(kind, gal, 0.0),
            first_hour_rating: gallons(present::typical_first_hour_rating_gal(kind, gal)),
            input: watts(present::typical_input_w(kind)),
            heat_pump_output: watts(0.0),
        },
        body: tank_body(kind, gal),
    }
}

/// Size, weight and connection of a plain tank: a 50 gal electric tank is about 60 by 20 in and weighs
/// about 125 lb; others in proportion to the surface.
fn tank_body(kind: HeaterKind, gal: f64) -> Body {
    let scale = libm::cbrt(gal / 50.0);
    let electric = matches!(kind, HeaterKind::Electric | HeaterKind::HeatPump);
    Body {
        height: inches(60.0 * scale),
        diameter: inches(if electric { 20.5 } else { 21.5 } * scale),
        empty_mass: Mass::new::<pound>(if electric { 125.0 } else { 155.0 } * scale * scale),
        volts: if electric { 240.0 } else { 0.0 },
        breaker_a: if electric { 30.0 } else { 0.0 },
        free_air: cubic_metres(0.0),
        sound_power_db: 0.0,
    }
}
