//! The numbers by which links name things. They are for ever: every list here is only appended to, and so
//! are the options of a question, kinds of heater, figures and kinds of further work, whose place is their
//! number. A test holds all of them to the list in `tests/jobs/links/numbers.txt`.

use super::coder::crc;
use crate::core::climate::places;
use crate::core::units::Unit;
use crate::job::file::units_like;
use crate::job::questions::{Id, Kind, Question};

/// Questions by number.
pub(super) const QUESTIONS: &[Id] = &[
    Id::Adults,
    Id::Teenagers,
    Id::Children,
    Id::ShowersPerDay,
    Id::ShowerTime,
    Id::ShowerFlow,
    Id::BathsPerWeek,
    Id::TubVolume,
    Id::ShowersInARow,
    Id::DishwasherLoads,
    Id::HotWashes,
    Id::RunsOutNow,
    Id::HeaterKind,
    Id::HeaterAge,
    Id::HeaterVolume,
    Id::HeaterFactor,
    Id::HeaterFirstHour,
    Id::HeaterInput,
    Id::Setpoint,
    Id::AnodeChanged,
    Id::Signs,
    Id::SharesFlue,
    Id::Place,
    Id::OutdoorMean,
    Id::OutdoorRange,
    Id::ColdTap,
    Id::RoomKind,
    Id::RoomVolume,
    Id::Headroom,
    Id::WayIn,
    Id::Door,
    Id::RoomWinter,
    Id::RoomSummer,
    Id::Dampness,
    Id::Dehumidifier,
    Id::HouseHeat,
    Id::HouseCooled,
    Id::DrainKind,
    Id::DrainDistance,
    Id::DrainRise,
    Id::Supply,
    Id::Breaker,
    Id::Own120,
    Id::FreeSpaces,
    Id::PriceElectricity,
    Id::PriceGas,
    Id::PricePropane,
    Id::PriceOil,
    Id::InstalledSame,
    Id::InstalledHeatPump,
    Id::Rebate,
    Id::Horizon,
    Id::DiscountRate,
    Id::PriceGrowth,
    Id::LabelScale,
    Id::Hardness,
    Id::StairTurn,
    Id::StandUp,
    Id::Footprint,
    Id::ServiceSpace,
    Id::Floor,
    Id::FinishedBelow,
    Id::QuietRoom,
    Id::QuietWall,
    Id::QuietDistance,
    Id::FuelLeft,
    Id::Ducts,
    Id::Seismic,
    Id::DrainFreezes,
    Id::WireSize,
    Id::WireMetal,
    Id::CableKind,
    Id::RunLength,
    Id::Wires,
    Id::Disconnect,
    Id::ServiceRating,
    Id::LargeLoads,
    Id::HouseArea,
    Id::Pressure,
    Id::ClosedBy,
    Id::ExpansionVolume,
    Id::ExpansionPrecharge,
    Id::PipeMaterial,
    Id::ShutoffWorks,
    Id::ReliefPipe,
    Id::Pan,
    Id::FixturesBelow,
    Id::MixingValve,
    Id::Recirculation,
    Id::LoopLength,
    Id::LoopCovered,
    Id::Tariff,
    Id::PricePeak,
    Id::PriceLow,
    Id::PeakFrom,
    Id::PeakTo,
    Id::PeakDays,
    Id::PeakSeason,
    Id::GridChange,
];

/// Units by number: a unit's number is its place among those of its dimension here.
const UNITS: &[Unit] = Unit::ALL;

/// The number of a unit among those like it.
pub(super) fn of_unit(unit: Unit) -> usize {
    alike(unit).position(|u| u == unit).unwrap_or(0)
}

/// The unit of this number like another.
pub(super) fn unit(like: Unit, number: usize) -> Option<Unit> {
    alike(like).nth(number).filter(|u| units_like(like).contains(u))
}

fn alike(unit: Unit) -> impl Iterator<Item = Unit> {
    UNITS.iter().copied().filter(move |u| u.dimension() == unit.dimension())
}

/// The unit that numbers of a question are like.
pub(super) fn unit_of(id: Id) -> Option<Unit> {
    match Question::get(id).kind {
        Kind::Number { us, .. } => Some(us),
        Kind::Choice(_) | Kind::Place => None,
    }
}

/// A listed place's number, of 24 bits: its check sum. Places come and go in the list; their codes stay.
pub(super) fn of_place(id: &str) -> u32 {
    crc(id.bytes()) & 0x00ff_ffff
}

/// The place with this number.
pub(super) fn place(number: u32) -> Option<&'static str> {
    places::all().map(|p| p.id).find(|id| of_place(id) == number)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::offer::{AdderKind, Figure};
    use std::fmt::Write as _;

    /// Every number there is, a line each.
    fn listing() -> String {
        let mut out = String::new();
        let mut line = |what: &str, codes: &[&str]| {
            let _ = writeln!(out, "{what}: {}", codes.join(" "));
        };
        line("questions", &QUESTIONS.iter().map(|id| id.code()).collect::<Vec<_>>());
        let mut firsts: Vec<Unit> = Vec::new();
        for &unit in UNITS {
            if firsts.iter().all(|f| f.dimension() != unit.dimension()) {
                firsts.push(unit);
            }
        }
        for unit in firsts {
            line(&format!("{:?}", unit.dimension()), &alike(unit).map(|u| u.code()).collect::<Vec<_>>());
        }
        line("heater", crate::core::case::HeaterKind::CODES);
        line("figures", &Figure::ALL.map(Figure::code));
        line("adders", &AdderKind::ALL.map(AdderKind::code));
        for &id in QUESTIONS {
            if let Kind::Choice(options) = Question::get(id).kind {
                line(id.code(), options);
            }
        }
        out
    }

    /// What links carry is for ever: each line may only grow at its end, and lines may be added.
    #[test]
    fn numbers_are_for_ever() {
        let kept =
            std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/jobs/links/numbers.txt"))
                .expect("the list of numbers");
        let now = listing();
        for line in kept.lines() {
            let grown = now.lines().any(|l| l == line || l.starts_with(&format!("{line} ")));
            assert!(grown, "links sent before would be misread: these may only be appended to:\n{line}");
        }
        assert!(now == kept, "complete tests/jobs/links/numbers.txt with what is new:\n{now}");
    }

    #[test]
    fn every_question_has_its_number() {
        for &id in Id::ALL {
            let count = QUESTIONS.iter().filter(|&&q| q == id).count();
            assert_eq!(count, 1, "append {id:?} at the end of QUESTIONS in src/job/link/numbers.rs");
        }
    }

    #[test]
    fn places_have_different_numbers() {
        let mut all: Vec<u32> = places::all().map(|p| of_place(p.id)).collect();
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count);
    }

    #[test]
    fn every_unit_comes_back() {
        for &u in Unit::ALL {
            for like in alike(u) {
                let back = unit(like, of_unit(u));
                assert!(back == Some(u) || !units_like(like).contains(&u), "{u:?} as {like:?}: {back:?}");
            }
        }
    }
}
