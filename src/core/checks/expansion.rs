//! Thermal expansion: water grows when it is heated, and where a valve keeps it from going back into the street's main it
//! needs a cushion. The tank is sized by Boyle's law from the growth, the pressure and the precharge.

use super::Seen;
use super::judge::{Could, at_least, over};
use super::rules::practice;
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::pipework;
use crate::core::message::Message;
use crate::core::site::ClosedBy;
use crate::core::units::{Unit, to_celsius};
use crate::core::work::{Work, WorkKind};
use uom::si::volume::cubic_meter;

/// An expansion tank, put in, dollars (from memory).
const TANK: f64 = 220.0;
/// The coldest water that comes in, °C (40 °F, as handbooks take it).
const COLD_C: f64 = 4.444;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let site = &s.case.site;
    let hot = to_celsius(s.case.heater.setpoint.value);
    let growth = pipework::growth_m3(s.candidate.label.nominal_volume.get::<cubic_meter>(), COLD_C, hot);
    // A valve that reduces the pressure, or one put in for the purpose, holds it there.
    let most = s.rules.pressure_pa.is;
    let fill = |p: f64| if p > most { practice::REDUCED_PA } else { p };
    let (pressure, tank, charge) = (site.pressure_pa, site.expansion_m3, site.precharge_pa);
    let closed = over(&[tank, charge, pressure], &|v| {
        let takes = pipework::takes_up_m3(v[0], v[1], fill(v[2]), practice::HIGHEST_PA);
        at_least(takes, growth, Fit::FitsWithWork)
    });
    let by = site.closed_by;
    let open = Could::only(Fit::Fits);
    let could = match by.value {
        ClosedBy::None => open.or(by.is_assumed(), closed),
        ClosedBy::Check | ClosedBy::Reducer => closed.or(by.is_assumed(), open),
    };
    if s.keeps() && could.fit() == Fit::MeasureFirst {
        return None;
    }
    let needs = pipework::expansion_tank_m3(growth, fill(pressure.value), practice::HIGHEST_PA)?;
    let size = on_sale(needs);
    let has_one = tank.value > 0.0;
    // Large enough, but wrongly charged.
    let charge_only = has_one && tank.value >= needs;
    let id = match (could.fit(), by.value) {
        (Fit::Fits, ClosedBy::None) => "check-expansion-open",
        (Fit::Fits, _) => "check-expansion-fits",
        (Fit::MeasureFirst, _) => "check-expansion-look",
        _ if charge_only => "check-expansion-charge",
        _ if has_one => "check-expansion-small",
        _ => "check-expansion-missing",
    };
    let litres = |m3: f64| m3 * 1e3;
    let kpa = fill(pressure.value) / 1e3;
    let says = Message::new(id)
        .quantity("growth", litres(growth), Unit::Litre)
        .quantity("size", litres(needs), Unit::Litre)
        .quantity("precharge", kpa, Unit::Kilopascal);
    let work = if charge_only {
        Work::new(WorkKind::Precharge, 0.0).sized("precharge", kpa, Unit::Kilopascal)
    } else {
        Work::new(WorkKind::ExpansionTank, TANK).sized("size", litres(size), Unit::Litre).sized(
            "precharge",
            kpa,
            Unit::Kilopascal,
        )
    };
    Some(
        Finding::new("expansion", could, says, s.rules.expansion)
            .by("relation-expansion")
            .chosen("figure-closed-by", by, format!("q-closed-by-{}", by.value.code()))
            .using("figure-growth", litres(growth), Unit::Litre, Provenance::Assumed)
            .using("figure-pressure", pressure.value / 1e3, Unit::Kilopascal, pressure.from)
            .using("figure-pressure-top", practice::HIGHEST_PA / 1e3, Unit::Kilopascal, Provenance::Assumed)
            .using("figure-precharge", charge.value / 1e3, Unit::Kilopascal, charge.from)
            .using("figure-expansion-has", litres(tank.value), Unit::Litre, tank.from)
            .using("figure-expansion-needs", litres(needs), Unit::Litre, pressure.from)
            .with_work_if(could.worst >= Fit::FitsWithWork, work)
            .asking("closed_by")
            .asking("expansion_volume")
            .asking("pressure")
            .asking("expansion_precharge")
            .cautioned("caution-pressure"),
    )
}

/// The smallest tank on sale that is large enough, m³; the largest where none is.
fn on_sale(needs_m3: f64) -> f64 {
    let sizes = practice::EXPANSION_TANKS_M3;
    sizes.into_iter().find(|size| *size >= needs_m3).unwrap_or(sizes[sizes.len() - 1])
}
