//! One candidate's figures in a report.

use super::super::words::Words;
use super::{Said, figure};
use crate::core::case::{Input, Provenance};
use crate::core::message::Arg;
use crate::core::outcome::{CandidateOutcome, Finding, Fit, Morning, YearResult};
use crate::core::units::{KWH_J, Quantity, to_celsius};
use crate::core::work::Work;
use serde::Serialize;
use std::borrow::Cow;
use std::collections::BTreeMap;

/// One candidate. A year's figures are sums over its twelve months.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CandidateReport {
    /// Its code.
    pub id: &'static str,
    /// Its name.
    pub name: String,
    /// What its label says, and how the model of it does in the published rating test.
    pub label: LabelReport,
    /// Its simulated year.
    pub year: YearReport,
    /// Its busiest morning.
    pub morning: MorningReport,
    /// How it fits: the worst of its findings.
    pub fit: Fit,
    /// What the checks found.
    pub findings: Vec<FindingReport>,
    /// Its money.
    pub cost: CostReport,
    /// The raw series, when asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub series: Option<Series>,
}

/// Label figures, and the model's.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LabelReport {
    /// What heats the water (code).
    pub kind: &'static str,
    /// Nominal volume, litres.
    pub nominal_volume_l: f64,
    /// Uniform energy factor on the label.
    pub uniform_energy_factor: f64,
    /// The same of the model.
    pub model_uniform_energy_factor: f64,
    /// First-hour rating on the label, litres.
    pub first_hour_l: f64,
    /// The same of the model, litres.
    pub model_first_hour_l: f64,
    /// What the model could not meet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub residual: Option<Said>,
}

/// A simulated year.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct YearReport {
    /// Electricity, kWh.
    pub electricity_kwh: f64,
    /// Of which by elements, kWh.
    pub elements_kwh: f64,
    /// Share of the electricity that is used at peak hours; 0 where the price is the same at all hours.
    pub peak_share: f64,
    /// Fuel burned, higher heating value, kWh.
    pub fuel_kwh: f64,
    /// Heat in the hot water drawn, kWh.
    pub delivered_kwh: f64,
    /// Heat delivered over energy used; absent when nothing was used.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub efficiency: Option<f64>,
    /// Hot water drawn, litres.
    pub drawn_l: f64,
    /// Condensate, litres.
    pub condensate_l: f64,
    /// Heat lost through the jacket and up the flue, kWh.
    pub standby_kwh: f64,
    /// Heat the house's heating has to make up (negative: spared), kWh.
    pub heating_makeup_kwh: f64,
    /// Heat the house's cooling is spared (negative: added), kWh.
    pub cooling_relief_kwh: f64,
    /// Mixed water that was too cold, litres.
    pub shortfall_l: f64,
    /// How long it was too cold, minutes.
    pub shortfall_min: f64,
    /// How long the heat pump ran, hours.
    pub heat_pump_h: f64,
    /// How long cold air kept the heat pump from running, hours.
    pub locked_out_h: f64,
    /// Coldest hour in the room, °C.
    pub room_coldest_c: f64,
    /// What does not balance, as a share of the energy that went through.
    pub residual: f64,
}

/// The busiest morning.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MorningReport {
    /// Whether everybody had a warm shower.
    pub carries: bool,
    /// Mixed water asked for, litres.
    pub asked_l: f64,
    /// Of which too cold, litres.
    pub shortfall_l: f64,
    /// When the shower first ran cold, hours after midnight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cold_at_h: Option<f64>,
}

/// What a check found.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FindingReport {
    /// The check's code.
    pub check: String,
    /// The check's name.
    pub name: String,
    /// How it came out.
    pub fit: Fit,
    /// What was found.
    pub says: Said,
    /// How it comes out with the values taken.
    pub likely: Fit,
    /// The work it implies, or may need.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub work: Vec<WorkReport>,
    /// Rough price of that work with the values taken, dollars.
    pub work_usd: f64,
    /// What would let the heater in, where it does not fit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lets_in: Option<Said>,
    /// The figures used.
    pub figures: Vec<FigureReport>,
    /// The rule: standard and section, or where else it comes from.
    pub rule: Said,
    /// Codes of the questions that would settle it, the most telling first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub asks: Vec<String>,
    /// The usual caution.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub caution: Option<Said>,
}

/// A piece of work a finding asks for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorkReport {
    /// Its kind.
    pub kind: &'static str,
    /// In words, with sizes.
    pub text: String,
    /// Its sizes and quantities by name.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub sizes: BTreeMap<String, Quantity>,
    /// Rough price, dollars; 0 where an ordinary job's price has it already.
    pub usd: f64,
}

/// A figure a finding used.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FigureReport {
    /// What it is.
    pub name: String,
    /// In words.
    pub text: String,
    /// Where it came from.
    pub from: Provenance,
}

/// Money in today's dollars of the place.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CostReport {
    /// Paid at the start, less rebate.
    pub upfront_usd: f64,
    /// Energy in the first year.
    pub energy_year_usd: f64,
    /// What it makes the house's heating, cooling and drying cost in the first year (negative: spares).
    pub interaction_year_usd: f64,
    /// Maintenance a year.
    pub maintenance_year_usd: f64,
    /// Everything over the years counted, discounted.
    pub net_present_cost_usd: f64,
    /// Years until it has cost no more than keeping the present heater; absent: not in the years counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub payback_years: Option<f64>,
    /// The same, discounted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub discounted_payback_years: Option<f64>,
    /// Running cost of 100 litres of hot water.
    pub per_100_l_usd: f64,
    /// CO₂ a year, kg.
    pub emission_kg: f64,
    /// Spent by the end of each year, not discounted; the first is the start.
    pub spent_usd: Vec<f64>,
}

/// The raw series.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Series {
    /// The year, by month and by day.
    pub year: YearResult,
    /// The busiest morning, step by step.
    pub morning: Morning,
}

impl CandidateReport {
    pub(super) fn new(words: &Words, outcome: &CandidateOutcome, series: bool) -> CandidateReport {
        let (candidate, label) = (&outcome.candidate, &outcome.label);
        CandidateReport {
            id: candidate.id.code(),
            name: words.say(&candidate.name()),
            label: LabelReport {
                kind: candidate.label.kind.code(),
                nominal_volume_l: figure(candidate.label.nominal_volume.value * 1e3),
                uniform_energy_factor: figure(label.factor),
                model_uniform_energy_factor: figure(label.model_factor),
                first_hour_l: figure(label.first_hour.value * 1e3),
                model_first_hour_l: figure(label.model_first_hour.value * 1e3),
                residual: label.residual.as_ref().map(|m| Said::new(words, m)),
            },
            year: YearReport::new(&outcome.year),
            morning: MorningReport {
                carries: outcome.morning.carries(),
                asked_l: figure(outcome.morning.asked.value * 1e3),
                shortfall_l: figure(outcome.morning.shortfall.value * 1e3),
                cold_at_h: outcome.morning.cold_at_s.map(|s| figure(s / 3600.0)),
            },
            fit: outcome.fit(),
            findings: outcome.findings.iter().map(|f| FindingReport::new(words, f)).collect(),
            cost: CostReport::new(&outcome.cost),
            series: series.then(|| Series { year: outcome.year.clone(), morning: outcome.morning.clone() }),
        }
    }
}

impl YearReport {
    fn new(year: &YearResult) -> YearReport {
        let sum = |months: &[f64; 12]| figure(months.iter().sum());
        let through = year.throughput.value;
        YearReport {
            electricity_kwh: sum(&year.electricity_kwh),
            elements_kwh: sum(&year.elements_kwh),
            peak_share: figure(year.peak_share_year()),
            fuel_kwh: sum(&year.fuel_kwh),
            delivered_kwh: sum(&year.delivered_kwh),
            efficiency: year.efficiency().map(figure),
            drawn_l: figure(1e3 * year.drawn_m3.iter().sum::<f64>()),
            condensate_l: sum(&year.condensate_l),
            standby_kwh: figure(year.standby.value / KWH_J),
            heating_makeup_kwh: sum(&year.heating_makeup_kwh),
            cooling_relief_kwh: sum(&year.cooling_relief_kwh),
            shortfall_l: figure(year.shortfall.value * 1e3),
            shortfall_min: figure(year.shortfall_time.value / 60.0),
            heat_pump_h: figure(year.heat_pump_time.value / 3600.0),
            locked_out_h: figure(year.locked_out.value / 3600.0),
            room_coldest_c: figure(to_celsius(year.room_coldest)),
            // Far below six decimals: written as it is.
            residual: if through > 0.0 { year.residual.value / through } else { 0.0 },
        }
    }
}

impl FindingReport {
    fn new(words: &Words, finding: &Finding) -> FindingReport {
        FindingReport {
            check: finding.check.to_string(),
            name: words.check(&finding.check),
            fit: finding.fit,
            says: Said::new(words, &finding.says),
            likely: finding.likely,
            work: finding.work.iter().map(|w| WorkReport::new(words, w)).collect(),
            work_usd: figure(finding.work_cost()),
            lets_in: finding.lets_in.as_ref().map(|m| Said::new(words, m)),
            figures: finding.figures.iter().map(|f| FigureReport::new(words, f)).collect(),
            rule: Said { id: finding.rule.to_string(), text: words.key(&finding.rule) },
            asks: finding.asks.iter().map(ToString::to_string).collect(),
            caution: finding.caution.as_ref().map(|m| Said::new(words, m)),
        }
    }
}

impl WorkReport {
    fn new(words: &Words, work: &Work) -> WorkReport {
        let size = |(name, arg): &(Cow<str>, Arg)| match arg {
            Arg::Quantity(q) => Some((ToString::to_string(name), Quantity::new(figure(q.value), q.unit))),
            _ => None,
        };
        WorkReport {
            kind: work.kind.code(),
            text: words.say(&work.says),
            sizes: work.says.args.iter().filter_map(size).collect(),
            usd: figure(work.cost),
        }
    }
}

impl FigureReport {
    fn new(words: &Words, input: &Input) -> FigureReport {
        FigureReport { name: words.key(&input.label), text: words.arg(&input.value), from: input.from }
    }
}

impl CostReport {
    fn new(cost: &crate::core::outcome::Cost) -> CostReport {
        CostReport {
            upfront_usd: figure(cost.upfront),
            energy_year_usd: figure(cost.energy_year),
            interaction_year_usd: figure(cost.interaction_year),
            maintenance_year_usd: figure(cost.maintenance_year),
            net_present_cost_usd: figure(cost.net_present_cost),
            payback_years: cost.payback_years.map(figure),
            discounted_payback_years: cost.discounted_payback_years.map(figure),
            per_100_l_usd: figure(cost.per_100_l),
            emission_kg: figure(cost.emission_kg),
            spent_usd: cost.spent.iter().copied().map(figure).collect(),
        }
    }
}
