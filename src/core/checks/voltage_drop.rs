//! Volts lost on the run of a circuit that is used again: there and back.

use super::Seen;
use super::judge::{at_least, over};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::site::WireMetal;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

use super::circuit::{load_w, reused, volts};

/// Thicker wires over a long run, dollars (from memory).
const THICKER: f64 = 700.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if !s.two_pole() || !reused(s).0 {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.voltage_drop);
    let (volts, amps) = (volts(s), electrical::current_a(load_w(s), volts(s)));
    let metal = usize::from(matches!(site.wire_metal.value, WireMetal::Aluminium));
    let awg = site.wire_size.value.awg();
    let wire = s.rules.conductors.is.iter().find(|w| w.awg == awg)?;
    let share = |run: f64| electrical::voltage_drop_v(amps, wire.ohm_per_m[metal], run) / volts;
    let could = over(&[site.run_m], &|v| at_least(rule.is, share(v[0]), Fit::FitsWithWork));
    let id = could.say([
        "check-voltage-drop-fits",
        "check-voltage-drop-long",
        "check-voltage-drop-measure",
        "check-voltage-drop-long",
    ]);
    let lost = share(site.run_m.value) * 100.0;
    let says = Message::new(id).quantity("lost", lost, Unit::Percent).quantity(
        "most",
        rule.is * 100.0,
        Unit::Percent,
    );
    let thicker = s.rules.conductors.is.iter().find(|w| {
        electrical::voltage_drop_v(amps, w.ohm_per_m[0], site.run_m.high) <= rule.is * volts
            && w.copper_a[0] >= site.breaker_a.value
    });
    let wires = Work::new(WorkKind::Wires, THICKER)
        .sized("wire", thicker.map_or(6.0, |w| f64::from(w.awg)), Unit::One)
        .sized("run", site.run_m.value, Unit::Metre);
    Some(
        Finding::new("voltage-drop", could, says, rule.cites)
            .by("relation-voltage-drop")
            .using("figure-amps", amps, Unit::Ampere, Provenance::Assumed)
            .using("figure-wire", f64::from(awg), Unit::One, site.wire_size.from)
            .given("figure-run", site.run_m, Unit::Metre)
            .using("figure-volts", volts, Unit::Volt, s.case.circuit.supply.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, wires)
            .asking("run_length")
            .asking("wire_size"),
    )
}
