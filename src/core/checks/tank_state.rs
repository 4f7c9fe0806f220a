//! A tank that leaks cannot be kept.

use super::Seen;
use super::judge::Could;
use crate::core::case::TankSigns;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;

pub(super) fn check(s: &Seen) -> Option<Finding> {
    let leaks = matches!(s.case.heater.signs.value, TankSigns::Leaking);
    (s.keeps() && leaks).then(|| {
        let says = Message::new("check-tank-state-leaks");
        Finding::new("tank-state", Could::only(Fit::DoesNotFit), says, "rule-common-practice")
            .let_in_by(Message::new("need-new-tank"))
            .asking("signs")
            .cautioned("caution-leak")
    })
}
