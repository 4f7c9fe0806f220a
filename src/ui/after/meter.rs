//! Did it do what we said? Two readings with their days, and how they stand against the simulated year.

use super::After;
use super::field::{Number, date, shown};
use crate::core::after::meter::{Against, Compared, Meter, compare, unit};
use crate::core::candidates::CandidateId;
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::job::after as kept;
use crate::job::questions::Value;
use crate::ui::components::parts::pick;
use crate::ui::state::Page;
use leptos::prelude::*;

/// The form and its verdict.
pub fn form(after: After) -> AnyView {
    let page = after.page;
    let meter = Memo::new(move |_| after.done.with(kept::meter));
    // Bills of fuel belong to a house that burns some.
    let burns = after.with(|s| {
        let fuel = |y: &crate::core::outcome::YearResult| y.fuel_year_kwh() > 0.0;
        Some(fuel(&s.chosen()?.year) || fuel(&s.shared.0.of(CandidateId::Keep)?.year))
    });
    let kinds = Meter::ALL.into_iter().filter(|m| *m != Meter::Fuel || burns == Some(true));
    let options = kinds.map(|m| (String::from(m.code()), page.key(m.key()))).collect();
    let amount = move |what: &'static str, own: &'static str, bill: &'static str| {
        move || {
            let name = page.key(if meter.get() == Meter::Own { own } else { bill });
            amount(after, meter, what, name)
        }
    };
    let none = Signal::stored(String::new());
    view! {
        <section class="meter" aria-labelledby="meter-name" data-test="meter">
            <h2 id="meter-name">{page.key("after-meter")}</h2>
            <p>{page.key("meter-about")}</p>
            {pick(
                page.key("meter-which"),
                "meter-which",
                options,
                Signal::derive(move || String::from(meter.get().code())),
                Callback::new(move |code: String| after.note(kept::METER, Value::code(&code))),
            )}
            <div class="after-top">
                {date(after, kept::METER_FROM, "meter-from", none)}
                {amount(kept::METER_FIRST, "meter-first", "meter-first-bill")}
                {date(after, kept::METER_TO, "meter-to", none)}
                {amount(kept::METER_LAST, "meter-last", "meter-last-bill")}
            </div>
            <div role="status" data-test="meter-says">{move || verdict(after)}</div>
        </section>
    }
    .into_any()
}

fn amount(after: After, meter: Memo<Meter>, what: &'static str, name: String) -> AnyView {
    let page = after.page;
    let burned =
        after.with(|s| Some(s.case.heater.kind.value)).unwrap_or(crate::core::case::HeaterKind::Electric);
    let unit = unit(meter.get_untracked(), burned);
    let noted = Memo::new(move |_| after.done.with(|d| kept::number(d, what)));
    let number = Number {
        name,
        code: what.replace('.', "-"),
        sign: Signal::derive(move || page.words().unit_sign(unit)),
        now: Signal::derive(move || {
            noted.get().and_then(|q| q.to(unit)).map(|q| shown(q.value, 1)).unwrap_or_default()
        }),
        write: Callback::new(move |given: Option<f64>| {
            after.note_or_not(what, given.map(|v| Value::number(v, unit)));
            Ok(())
        }),
    };
    number.field(after)
}

/// The readings compared, once all are there; or why they cannot be.
pub fn compared(after: After) -> Option<Result<Compared, Message>> {
    after.with(|s| {
        let readings = after.done.with(|d| kept::readings(d, s.case.heater.kind.value))?;
        let before = &s.shared.0.of(CandidateId::Keep)?.year;
        Some(compare(&s.fitted()?, before, &readings).map_err(|bad| bad.message()))
    })
}

fn verdict(after: After) -> AnyView {
    let page = after.page;
    match compared(after) {
        None => view! { <p class="quiet">{page.key("meter-wait")}</p> }.into_any(),
        Some(Err(why)) => view! { <p class="refusal">{page.say(&why)}</p> }.into_any(),
        Some(Ok(found)) => says(page, &found),
    }
}

/// What was expected, what was measured, and the likely reasons.
pub fn says(page: Page, c: &Compared) -> AnyView {
    let kwh = |v: f64| Quantity::new(v, Unit::KilowattHour);
    let money = |v: f64| Quantity::new(v, Unit::Dollar);
    let sentence = Message::new("meter-compared")
        .with("days", c.days)
        .with("expected", kwh(c.expected_kwh))
        .with("low", kwh(c.band_kwh.0))
        .with("high", kwh(c.band_kwh.1))
        .with("measured", kwh(c.measured_kwh))
        .with("money", money(c.money.1))
        .with("said", money(c.money.0));
    let against = match c.against {
        Against::Less => "meter-less",
        Against::AsExpected => "meter-as-expected",
        Against::More => "meter-more",
    };
    let off = c.against != Against::AsExpected;
    let reasons = c.reasons.iter().map(|key| view! { <li>{page.key(key)}</li> }).collect_view();
    let reasons = off.then(|| view! { <p>{page.key("meter-look")}</p> <ol>{reasons}</ol> });
    view! {
        <div class:off=off class:within=!off data-against=against>
            <p><strong>{page.key(against)}</strong></p>
            <p>{page.say(&sentence)}</p>
            {reasons}
        </div>
    }
    .into_any()
}
