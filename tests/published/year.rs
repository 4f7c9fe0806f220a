//! The simulated year at its working resolution against itself at 192 layers and short steps.
//!
//! The fine tank is anchored to the independent integration by the weeks of `tank_draws.rs`; this carries
//! it to a year with the household's own draws, seasons and room, which is what the advice rests on.
use crate::fixture::{Worst, hold};
use tankful::core::calendar::DayOfYear;
use tankful::core::candidates::{CandidateId, offered};
use tankful::core::case::Case;
use tankful::core::climate::{mains::Mains, outdoor::OutdoorYear};
use tankful::core::draws::{DrawYear, HouseholdUse};
use tankful::core::heater::{Model, Source};
use tankful::core::label::calibration::calibrate;
use tankful::core::outcome::YearResult;
use tankful::core::room::model::RoomModel;
use tankful::core::simulate::year::{House, simulate};
use tankful::core::tank::MAX_SLOTS;
use tankful::core::units::to_celsius;
use tankful::job::{answers::Answers, complete::complete};

/// The project's aim: within 0.5 % of a high-resolution reference on yearly energy.
const YEARLY_ENERGY: f64 = 0.005;
/// Heat pumps with backup elements: a firing more or less is a tenth of a per cent, and whether one fires turns on a
/// fraction of a kelvin, so that no resolution settles a single year: with fine steps, 48 layers differ from 192 by up to
/// 0.27 %, 0.16 % as a root mean square. The aim is held by each tank's mean over seven years of draws, and, as a root mean
/// square, by single years; the worst of them, and the mean of the example's tanks, keep a drift from hiding in chance.
const TANKS_MEAN: f64 = 0.005;
const OVER_DRAWS_RMS: f64 = 0.004;
const WITH_BACKUP: f64 = 0.007;
const WITH_BACKUP_MEAN: f64 = 0.0025;
/// Heat delivered, which no threshold decides.
const YEARLY_HEAT: f64 = 0.005;
/// Longest heating step of the heat pump in the fine year, s.
const FINE_STEP_S: f64 = 20.0;

struct Household {
    draws: DrawYear,
    mains_c: Vec<f32>,
    outdoor_c: Vec<f32>,
    room: RoomModel,
}

impl Household {
    fn of(case: &Case) -> Self {
        let (mean, range) = (case.place.outdoor_mean.value, case.place.outdoor_range.value);
        let (mains, outdoor) = (Mains::from_outdoor(mean, range), OutdoorYear::new(mean, range));
        Self {
            draws: DrawYear::generate(&HouseholdUse::of(&case.household), case.seed),
            mains_c: DayOfYear::all().map(|day| to_celsius(mains.on(day)) as f32).collect(),
            outdoor_c: DayOfYear::all().map(|day| to_celsius(outdoor.on(day)) as f32).collect(),
            room: RoomModel::of(&case.room, &case.place, 0.0),
        }
    }

    fn year(&self, model: &Model, pump_step_s: Option<f64>) -> YearResult {
        let house = House {
            draws: &self.draws,
            mains_c: &self.mains_c,
            outdoor_c: &self.outdoor_c,
            room: &self.room,
        };
        simulate(model, &house, pump_step_s)
    }
}

fn energy_kwh(year: &YearResult) -> f64 {
    year.electricity_kwh.iter().chain(&year.fuel_kwh).sum()
}

/// True when elements stand by for a heat pump.
fn has_backup(model: &Model) -> bool {
    matches!(model.source, Source::HeatPump { backup: Some(_), .. })
}

#[test]
fn every_candidates_year_is_near_the_fine_one() {
    let case = complete(&Answers::new());
    let household = Household::of(&case);
    let setpoint_c = to_celsius(case.heater.setpoint.value);
    let mut plain = Worst::of("energy of a year, relative");
    let mut backed = Worst::of("energy of a year, with backup elements, relative");
    let mut heat = Worst::of("heat delivered in a year, relative");
    let mut residual = Worst::of("energy account of a year, relative to its turnover");
    let (mut excess, mut tanks) = (0.0, 0.0);
    for candidate in offered::candidates(&case) {
        let model = calibrate(&candidate.label, setpoint_c).model;
        let fine = Model { slots: MAX_SLOTS, ..model.clone() };
        let (working, fine) = (household.year(&model, None), household.year(&fine, Some(FINE_STEP_S)));
        let code = candidate.id.code();
        let (ours, reference) = (energy_kwh(&working), energy_kwh(&fine));
        println!("{code}: {ours:.1} kWh, fine {reference:.1} kWh");
        if has_backup(&model) {
            backed.see_relative(ours, reference, code);
            excess += ours / reference - 1.0;
            tanks += 1.0;
        } else {
            plain.see_relative(ours, reference, code);
        }
        let delivered = |year: &YearResult| year.delivered_kwh.iter().sum::<f64>();
        heat.see_relative(delivered(&working), delivered(&fine), code);
        for year in [&working, &fine] {
            residual.see((year.residual / year.throughput).value, 0.0, code);
        }
    }
    let mut mean = Worst::of("energy of a year, mean of the tanks with backup, relative");
    mean.see(excess / tanks, 0.0, tanks);
    hold([
        (plain, YEARLY_ENERGY),
        (backed, WITH_BACKUP),
        (mean, WITH_BACKUP_MEAN),
        (heat, YEARLY_HEAT),
        (residual, 1e-6),
    ]);
}

/// One household's year may sit on either side of a backup firing, and a lucky one proves little: so other
/// seeds' draws of the same household, which nothing was chosen by.
#[test]
fn backed_up_tanks_err_little_over_other_draws() {
    let mut squares = 0.0;
    let mut sum = 0.0;
    let mut worst = 0.0_f64;
    let mut count = 0.0;
    let mut by_tank: Vec<(CandidateId, f64)> = Vec::new();
    // The example's own draws, and six others'.
    let seeds = [complete(&Answers::new()).seed, 101, 102, 103, 104, 105, 106];
    for seed in seeds {
        let case = Case { seed, ..complete(&Answers::new()) };
        let household = Household::of(&case);
        for candidate in offered::candidates(&case) {
            let model = calibrate(&candidate.label, to_celsius(case.heater.setpoint.value)).model;
            if !has_backup(&model) {
                continue;
            }
            let fine = Model { slots: MAX_SLOTS, ..model.clone() };
            let (ours, reference) = (household.year(&model, None), household.year(&fine, Some(FINE_STEP_S)));
            let off = energy_kwh(&ours) / energy_kwh(&reference) - 1.0;
            println!("seed {seed}, {}: {:+.3} %", candidate.id.code(), 100.0 * off);
            squares += off * off;
            sum += off;
            worst = worst.max(off.abs());
            count += 1.0;
            match by_tank.iter_mut().find(|(id, _)| *id == candidate.id) {
                Some((_, sum)) => *sum += off,
                None => by_tank.push((candidate.id, off)),
            }
        }
    }
    for (id, sum) in by_tank {
        let mean = sum / seeds.len() as f64;
        println!("{}: mean {:+.3} %", id.code(), 100.0 * mean);
        assert!(mean.abs() < TANKS_MEAN, "{}: {mean}", id.code());
    }
    let rms = (squares / count).sqrt();
    println!("mean {:+.3} %, rms {:.3} %, worst {:.3} %", 100.0 * sum / count, 100.0 * rms, 100.0 * worst);
    assert!(rms < OVER_DRAWS_RMS && worst < WITH_BACKUP, "rms {rms}, worst {worst}");
}
