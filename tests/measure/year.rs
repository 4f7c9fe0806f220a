//! One simulated year of each candidate of a household that answered nothing, for `cargo xtask measure years`:
//! natively by the clock and under callgrind, and the very same code as WebAssembly in a browser.
//!
//! `measure_year CANDIDATE TIMES` simulates that year so often; without arguments the candidates are listed.
//! `measure_year calibrations TIMES` calibrates every heater on offer so often, for `cargo xtask measure calibrations`.
//! `measure_year bits` prints a fingerprint of whole outcomes, futures and what would change them, which must be
//! the same everywhere.

use tankful::core::candidates::{Candidate, offered};
use tankful::core::case::{Case, Provenance};
use tankful::core::climate::days::Days;
use tankful::core::draws::{DrawYear, HouseholdUse};
use tankful::core::futures::{Study, Wishes};
use tankful::core::heater::Model;
use tankful::core::label::calibration::calibrate;
use tankful::core::outcome::YearResult;
use tankful::core::pipeline::advise;
use tankful::core::room::model::RoomModel;
use tankful::core::simulate::year::{House, simulate};
use tankful::core::units::to_celsius;
use tankful::job::offer::Offer;
use tankful::job::open::Open;
use tankful::job::questions::{Id, Value};
use tankful::job::{answers::Answers, complete::complete};

/// A year ready to be simulated.
struct Prepared {
    model: Model,
    draws: DrawYear,
    mains_c: Vec<f32>,
    outdoor_c: Vec<f32>,
    room: RoomModel,
}

impl Prepared {
    fn of(case: &Case, candidate: &Candidate) -> Self {
        let place = &case.place;
        let days =
            Days::of(place.outdoor_mean.value, place.outdoor_range.value, place.cold_water_shift.value);
        Self {
            model: calibrate(&candidate.label, to_celsius(case.heater.setpoint.value)).model,
            draws: DrawYear::generate(&HouseholdUse::of(&case.household), case.seed),
            mains_c: days.mains_c,
            outdoor_c: days.outdoor_c,
            room: RoomModel::of(&case.room, &case.place, 0.0),
        }
    }

    /// The part that is measured; callgrind finds it by its name.
    #[inline(never)]
    fn measured_year(&self) -> YearResult {
        let house = House {
            draws: &self.draws,
            mains_c: &self.mains_c,
            outdoor_c: &self.outdoor_c,
            room: &self.room,
        };
        simulate(&self.model, &house, None)
    }
}

fn candidates() -> (Case, Vec<Candidate>) {
    let case = complete(&Answers::new());
    let candidates = offered::candidates(&case);
    (case, candidates)
}

fn prepared(code: &str) -> Option<Prepared> {
    let (case, candidates) = candidates();
    let candidate = candidates.iter().find(|candidate| candidate.id.code() == code)?;
    Some(Prepared::of(&case, candidate))
}

/// The heaters on offer to houses with each kind of heater, without a second of the same label.
fn on_offer() -> Vec<Candidate> {
    let mut all: Vec<Candidate> = Vec::new();
    for kind in ["electric", "gas", "propane", "oil", "heat_pump"] {
        let mut answers = Answers::new();
        answers.set(Id::HeaterKind, Value::code(kind), Provenance::Answered).expect("an option of the list");
        for candidate in offered::candidates(&complete(&answers)) {
            if all.iter().all(|known| known.label != candidate.label) {
                all.push(candidate);
            }
        }
    }
    all
}

/// What such a heater is called in the table.
fn called(candidate: &Candidate) -> String {
    format!("{}/{}", candidate.label.kind.code(), candidate.id.code())
}

/// A fingerprint of every bit of whole outcomes and their futures, one a line: invented houses that between them
/// use each kind of heater, room and climate.
fn bits() -> String {
    let houses = [
        [(Id::HeaterKind, "electric"), (Id::Place, "us-mn-minneapolis"), (Id::RoomKind, "basement")],
        [(Id::HeaterKind, "gas"), (Id::Place, "us-ca-sacramento"), (Id::RoomKind, "closet")],
        [(Id::HeaterKind, "oil"), (Id::Place, "ca-ab-calgary"), (Id::RoomKind, "attic")],
        [(Id::HeaterKind, "heat_pump"), (Id::Place, "us-tx-houston"), (Id::RoomKind, "garage")],
    ];
    let lines = houses.map(|house| {
        let mut answers = Answers::new();
        for (id, code) in house {
            answers.set(id, Value::code(code), Provenance::Answered).expect("an option of the list");
        }
        let outcome = advise(&complete(&answers));
        let open = Open::of(&answers, &Offer::default());
        let study = Study::new(&open, Wishes { futures: 30, seed: 1 });
        let years: Vec<_> = (0..16).map(|index| study.lives(index)).collect();
        let fitted = study.fit(&study.as_it_stands(), &years, &outcome).expect("years to learn from");
        let drawn = study.draw(&fitted, &outcome, 0, 30);
        let futures = study.summary(&fitted, &outcome, &drawn, true);
        let changes = study.changes(&fitted, &outcome);
        let bytes = postcard::to_allocvec(&(outcome, futures, changes)).expect("plain data");
        // FNV-1a, 64 bits.
        let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
            (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
        });
        format!("{hash:016x} of {} bytes", bytes.len())
    });
    lines.join("\n")
}

/// The codes of the candidates, one a line.
#[cfg(not(target_arch = "wasm32"))]
fn codes() -> String {
    candidates().1.iter().map(|candidate| candidate.id.code()).collect::<Vec<_>>().join("\n")
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    if words == ["bits"] {
        println!("{}", bits());
        return std::process::ExitCode::SUCCESS;
    }
    if let [asked, times] = words.as_slice()
        && asked == "calibrations"
    {
        let times: u32 = times.parse().unwrap_or(1);
        for candidate in on_offer() {
            for _ in 0..times {
                let start = std::time::Instant::now();
                let found = calibrate(std::hint::black_box(&candidate.label), 50.0);
                let ms = start.elapsed().as_secs_f64() * 1e3;
                println!("{} {ms:.3} {:.4}", called(&candidate), found.check.model_factor);
            }
        }
        return std::process::ExitCode::SUCCESS;
    }
    let [code, times] = words.as_slice() else {
        println!("{}", codes());
        return std::process::ExitCode::SUCCESS;
    };
    let (Some(prepared), Ok(times)) = (prepared(code), times.parse::<u32>()) else {
        eprintln!("usage: measure_year [CANDIDATE TIMES]");
        return std::process::ExitCode::FAILURE;
    };
    for _ in 0..times {
        let start = std::time::Instant::now();
        let year = std::hint::black_box(&prepared).measured_year();
        let ms = start.elapsed().as_secs_f64() * 1e3;
        // Milliseconds, electricity, and how far the energy account is from closing, relative to its turnover.
        let residual = (year.residual / year.throughput).value;
        println!("{ms:.3} {:.3} {residual:.2e}", year.electricity_kwh.iter().sum::<f64>());
    }
    std::process::ExitCode::SUCCESS
}

#[cfg(target_arch = "wasm32")]
fn main() {}

#[cfg(target_arch = "wasm32")]
mod page {
    //! The same for a page that holds the watch.
    use super::{Prepared, YearResult, prepared};
    use wasm_bindgen::prelude::wasm_bindgen;

    /// The fingerprint of whole outcomes.
    #[wasm_bindgen]
    pub fn bits() -> String {
        super::bits()
    }

    /// The heaters to calibrate, in order.
    #[wasm_bindgen]
    pub fn on_offer() -> Vec<String> {
        super::on_offer().iter().map(super::called).collect()
    }

    /// Calibrates one of them; gives its factor, so that nothing can be left out.
    #[wasm_bindgen]
    pub fn calibrate(at: usize) -> f64 {
        super::on_offer().get(at).map_or(0.0, |c| super::calibrate(&c.label, 50.0).check.model_factor)
    }

    /// A year ready to be simulated.
    #[wasm_bindgen]
    pub struct Year(Prepared);

    #[wasm_bindgen]
    impl Year {
        /// The year of a candidate.
        #[wasm_bindgen(constructor)]
        pub fn new(code: &str) -> Result<Year, String> {
            prepared(code).map(Year).ok_or_else(|| format!("no candidate {code}"))
        }

        /// Simulates it; gives the electricity used, kWh, so that nothing can be left out.
        pub fn simulate(&self) -> f64 {
            let year: YearResult = self.0.measured_year();
            year.electricity_kwh.iter().sum()
        }
    }
}
