//! The outlook in sentences: identities of words with their figures.

use super::Outlook;
use crate::core::candidates::CandidateId;
use crate::core::life::replace::{LifeLeft, Moment};
use crate::core::message::{Arg, Message};
use crate::core::money::emission::Emission;
use crate::core::outcome::Outcome;
use crate::core::tariff::report::{ByHour, TimeOfUse};
use crate::core::units::{Quantity, Unit};

/// Money as a sentence may say it: no dollar here is surer than that.
fn about(dollars: f64) -> Quantity {
    let step = if dollars.abs() < 1_000.0 { 10.0 } else { 100.0 };
    Quantity::new((dollars / step).round() * step, Unit::Dollar)
}

fn whole_years(years: f64) -> Quantity {
    Quantity::new(years.round(), Unit::Year)
}

fn percent(share: f64) -> Quantity {
    Quantity::new((100.0 * share).round(), Unit::Percent)
}

/// Life left: the chance, what a failure costs, the best moment, and how sure that is.
pub fn life(l: &LifeLeft, outcome: &Outcome) -> Vec<Message> {
    let mut says = Vec::new();
    for c in &l.chances {
        says.push(
            Message::new("sure-life-chance")
                .with("years", Quantity::new(c.years, Unit::Year))
                .with("chance", percent(c.chance))
                .with("low", percent(c.low_high.0))
                .with("high", percent(c.low_high.1)),
        );
    }
    let e = &l.emergency;
    says.push(
        Message::new("sure-life-emergency")
            .with("total", about(e.total()))
            .with("low", about(e.low_high.0))
            .with("high", about(e.low_high.1)),
    );
    if e.rush >= 5.0 {
        says.push(Message::new("sure-life-rush").with("amount", about(e.rush)));
    }
    if e.damage >= 5.0 {
        says.push(Message::new("sure-life-damage").with("amount", about(e.damage)));
    }
    if e.worse_choice >= 5.0 {
        says.push(
            Message::new("sure-life-worse")
                .with("amount", about(e.worse_choice))
                .with("same", outcome.name_of(l.same))
                .with("heater", outcome.name_of(l.planned)),
        );
    }
    says
}

/// The best moment, in one sentence.
pub fn moment(l: &LifeLeft) -> Message {
    match l.best {
        Moment::Now => Message::new("sure-moment-now"),
        // Less than a year to go is this year.
        Moment::InYears(years) if years < 1.0 => Message::new("sure-moment-soon"),
        Moment::InYears(years) => Message::new("sure-moment-years").with("years", whole_years(years)),
        Moment::WhenItFails => Message::new("sure-moment-late"),
    }
}

/// What running the present heater costs a year, and the one bought in time with its price spread over its life.
pub fn a_year(l: &LifeLeft, outcome: &Outcome) -> Message {
    Message::new("sure-moment-year")
        .with("keep", about(l.keep_year))
        .with("planned", about(l.planned_year))
        .with("heater", outcome.name_of(l.planned))
}

/// What waiting costs, where a failure can be waited for at all: a year, and five.
pub fn waiting(l: &LifeLeft) -> Vec<Message> {
    [1_usize, 5]
        .iter()
        .filter_map(|&years| {
            let cost = *l.waiting.get(years)?;
            let say = Message::new(if cost >= 0.0 { "sure-waiting-costs" } else { "sure-waiting-saves" });
            Some(say.with("years", years as i64).with("amount", about(cost.abs())))
        })
        .collect()
}

/// Electricity by the hour: what it costs, and what a schedule does, for the candidate that is shown.
pub fn by_hour(t: &TimeOfUse, of: &ByHour, outcome: &Outcome) -> Vec<Message> {
    let name = outcome.name_of(of.id);
    if !t.by_hour {
        return vec![Message::new("sure-tariff-flat")];
    }
    if of.electricity_kwh < 50.0 {
        return vec![Message::new("sure-tariff-fuel").with("heater", name)];
    }
    let mut says = vec![
        Message::new("sure-tariff-cost")
            .with("heater", name)
            .with("amount", about(of.tariff_cost))
            .with("flat", about(of.flat_cost))
            .with("share", percent(of.peak_share)),
    ];
    let Some(s) = &of.schedule else {
        says.push(Message::new("sure-schedule-none"));
        return says;
    };
    let raised = s.raised_c.map(|c| Quantity::new(c, Unit::DegC));
    if s.advised {
        says.push(
            Message::new("sure-schedule-saves")
                .with("amount", about(s.saves))
                .with("share", percent(s.peak_share)),
        );
        says.push(match raised {
            Some(to) => Message::new("sure-schedule-raised").with("to", to),
            None => Message::new("sure-schedule-held"),
        });
        says.push(Message::new("sure-schedule-warm"));
    } else if s.saves < 10.0 {
        says.push(Message::new("sure-schedule-little"));
    } else {
        says.push(Message::new("sure-schedule-cold").with("amount", about(s.saves)));
    }
    says
}

/// The candidates worth a word on tariffs: the advised one, and the present one.
pub fn shown<'a>(t: &'a TimeOfUse, outcome: &Outcome) -> Vec<&'a ByHour> {
    let mut ids = vec![outcome.advice.best];
    if outcome.advice.best != CandidateId::Keep {
        ids.push(CandidateId::Keep);
    }
    ids.iter().filter_map(|id| t.candidates.iter().find(|c| c.id == *id)).collect()
}

/// CO₂ over the years, a sentence a candidate.
pub fn emission(e: &Emission, outcome: &Outcome) -> Message {
    let tonnes = |kg: f64| Arg::Number(kg / 1_000.0, 1);
    let [all, low, high] = e.total();
    Message::new("sure-emission")
        .with("heater", outcome.name_of(e.id))
        .with("first", Arg::Number(e.grid_kg + e.fuel_kg, 0))
        .with("years", e.by_year.len() as i64)
        .with("all", tonnes(all))
        .with("low", tonnes(low))
        .with("high", tonnes(high))
}

/// Everything in sentences under headings (keys), as the report for people has it.
pub fn all(o: &Outlook, outcome: &Outcome) -> Vec<(&'static str, Vec<Message>)> {
    let mut parts = Vec::new();
    if let Some(l) = &o.life {
        let mut says = vec![moment(l), a_year(l, outcome)];
        says.extend(waiting(l));
        says.extend(life(l, outcome));
        parts.push(("sure-life", says));
    }
    let mut tariff: Vec<Message> = Vec::new();
    for of in shown(&o.time_of_use, outcome) {
        for say in by_hour(&o.time_of_use, of, outcome) {
            if !tariff.contains(&say) {
                tariff.push(say);
            }
        }
    }
    if o.time_of_use.by_hour {
        tariff.push(Message::new("sure-tariff-verdict"));
    }
    parts.push(("sure-tariff", tariff));
    parts.push(("sure-emissions", o.emissions.iter().map(|e| emission(e, outcome)).collect()));
    parts
}
