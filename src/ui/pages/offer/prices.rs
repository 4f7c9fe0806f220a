//! What an offer asks for labour and further work.

use super::change;
use crate::core::case::Provenance;
use crate::core::message::Message;
use crate::core::units::{Quantity, Unit};
use crate::job::answers::Answer;
use crate::job::offer::{AdderKind, LONGEST_NAME, MOST_ADDERS, MOST_DOLLARS, check_price};
use crate::job::questions::{Id, Kind, Value};
use crate::ui::components::bound::Bound;
use crate::ui::components::number::NumberField;
use crate::ui::components::parts::{Text, button, tick};
use crate::ui::model::Draft;
use crate::ui::over::contents::adder_name;
use crate::ui::state::Page;
use leptos::prelude::*;

/// A price: where it is read and written.
struct Price {
    /// Stem of its identities; once on a page.
    code: String,
    name: String,
    now: Signal<Option<f64>>,
    write: Callback<f64>,
}

impl Price {
    fn field(self) -> AnyView {
        let Price { code, name, now, write } = self;
        let draft = RwSignal::new(None::<Draft>);
        let dollars = |v| Quantity::new(v, Unit::Dollar);
        let set = move |answer: Option<Answer>| -> Result<(), Message> {
            let price = match answer.map(|a| a.value) {
                Some(Value::Number(q)) => q.value,
                _ => 0.0,
            };
            check_price("price", price).map_err(|refusal| refusal.message())?;
            write.run(price);
            Ok(())
        };
        let bound = Bound {
            code: StoredValue::new(code.clone()),
            name: StoredValue::new(name.clone()),
            id: Id::InstalledHeatPump,
            kind: Kind::Number {
                low: dollars(0.0),
                high: dollars(MOST_DOLLARS),
                us: Unit::Dollar,
                si: Unit::Dollar,
                step: 10.0,
            },
            unit: Signal::stored(Unit::Dollar),
            answer: Signal::derive(move || {
                now.get().map(|v| Answer { value: Value::Number(dollars(v)), from: Provenance::Answered })
            }),
            now: Signal::derive(move || now.get().map(dollars)),
            draft: draft.into(),
            keep: Callback::new(move |text| draft.set(text)),
            write: Callback::new(set),
            from: Some(Provenance::Answered),
            unknown: "offer-no-price",
        };
        view! {
            <strong id=format!("{code}-name")>{name}</strong>
            <NumberField bound/>
            <span id=format!("{code}-standing") hidden></span>
        }
        .into_any()
    }
}

/// Labour and every kind of work.
pub fn work(page: Page) -> AnyView {
    let labour = Price {
        code: String::from("labour"),
        name: page.key("offer-labour"),
        now: Signal::derive(move || Some(page.offer.with(|o| o.labour)).filter(|l| *l != 0.0)),
        write: Callback::new(move |price| change(page, |o| o.labour = price)),
    };
    let kinds =
        AdderKind::ALL.into_iter().filter(|k| *k != AdderKind::Own).map(|k| kind(page, k)).collect_view();
    view! {
        <div class="prices">
            <div class="price">{labour.field()}</div>
            {kinds}
        </div>
        {own(page)}
    }
    .into_any()
}

fn kind(page: Page, kind: AdderKind) -> AnyView {
    let get =
        move || page.offer.with(|o| o.adders.iter().find(|a| a.kind == kind).map(|a| (a.price, a.always)));
    let code = kind.code().replace('_', "-");
    let price = Price {
        code: format!("adder-{code}"),
        name: page.key(&kind.key()),
        now: Signal::derive(move || get().map(|(price, _)| price)),
        write: Callback::new(move |price| {
            // Within its range, and never more pieces than kinds.
            change(page, |o| drop(o.price_adder(kind, "", price)));
        }),
    };
    let priced = Memo::new(move |_| get().is_some());
    let always = move |on: bool| {
        change(page, |o| o.adders.iter_mut().filter(|a| a.kind == kind).for_each(|a| a.always = on));
    };
    let ticked = Signal::derive(move || get().is_some_and(|(_, always)| always));
    let every = move || {
        priced.get().then(|| {
            tick(page.key("offer-every-job"), format!("adder-{code}-always"), ticked, Callback::new(always))
        })
    };
    view! { <div class="price" role="group">{price.field()} {every}</div> }.into_any()
}

/// Work of the installer's own naming: a list, and a line to add to it.
fn own(page: Page) -> AnyView {
    let names = Memo::new(move |_| {
        let own = |o: &crate::job::offer::Offer| {
            o.adders.iter().filter(|a| a.kind == AdderKind::Own).cloned().collect::<Vec<_>>()
        };
        page.offer.with(own)
    });
    let full = Memo::new(move |_| page.offer.with(|o| o.adders.len() >= MOST_ADDERS));
    let one = move |adder: crate::job::offer::Adder| {
        let price = page.quantity(Quantity::new(adder.price, Unit::Dollar));
        let says = format!("{}: {price}", adder_name(page, &adder));
        let name = adder.name;
        let out = move || change(page, |o| drop(o.price_adder(AdderKind::Own, &name, 0.0)));
        view! { <li><span>{says}</span> {button(page.key("offer-own-out"), "button", "own-out", out)}</li> }
    };
    let (name, price) = (RwSignal::new(String::new()), RwSignal::new(None::<f64>));
    let add = move || {
        let (called, dollars) = (name.get_untracked(), price.get_untracked().unwrap_or(0.0));
        if !called.trim().is_empty() && dollars > 0.0 {
            change(page, |o| drop(o.price_adder(AdderKind::Own, &called, dollars)));
            name.set(String::new());
            price.set(None);
        }
    };
    let called = Text {
        words: "offer-own-name",
        test: "own-name",
        most: LONGEST_NAME,
        lines: false,
        now: name.into(),
        write: Callback::new(move |text| name.set(text)),
    };
    let costs = Price {
        code: String::from("own"),
        name: page.key("offer-own-price"),
        now: price.into(),
        write: Callback::new(move |v| price.set(Some(v).filter(|v| *v > 0.0))),
    };
    view! {
        <section class="price" aria-labelledby="own-work">
            <h3 id="own-work">{page.key("adder-own")}</h3>
            <ul class="own">{move || names.get().into_iter().map(one).collect_view()}</ul>
            {called.field()}
            {costs.field()}
            <div class="ways">
                {move || (!full.get()).then(|| button(page.key("offer-own-add"), "button", "own-add", add))}
            </div>
        </section>
    }
    .into_any()
}
