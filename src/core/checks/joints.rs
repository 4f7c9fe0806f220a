//! Dissimilar metals: steel screwed to copper rusts; brass or dielectric joints keep them apart. No soldering heat on the
//! tank's own connections: it melts their plastic lining (common practice, no source).

use super::Seen;
use crate::core::finding::{Finding, Fit};
use crate::core::message::Message;
use crate::core::site::PipeMaterial;
use crate::core::units::Unit;
use crate::core::work::{Work, WorkKind};

pub(super) fn check(s: &Seen) -> Option<Finding> {
    if s.keeps() {
        return None;
    }
    let pipes = s.case.site.pipes;
    // The tank's own connections are steel: copper needs a joint there, steel pipes need one where copper begins.
    let could = s.metal_pipes();
    let id = match (could.fit(), pipes.value) {
        (Fit::MeasureFirst, _) => "check-joints-look",
        (_, PipeMaterial::Plastic) => "check-joints-plastic",
        (_, PipeMaterial::Steel) => "check-joints-steel",
        _ => "check-joints-copper",
    };
    Some(
        Finding::new("joints", could, Message::new(id), s.rules.dissimilar)
            .chosen("figure-pipes", pipes, format!("q-pipe-material-{}", pipes.value.code()))
            .with_work_if(
                could.worst >= Fit::FitsWithWork,
                Work::new(WorkKind::Joints, 0.0).sized("count", 2.0, Unit::One),
            )
            .asking("pipe_material"),
    )
}
