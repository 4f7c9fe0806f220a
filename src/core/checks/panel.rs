//! Room in the panel for a new circuit, and a service that carries it: the method for an existing dwelling counts what
//! is connected, the first part in full and the rest at a share.

use super::Seen;
use super::judge::{Could, at_least, over};
use crate::core::case::Provenance;
use crate::core::finding::{Finding, Fit};
use crate::core::fit::electrical;
use crate::core::message::Message;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

use super::burns;
use super::circuit::{load_w, reused, volts};

/// Room made in a panel, dollars (from memory).
const PANEL_SPACE: f64 = 500.0;
/// A larger service, dollars (from memory); devices that let loads take turns cost less.
const SERVICE: f64 = 2_500.0;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    // A heater that is electric now has its space and its share of the service already.
    if !s.two_pole()
        || reused(s).0
        || !(burns(s.case.heater.kind.value) || s.case.site.breaker_a.value <= 0.0)
    {
        return None;
    }
    let (site, rule) = (&s.case.site, s.rules.service_load);
    let [per_m2, fixed, in_full, share] = rule.is;
    let heater_w = load_w(s);
    let demand_a = |area: f64, large: f64| {
        let connected = per_m2 * area + fixed + large + heater_w;
        electrical::current_a(electrical::demand_w(connected, in_full, share), volts(s))
    };
    let space = over(&[site.free_spaces], &|v| at_least(v[0], 1.0, Fit::FitsWithWork));
    let load = over(&[site.service_a, site.house_m2, site.large_loads_w], &|v| {
        at_least(v[0], demand_a(v[1], v[2]), Fit::FitsWithWork)
    });
    let could = Could {
        likely: space.likely.max(load.likely),
        best: space.best.max(load.best),
        worst: space.worst.max(load.worst),
    };
    let demand = demand_a(site.house_m2.value, site.large_loads_w.value);
    let id = could.say(["check-panel-fits", "check-panel-full", "check-panel-measure", "check-panel-full"]);
    let says = Message::new(id)
        .quantity("load", demand, Unit::Ampere)
        .quantity("service", site.service_a.value, Unit::Ampere)
        .quantity("spaces", site.free_spaces.value, Unit::One);
    let service = Work::new(WorkKind::Service, SERVICE).sized("load", demand, Unit::Ampere).sized(
        "service",
        site.service_a.value,
        Unit::Ampere,
    );
    Some(
        Finding::new("panel", could, says, rule.cites)
            .by("relation-service")
            .given("figure-service", site.service_a, Unit::Ampere)
            .given("figure-house-area", site.house_m2, Unit::SquareMetre)
            .given("figure-large-loads", site.large_loads_w, Unit::Watt)
            .using("figure-element", heater_w, Unit::Watt, Provenance::Assumed)
            .using("figure-demand", demand, Unit::Ampere, site.large_loads_w.from)
            .given("figure-spaces", site.free_spaces, Unit::One)
            .with_work_if(space.likely > Fit::Fits, Work::new(WorkKind::PanelSpace, PANEL_SPACE))
            .with_work_if(load.likely > Fit::Fits, service)
            .asking("free_spaces")
            .asking("service_rating")
            .asking("large_loads")
            .cautioned("caution-mains"),
    )
}
