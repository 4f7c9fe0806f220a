//! Bonding: metal water pipe carries the house's bond; what takes a piece of it away puts a wire across.

use super::Seen;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::work::{Work, WorkKind};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let pipes = s.case.site.pipes;
    let could = s.metal_pipes();
    let id =
        could.say(["check-bonding-none", "check-bonding-wire", "check-bonding-look", "check-bonding-wire"]);
    Some(
        Finding::new("bonding", could, Message::new(id), s.rules.bonding)
            .chosen("figure-pipes", pipes, format!("q-pipe-material-{}", pipes.value.code()))
            .with_work_if(could.worst >= Fit::FitsWithWork, Work::new(WorkKind::Bonding, 0.0))
            .asking("pipe_material")
            .cautioned("caution-mains"),
    )
}
