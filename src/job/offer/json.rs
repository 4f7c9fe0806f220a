//! The JSON form of an offer, in files, in the browser's keeping and in exchange alike.
//!
//! ```json
//! {
//!   "name": "Usual", "labour": 350,
//!   "heaters": [{ "name": "Standard 50", "kind": "heat_pump", "volume": { "value": 50, "unit": "gal" },
//!                 "factor": 3.45, "price": 3900 }],
//!   "adders": [{ "kind": "new_circuit", "price": 650 }, { "kind": "permit", "price": 90, "always": true }]
//! }
//! ```

use super::{
    Adder, AdderKind, CaseError, Figure, Heater, LONGEST_NAME, MOST_ADDERS, MOST_HEATERS, Offer, check_price,
    tidy, units_like,
};
use crate::core::case::HeaterKind;
use crate::job::file::Wanted;
use crate::job::form::{self, put, put_text};
use serde_json::{Map, Value as Json};

/// The JSON form; [`read`] gives the same offer back.
pub fn to_json(offer: &Offer) -> Json {
    let mut all = Map::new();
    put_text(&mut all, "name", &offer.name);
    if offer.labour != 0.0 {
        put(&mut all, "labour", form::number(offer.labour));
    }
    put(&mut all, "heaters", offer.heaters.iter().map(heater).collect());
    if !offer.adders.is_empty() {
        put(&mut all, "adders", offer.adders.iter().map(adder).collect());
    }
    all.into()
}

fn heater(h: &Heater) -> Json {
    let mut all = Map::new();
    put_text(&mut all, "name", &h.name);
    put(&mut all, "kind", h.kind.code().into());
    for figure in Figure::ALL {
        if let Some(q) = h.get(figure) {
            put(&mut all, figure.code(), form::quantity(q, &units_like(figure.units().0)));
        }
    }
    all.into()
}

fn adder(a: &Adder) -> Json {
    let mut all = Map::new();
    put_text(&mut all, "name", &a.name);
    put(&mut all, "kind", a.kind.code().into());
    put(&mut all, "price", form::number(a.price));
    if a.always {
        put(&mut all, "always", true.into());
    }
    all.into()
}

/// Reads an offer. What cannot be read is left out and told in `refused`, with its field.
pub fn read(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Offer {
    let mut offer = Offer::default();
    let Some(all) = form::object(field, json, refused) else { return offer };
    for (name, json) in all {
        let field = format!("{field}.{}", form::short(name));
        match name.as_str() {
            "name" => text(&field, json, &mut offer.name, refused),
            "labour" => price(&field, json, &mut offer.labour, refused),
            "heaters" => {
                offer.heaters = form::list(&field, json, MOST_HEATERS, refused, read_heater);
            }
            "adders" => {
                offer.adders = form::list(&field, json, MOST_ADDERS, refused, read_adder);
            }
            other => refused.push(form::unknown(&field, other)),
        }
    }
    offer
}

fn read_heater(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Option<Heater> {
    let all = form::object(field, json, refused)?;
    let kind = form::code(field, "kind", all, HeaterKind::CODES, HeaterKind::from_code, refused)?;
    let mut heater = Heater::new(kind);
    for (name, json) in all {
        let field = format!("{field}.{}", form::short(name));
        match (name.as_str(), Figure::from_code(name)) {
            ("kind", _) => {}
            ("name", _) => text(&field, json, &mut heater.name, refused),
            (_, Some(figure)) => {
                let set = form::read_quantity(json, &units_like(figure.units().0))
                    .and_then(|q| heater.set(figure, Some(q)).map_err(|e| e.trouble));
                refused.extend(set.err().map(|trouble| CaseError::new(&*field, trouble)));
            }
            (other, None) => refused.push(form::unknown(&field, other)),
        }
    }
    Some(heater)
}

fn read_adder(field: &str, json: &Json, refused: &mut Vec<CaseError>) -> Option<Adder> {
    let all = form::object(field, json, refused)?;
    let codes = AdderKind::ALL.map(AdderKind::code);
    let kind = form::code(field, "kind", all, &codes, AdderKind::from_code, refused)?;
    let mut adder = Adder { kind, name: String::new(), price: 0.0, always: false };
    for (name, json) in all {
        let field = format!("{field}.{}", form::short(name));
        match name.as_str() {
            "kind" => {}
            "name" => text(&field, json, &mut adder.name, refused),
            "price" => price(&field, json, &mut adder.price, refused),
            "always" => match json {
                Json::Bool(always) => adder.always = *always,
                other => refused.push(form::wanted(&field, other, Wanted::TrueFalse)),
            },
            other => refused.push(form::unknown(&field, other)),
        }
    }
    Some(adder)
}

fn text(field: &str, json: &Json, to: &mut String, refused: &mut Vec<CaseError>) {
    match json {
        Json::String(text) if text.chars().count() <= LONGEST_NAME => *to = tidy(text, LONGEST_NAME),
        other => refused.push(form::wanted(field, other, Wanted::ShortText)),
    }
}

fn price(field: &str, json: &Json, to: &mut f64, refused: &mut Vec<CaseError>) {
    match json.as_f64() {
        Some(price) => match check_price(field, price) {
            Ok(()) => *to = price,
            Err(error) => refused.push(error),
        },
        None => refused.push(form::wanted(field, json, Wanted::Number)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::core::units::{Quantity, Unit};
    use crate::job::file::Trouble;
    use serde_json::json;

    fn example() -> Json {
        json!({
            "name": "Usual", "labour": 350,
            "heaters": [
                { "name": "Standard 50", "kind": "heat_pump", "volume": { "value": 50, "unit": "gal" }, "factor": 3.45, "price": 3900 },
                { "kind": "electric", "volume": { "value": 190.5, "unit": "L" }, "factor": 0.93, "volts": 240 },
            ],
            "adders": [{ "kind": "new_circuit", "price": 650 }, { "kind": "own", "name": "Hoist", "price": 0.5, "always": true }],
        })
    }

    #[test]
    fn what_is_written_comes_back() {
        let mut refused = Vec::new();
        let offer = read("offer", &example(), &mut refused);
        assert_eq!(refused, []);
        assert_eq!(offer.heaters[1].get(Figure::Volume), Some(Quantity::new(190.5, Unit::Litre)));
        assert_eq!(to_json(&offer), example());
    }

    #[test]
    fn each_fault_is_named_and_the_rest_is_read() {
        for (at, bad, field, code) in [
            ("/labour", json!(-1), "offer.labour", "out_of_range"),
            ("/labour", json!("x"), "offer.labour", "wrong_kind"),
            ("/heaters/0/volume", json!(50), "offer.heaters[0].volume", "needs_unit"),
            ("/heaters/0/volume/unit", json!("lb"), "offer.heaters[0].volume", "wrong_unit"),
            ("/heaters/0/volume/value", json!(9e9), "offer.heaters[0].volume", "out_of_range"),
            ("/heaters/0/factor", json!(null), "offer.heaters[0].factor", "wrong_kind"),
            ("/heaters/0/kind", json!("steam"), "offer.heaters[0].kind", "not_an_option"),
            ("/heaters/0/name", json!("x".repeat(61)), "offer.heaters[0].name", "wrong_kind"),
            ("/heaters", json!(vec![json!({ "kind": "gas" }); 7]), "offer.heaters", "too_many"),
            ("/adders/1/always", json!(1), "offer.adders[1].always", "wrong_kind"),
            ("/adders", json!({}), "offer.adders", "wrong_kind"),
        ] {
            let mut json = example();
            *json.pointer_mut(at).expect("it is in the example") = bad;
            let mut refused = Vec::new();
            read("offer", &json, &mut refused);
            let told: Vec<_> = refused.iter().map(|e| (e.field.as_str(), e.trouble.code())).collect();
            assert_eq!(told, [(field, code)]);
        }
    }

    #[test]
    fn names_nobody_knows_are_told() {
        let mut refused = Vec::new();
        read("offer", &json!({ "colour": 1 }), &mut refused);
        assert!(matches!(refused.as_slice(), [CaseError { trouble: Trouble::Unknown { .. }, .. }]));
    }
}
