//! Does it fit: the physics and the arithmetic behind the checks. Plain functions from SI numbers (the unit stands
//! in each name) to SI numbers; they know no rule and no case. What a rule asks is data in `checks::rules`.

pub mod burns;
pub mod carrying;
pub mod condensate;
pub mod electrical;
pub mod noise;
pub mod pipework;
pub mod ventilation;
