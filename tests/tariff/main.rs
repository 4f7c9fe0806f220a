//! Electricity by the hour, in the verdict and beside it, schedules, and CO₂ over the years: against closed forms and
//! over simulated years.

mod emission;
mod hours;
mod verdict;

use tankful::core::candidates::CandidateId;
use tankful::core::case::{Case, TariffKind};
use tankful::core::pipeline::Cache;
use tankful::core::tariff::report::{self, ByHour, TimeOfUse};
use tankful::job::answers::Answers;
use tankful::job::complete::complete;

/// A case with a peak from 4 to 9 on weekdays.
fn with_peak(mut case: Case, peak: f64, low: f64) -> Case {
    case.prices.tariff.kind.value = TariffKind::Time;
    case.prices.tariff.peak.value = peak;
    case.prices.tariff.low.value = low;
    case
}

/// The household that answered nothing, with a peak from 4 to 9.
fn by_hour(peak: f64, low: f64) -> Case {
    with_peak(complete(&Answers::default()), peak, low)
}

fn of(case: &Case) -> TimeOfUse {
    report::of(case, &mut Cache::default())
}

fn find(t: &TimeOfUse, id: CandidateId) -> &ByHour {
    t.candidates.iter().find(|c| c.id == id).expect("a candidate")
}
