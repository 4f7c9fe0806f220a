//! A breaker that is too large for the heater: it would not trip in time. (This is the one check in which a larger
//! breaker is worse; whether it is large enough is the circuit's.)

use super::Seen;
use super::judge::{Could, at_least};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

use super::circuit::{load_w, reused, volts};

/// Another breaker, dollars (from memory).
const BREAKER: f64 = 120.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() || !reused(s).0 {
        return None;
    }
    let (has, rule) = (s.case.site.breaker_a, s.rules.largest_breaker);
    let amps = electrical::current_a(load_w(s), volts(s));
    let largest = electrical::next_size(s.rules.breakers_a, rule.is * amps).unwrap_or(rule.is * amps);
    let plate = s.candidate.body.breaker_a;
    let most = if plate > largest { plate } else { largest };
    // Nobody has read the breaker: the circuit's check asks for that, once.
    let could = Could::only(at_least(most, has.value, Fit::FitsWithWork));
    let id = could.say([
        "check-overcurrent-fits",
        "check-overcurrent-large",
        "check-overcurrent-large",
        "check-overcurrent-large",
    ]);
    let says = Message::new(id).quantity("most", most, Unit::Ampere).quantity("has", has.value, Unit::Ampere);
    let breaker = Work::new(WorkKind::Breaker, BREAKER).sized("breaker", most, Unit::Ampere);
    Some(
        Finding::new("overcurrent", could, says, rule.cites)
            .by("relation-overcurrent")
            .using("figure-amps", amps, Unit::Ampere, Provenance::Assumed)
            .given("figure-breaker", has, Unit::Ampere)
            .with_work_if(could.worst >= Fit::FitsWithWork, breaker)
            .asking("breaker")
            .cautioned("caution-mains"),
    )
}
