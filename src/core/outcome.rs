//! What comes out: for each candidate a simulated year, a busiest morning, findings and money; and the
//! advice drawn from them. Plain data: it crosses to the page, to files and to tests.
//!
//! Series are plain numbers with the unit in the name; single figures carry their unit in the type.

use super::candidates::{Candidate, CandidateId};
use super::case::{Input, Provenance};
pub use super::finding::{Finding, Fit};
use super::message::{Arg, Message};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use uom::si::f64::{Energy, Power, TemperatureInterval, ThermodynamicTemperature, Time, Volume};

/// A simulated year of one heater in one house. Months run from January.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct YearResult {
    /// Electricity used, by month, kWh.
    pub electricity_kwh: [f64; 12],
    /// Of which by elements, kWh.
    pub elements_kwh: [f64; 12],
    /// Share of the electricity that is used at peak hours, by month, 0 to 1; 0 where the price is the same at all hours:
    /// then nobody reads the meter by the hour. Whoever simulates reads it ([`crate::core::tariff::hours::Meter`]).
    pub peak_share: [f64; 12],
    /// Fuel burned (higher heating value), by month, kWh.
    pub fuel_kwh: [f64; 12],
    /// Heat in the water drawn, above the cold water's, by month, kWh.
    pub delivered_kwh: [f64; 12],
    /// Hot water drawn, by month, m³.
    pub drawn_m3: [f64; 12],
    /// Condensate, by month, litres: moisture taken out of the room, which spares a dehumidifier its work.
    pub condensate_l: [f64; 12],
    /// Condensate of the wettest day simulated, litres.
    pub condensate_worst_day_l: f64,
    /// Heat the house's heating has to make up (negative: heat it is spared), by month, kWh.
    pub heating_makeup_kwh: [f64; 12],
    /// Heat the house's cooling is spared (negative: that it has to remove), by month, kWh.
    pub cooling_relief_kwh: [f64; 12],
    /// Time the heat pump was locked out by cold air.
    pub locked_out: Time,
    /// Time the heat pump ran.
    pub heat_pump_time: Time,
    /// Heat given by the heat pump to the water.
    pub heat_pump_heat: Energy,
    /// Electricity used by the compressor and fan.
    pub heat_pump_electricity: Energy,
    /// Hot water below use temperature.
    pub shortfall: Volume,
    /// Time at the tap below use temperature.
    pub shortfall_time: Time,
    /// Mixed water asked for at showers, baths and sinks.
    pub asked: Volume,
    /// Heat lost through the jacket (and up the flue between firings).
    pub standby: Energy,
    /// Coldest hour in the room.
    pub room_coldest: ThermodynamicTemperature,
    /// What does not balance: in − out − stored. A check on the arithmetic.
    pub residual: Energy,
    /// Energy that went through, to compare the residual with.
    pub throughput: Energy,
    /// Room temperature by day, °C.
    pub room_c: Vec<f32>,
    /// Room temperature by day without the heater's heat pump, °C.
    pub room_undisturbed_c: Vec<f32>,
    /// Room relative humidity by day, 0 to 1.
    pub room_rh: Vec<f32>,
}

impl YearResult {
    /// Electricity of the year, kWh.
    pub fn electricity_year_kwh(&self) -> f64 {
        self.electricity_kwh.iter().sum()
    }

    /// Share of the year's electricity that is used at peak hours, 0 to 1.
    pub fn peak_share_year(&self) -> f64 {
        let all = self.electricity_year_kwh();
        let at_peak: f64 =
            self.electricity_kwh.iter().zip(&self.peak_share).map(|(kwh, share)| kwh * share).sum();
        if all > 0.0 { at_peak / all } else { 0.0 }
    }

    /// Fuel of the year, kWh (higher heating value).
    pub fn fuel_year_kwh(&self) -> f64 {
        self.fuel_kwh.iter().sum()
    }

    /// Drops the series by day, which only pictures need.
    pub fn forget_series(&mut self) {
        for series in [&mut self.room_c, &mut self.room_undisturbed_c, &mut self.room_rh] {
            *series = Vec::new();
        }
    }

    /// Heat delivered over electricity and fuel: the year's overall efficiency; `None` when nothing
    /// was used.
    pub fn efficiency(&self) -> Option<f64> {
        let used = self.electricity_year_kwh() + self.fuel_year_kwh();
        (used > 0.0).then(|| self.delivered_kwh.iter().sum::<f64>() / used)
    }
}

/// The busiest morning of the year at the coldest cold water, step by step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Morning {
    /// Seconds between two entries of the series.
    pub step_s: f64,
    /// Clock time of the first entry, seconds after midnight.
    pub start_s: f64,
    /// Wanted temperature at the shower head, °C; NaN-free: 0 when nobody draws.
    pub wanted_c: Vec<f32>,
    /// Temperature at the fixture, °C; 0 when nobody draws.
    pub tap_c: Vec<f32>,
    /// Temperature at the tank's outlet, °C.
    pub outlet_c: Vec<f32>,
    /// Power of heat pump and elements or burner, W.
    pub power_w: Vec<f32>,
    /// Layer temperatures from the bottom up, °C; `layers` values an entry, equal volumes.
    pub layers_c: Vec<f32>,
    /// How many layers an entry has.
    pub layers: usize,
    /// Spans of showers and other uses: start and end in seconds after midnight, and what it is
    /// (locale identity).
    pub uses: Vec<(f64, f64, Cow<'static, str>)>,
    /// When the shower first ran cold, seconds after midnight.
    pub cold_at_s: Option<f64>,
    /// Mixed water below use temperature.
    pub shortfall: Volume,
    /// Mixed water asked for.
    pub asked: Volume,
}

impl Morning {
    /// The morning's figures without its series, which only pictures need.
    #[must_use]
    pub fn without_series(&self) -> Morning {
        Morning {
            step_s: self.step_s,
            start_s: self.start_s,
            wanted_c: Vec::new(),
            tap_c: Vec::new(),
            outlet_c: Vec::new(),
            power_w: Vec::new(),
            layers_c: Vec::new(),
            layers: self.layers,
            uses: Vec::new(),
            cold_at_s: self.cold_at_s,
            shortfall: self.shortfall,
            asked: self.asked,
        }
    }

    /// Share of the water asked for that fell short; 0 where none was.
    pub fn short_share(&self) -> f64 {
        if self.asked.value > 0.0 { (self.shortfall / self.asked).value } else { 0.0 }
    }

    /// Whether everybody had a warm shower: at most a twentieth of the water asked for
    /// fell short, the last half minute of a shower.
    pub fn carries(&self) -> bool {
        self.shortfall <= 0.05 * self.asked
    }
}

/// What the label says and what the model of that heater scores in the published rating test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LabelCheck {
    /// Uniform energy factor on the label.
    pub factor: f64,
    /// Uniform energy factor of the model.
    pub model_factor: f64,
    /// First-hour rating on the label.
    pub first_hour: Volume,
    /// First-hour rating of the model.
    pub model_first_hour: Volume,
    /// Standby conductance of the model, W/K.
    pub standby_w_per_k: f64,
    /// Heat pump output at rating conditions.
    pub heat_pump_output: Power,
    /// When a figure could not be met: what to say.
    pub residual: Option<Message>,
}

/// Money of one candidate over the horizon, in today's money.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cost {
    /// Paid at the start: heater, work implied by the findings, less rebate.
    pub upfront: f64,
    /// Energy in the first year.
    pub energy_year: f64,
    /// Heating and cooling interaction and dehumidifier in the first year (positive: costs more).
    pub interaction_year: f64,
    /// Maintenance a year.
    pub maintenance_year: f64,
    /// Everything over the horizon, discounted.
    pub net_present_cost: f64,
    /// Spent by the end of each year, not discounted; the first entry is the start.
    pub spent: Vec<f64>,
    /// The same with low prices, and with high prices.
    pub spent_low_high: (Vec<f64>, Vec<f64>),
    /// Years until it has cost no more than keeping the present heater and replacing it with the same
    /// again; `None`: not within the horizon.
    pub payback_years: Option<f64>,
    /// The same, discounted.
    pub discounted_payback_years: Option<f64>,
    /// Running cost of 100 litres of hot water.
    pub per_100_l: f64,
    /// CO₂ a year, kg.
    pub emission_kg: f64,
}

/// Everything about one candidate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CandidateOutcome {
    /// The heater.
    pub candidate: Candidate,
    /// How its model meets its label.
    pub label: LabelCheck,
    /// Its simulated year.
    pub year: YearResult,
    /// Its busiest morning.
    pub morning: Morning,
    /// Whether it fits.
    pub findings: Vec<Finding>,
    /// Its money.
    pub cost: Cost,
}

impl CandidateOutcome {
    /// The worst finding.
    pub fn fit(&self) -> Fit {
        self.findings.iter().map(|f| f.fit).max().unwrap_or(Fit::Fits)
    }
}

/// A candidate that was not chosen, and what it would need.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RunnerUp {
    /// Which.
    pub id: CandidateId,
    /// Its net present cost less the chosen one's.
    pub extra_cost: f64,
    /// Why it is not first, and what it would need.
    pub needs: Vec<Message>,
}

/// Something to settle before the work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Settle {
    /// What to do.
    pub says: Message,
    /// The question that settles it (its code), if one does.
    pub ask: Option<Cow<'static, str>>,
}

/// The advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Advice {
    /// The recommended candidate.
    pub best: CandidateId,
    /// One sentence.
    pub verdict: Message,
    /// Three reasons.
    pub reasons: Vec<Message>,
    /// The others, in order.
    pub runners_up: Vec<RunnerUp>,
    /// What must be settled first.
    pub settle_first: Vec<Settle>,
    /// The usual cautions that belong to this advice.
    pub cautions: Vec<Message>,
    /// Work that the offer prices and no finding on the recommended heater asks for: possible extras.
    pub extras: Vec<Message>,
}

/// How a figure was worked out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Working {
    /// Locale identity of the figure's name.
    pub name: Cow<'static, str>,
    /// The result.
    pub result: Arg,
    /// The weakest provenance among what went in.
    pub from: Provenance,
    /// The relation in words (locale identity).
    pub relation: Cow<'static, str>,
    /// What was put in.
    pub inputs: Vec<Input>,
    /// The source (locale identity).
    pub source: Cow<'static, str>,
}

/// The whole result of a case.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Outcome {
    /// Every candidate simulated, in the order shown.
    pub candidates: Vec<CandidateOutcome>,
    /// The advice.
    pub advice: Advice,
    /// Cold water at its coldest.
    pub coldest_mains: ThermodynamicTemperature,
    /// Mains temperature by day, °C.
    pub mains_c: Vec<f32>,
    /// How far the recommended heater's room falls below its undisturbed temperature, at most.
    pub room_drop: TemperatureInterval,
}

impl Outcome {
    /// The outcome of a candidate.
    pub fn of(&self, id: CandidateId) -> Option<&CandidateOutcome> {
        self.candidates.iter().find(|c| c.candidate.id == id)
    }

    /// The name of a candidate.
    pub fn name_of(&self, id: CandidateId) -> Message {
        self.of(id).map_or_else(|| Message::new(id.key()), |c| c.candidate.name())
    }
}
