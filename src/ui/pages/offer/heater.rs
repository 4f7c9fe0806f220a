//! One offered heater: its name, and the figures of its label, nameplate and data sheet on the drawn label.

use super::change;
use crate::core::case::{HeaterKind, Provenance};
use crate::core::units::{Quantity, UnitSystem};
use crate::job::answers::Answer;
use crate::job::offer::{Figure, Heater, LONGEST_NAME};
use crate::job::questions::{Id, Kind, Question, Value};
use crate::ui::components::bound::Bound;
use crate::ui::components::drawn_label::{DrawnLabel, Pick, Sheet, Spot, Takes};
use crate::ui::components::parts::{Text, button};
use crate::ui::components::question::option_key;
use crate::ui::model::Draft;
use crate::ui::state::Page;
use leptos::prelude::*;

/// A figure, the key of its words on the label, the question it resembles, and a step.
type Asked = (Figure, &'static str, Id, f64);

/// On the energy label, below what it runs on.
const TAG: [Asked; 2] = [
    (Figure::Factor, "offer-figure-factor", Id::HeaterFactor, 0.01),
    (Figure::FirstHour, "offer-figure-first-hour", Id::HeaterFirstHour, 1.0),
];
/// On the nameplate.
const PLATE: [Asked; 4] = [
    (Figure::Volume, "offer-figure-volume", Id::HeaterVolume, 1.0),
    (Figure::Input, "offer-figure-input", Id::HeaterInput, 100.0),
    (Figure::Volts, "offer-figure-volts", Id::Supply, 1.0),
    (Figure::Breaker, "offer-figure-breaker", Id::Breaker, 5.0),
];
/// In the maker's data sheet and the price list.
const LIST: [Asked; 4] = [
    (Figure::Price, "offer-figure-price", Id::InstalledHeatPump, 10.0),
    (Figure::Height, "offer-figure-height", Id::Headroom, 1.0),
    (Figure::Diameter, "offer-figure-diameter", Id::WayIn, 1.0),
    (Figure::Weight, "offer-figure-weight", Id::Headroom, 1.0),
];

/// The fields of a heater. `gone` is called when it is taken out.
pub fn fields(page: Page, at: usize, gone: impl Fn() + 'static) -> AnyView {
    let spots = |asked: &[Asked]| asked.iter().map(|&asked| spot(page, at, asked)).collect::<Vec<_>>();
    let mut tag = vec![kind(page, at)];
    tag.extend(spots(&TAG));
    let sheets = vec![
        Sheet { looks: "tag", letter: "A", words: "label-tag", spots: tag },
        Sheet { looks: "plate", letter: "B", words: "label-plate", spots: spots(&PLATE) },
        Sheet { looks: "list", letter: "C", words: "offer-sheet", spots: spots(&LIST) },
    ];
    let name = Text {
        words: "offer-heater-name",
        test: "offer-heater-name",
        most: LONGEST_NAME,
        lines: false,
        now: Signal::derive(move || of(page, at, |h| h.name.clone()).unwrap_or_default()),
        write: Callback::new(move |text: String| alter(page, at, |h| h.call(&text))),
    };
    let out = move || {
        gone();
        change(page, |o| {
            if at < o.heaters.len() {
                o.heaters.remove(at);
            }
        });
    };
    view! {
        {name.field()}
        <DrawnLabel sheets/>
        <div class="ways">{button(page.key("offer-heater-out"), "button", format!("heater-{at}-out"), out)}</div>
    }
    .into_any()
}

fn of<T>(page: Page, at: usize, get: impl FnOnce(&Heater) -> T) -> Option<T> {
    page.offer.with(|o| o.heaters.get(at).map(get))
}

fn alter(page: Page, at: usize, to: impl FnOnce(&mut Heater)) {
    change(page, |o| {
        if let Some(heater) = o.heaters.get_mut(at) {
            to(heater);
        }
    });
}

/// What it runs on.
fn kind(page: Page, at: usize) -> Spot {
    let options = match Question::get(Id::HeaterKind).kind {
        Kind::Choice(options) => options,
        _ => &[],
    };
    let offered = options.iter().filter(|o| HeaterKind::from_code(o).is_some());
    let pick = Pick {
        code: "offer-kind",
        options: offered.map(|&o| (o, page.key(&option_key(Id::HeaterKind, o)))).collect(),
        chosen: Signal::derive(move || of(page, at, |h| String::from(h.kind.code()))),
        choose: Callback::new(move |option: Option<&'static str>| {
            if let Some(kind) = option.and_then(HeaterKind::from_code) {
                alter(page, at, |h| h.kind = kind);
            }
        }),
    };
    Spot {
        words: "spot-fuel",
        large: false,
        takes: Takes::Choice(pick),
        from: Signal::stored(Provenance::Answered),
        taken: Signal::stored(String::new()),
        objection: Signal::stored(None),
    }
}

fn spot(page: Page, at: usize, (figure, words, id, step): Asked) -> Spot {
    let given = Signal::derive(move || of(page, at, |h| h.get(figure)).flatten());
    let taken = Signal::derive(move || of(page, at, |h| h.taken(figure)).flatten());
    let (low, high) = figure.range();
    let (us, si) = figure.units();
    let draft = RwSignal::new(None::<Draft>);
    let write = move |answer: Option<Answer>| {
        let value: Option<Quantity> = match answer.map(|a| a.value) {
            Some(Value::Number(q)) => Some(q),
            _ => None,
        };
        if let Some(value) = value {
            figure.check(value).map_err(|refusal| refusal.message())?;
        }
        alter(page, at, |h| {
            // Checked above; a refusal here would change nothing.
            let _ = h.set(figure, value);
        });
        Ok(())
    };
    let bound = Bound {
        code: StoredValue::new(format!("offer-{at}-{}", figure.code())),
        name: StoredValue::new(page.key(words)),
        id,
        kind: Kind::Number { low, high, us, si, step },
        unit: Signal::derive(move || if page.units() == UnitSystem::Us { us } else { si }),
        answer: Signal::derive(move || {
            given.get().map(|q| Answer { value: Value::Number(q), from: Provenance::Answered })
        }),
        now: Signal::derive(move || given.get().or_else(|| taken.get())),
        draft: draft.into(),
        keep: Callback::new(move |text| draft.set(text)),
        write: Callback::new(write),
        from: Some(Provenance::Answered),
        unknown: "offer-not-said",
    };
    let stands_in = move || match taken.get() {
        Some(q) => page.quantity(q),
        None if figure == Figure::Price => page.key("offer-usual-price"),
        None => page.key("offer-nothing-yet"),
    };
    Spot {
        words,
        large: matches!(figure, Figure::Factor | Figure::Price),
        takes: Takes::Number(bound),
        from: Signal::derive(move || {
            if given.with(Option::is_some) { Provenance::Answered } else { Provenance::Assumed }
        }),
        taken: Signal::derive(stands_in),
        objection: Signal::stored(None),
    }
}
