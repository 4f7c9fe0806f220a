//! The form of version 1: one walk through a job, for writing and for reading alike. It must never change;
//! lists may grow at their ends ([`super::numbers`]), since each says how long it was when it was written.
//! A value says of what kind it is, so that an answer to a question of the future can be passed over.

use super::coder::{Coder, LETTER_PLACES, MOST_LETTERS};
use super::{Dropped, numbers};
use crate::core::case::{HeaterKind, Provenance};
use crate::core::units::Quantity;
use crate::job::answers::Answer;
use crate::job::offer::{Adder, AdderKind, Figure, Heater, MOST_ADDERS, MOST_HEATERS, check_price};
use crate::job::questions::{self, Id, Kind, Question, Value};
use crate::job::{Job, JobId, Part};

/// How people write, for the odds of letters. Part of the form: it must never change.
pub(super) const LEARN: &str = "Heat pump water heater 50 gal, Standard 65 gal tank 240 V, Hybrid 80 gal, Plug-in 120 V, \
    Electric 40, Gas 50, Premium series, Example Road 12, Haul away the old one, Permit, Condensate to the drain, \
    The key is under the mat. Call before you come. Basement stairs are steep, and the door is narrow.\n";

// Where the odds of each thing lie.
const FLAGS: usize = LETTER_PLACES;
const PRESENT: usize = FLAGS + 16;
const KINDS: usize = PRESENT + 16;
const OPTIONS: usize = KINDS + 16;
const UNITS: usize = OPTIONS + 16;
const EXPONENTS: usize = UNITS + 16;
const LENGTHS: usize = EXPONENTS + 8;
const DIGITS: usize = LENGTHS + 64;
/// Places in all.
pub(super) const PLACES: usize = DIGITS + 2 * 64;

/// Begin of the links' time, ms since 1970: 2020.
const EPOCH_MS: f64 = 1_577_836_800_000.0;
const MINUTE_MS: f64 = 60_000.0;
/// Last time told: two hundred years later.
const MOST_MINUTES: u64 = 200 * 525_960;
/// Most entries of any list that are read.
const MOST: u64 = 1_000;

/// A link's walk.
pub(super) struct Walk<'a> {
    /// The bits.
    pub(super) coder: Coder<'a>,
    /// What was read and cannot be taken.
    pub(super) dropped: Vec<Dropped>,
}

/// A value as the form has it.
#[derive(Clone, Copy)]
enum Symbol {
    /// A number with its unit's number.
    Number(f64, usize),
    /// An option's number.
    Option(usize),
    /// A place's number.
    Place(u32),
}

impl Walk<'_> {
    /// The whole of it. `back`: whether it is on its way back to who asked.
    pub(super) fn job(&mut self, job: &mut Job, back: &mut bool) {
        job.id = JobId::new(self.coder.plain(JobId::BITS, job.id.number()));
        let minutes = (((job.changed_ms - EPOCH_MS) / MINUTE_MS).max(0.0) as u64).min(MOST_MINUTES);
        // A time out of this world would win over every honest one when jobs are merged.
        let minutes = Some(self.coder.whole(LENGTHS, minutes)).filter(|m| *m <= MOST_MINUTES).unwrap_or(0);
        job.changed_ms = EPOCH_MS + minutes as f64 * MINUTE_MS;
        *back = self.coder.bit(FLAGS, *back);
        self.answers(job);
        self.asked(job);
        if self.coder.bit(FLAGS + 1, !job.offer.is_empty()) {
            self.offer(job);
        }
        for part in Part::ALL {
            if self.coder.bit(FLAGS + 2, !job.text(part).is_empty()) {
                let text = self.text(job.text(part));
                job.write(part, &text);
            }
        }
    }

    /// How long a list is: as given, or as read.
    fn length(&mut self, given: usize) -> usize {
        self.coder.whole(LENGTHS, given as u64).min(MOST) as usize
    }

    fn answers(&mut self, job: &mut Job) {
        let mut before = false;
        for n in 0..self.length(numbers::QUESTIONS.len()) {
            let id = numbers::QUESTIONS.get(n).copied();
            let answer = id.and_then(|id| job.answers.get(id)).cloned();
            before = self.coder.bit(PRESENT + usize::from(before), answer.is_some());
            if !before {
                continue;
            }
            let measured = answer.as_ref().is_some_and(|a| a.from == Provenance::Measured);
            let measured = self.coder.bit(FLAGS + 3, measured);
            let symbol = self.symbol(id.zip(answer).and_then(|(id, answer)| symbol_of(id, &answer)));
            if !self.coder.reads() {
                continue;
            }
            let from = if measured { Provenance::Measured } else { Provenance::Answered };
            match id.map(|id| (id, value_of(id, symbol))) {
                None => self.dropped.push(Dropped::Unknown),
                Some((id, None)) => self.dropped.push(Dropped::Answer(id)),
                Some((id, Some(value))) => {
                    if job.answers.set(id, value, from).is_err() {
                        self.dropped.push(Dropped::Answer(id));
                    }
                }
            }
        }
    }

    fn asked(&mut self, job: &mut Job) {
        let length = if job.asked.is_empty() { 0 } else { numbers::QUESTIONS.len() };
        let mut before = false;
        for n in 0..self.length(length) {
            let id = numbers::QUESTIONS.get(n).copied();
            let asked = id.is_some_and(|id| job.asked.contains(&id));
            before = self.coder.bit(PRESENT + 2 + usize::from(before), asked);
            if let (true, Some(id), true) = (before, id, self.coder.reads()) {
                job.asked.push(id);
            }
        }
        if self.coder.reads() {
            job.asked = questions::all().map(|q| q.id).filter(|id| job.asked.contains(id)).collect();
        }
    }

    fn symbol(&mut self, given: Option<Symbol>) -> Symbol {
        let kind = match given {
            None | Some(Symbol::Number(..)) => 0,
            Some(Symbol::Option(_)) => 1,
            Some(Symbol::Place(_)) => 2,
        };
        match (self.coder.small(KINDS, 2, kind), given) {
            (1, given) => {
                let number = if let Some(Symbol::Option(n)) = given { n as u32 } else { 0 };
                let few = self.coder.small(OPTIONS, 4, number.min(15));
                let more =
                    if few == 15 { self.coder.plain(8, u64::from(number.wrapping_sub(15))) } else { 0 };
                Symbol::Option(few as usize + more as usize)
            }
            (2, given) => {
                let number = if let Some(Symbol::Place(n)) = given { n } else { 0 };
                Symbol::Place(self.coder.plain(24, u64::from(number)) as u32)
            }
            (_, given) => {
                let (value, unit) = if let Some(Symbol::Number(v, u)) = given { (v, u) } else { (0.0, 0) };
                let unit = self.coder.small(UNITS, 3, unit as u32) as usize;
                Symbol::Number(self.number(value, 0), unit)
            }
        }
    }

    /// A number to the last bit: what people type is short in tens, and so are these.
    fn number(&mut self, value: f64, set: usize) -> f64 {
        let tens = tens_of(value);
        if self.coder.bit(FLAGS + 4, tens.is_none()) {
            return f64::from_bits(self.coder.plain(64, value.to_bits()));
        }
        let (exponent, whole) = tens.unwrap_or((0, 0));
        let exponent = self.coder.small(EXPONENTS, 3, exponent);
        let below = self.coder.bit(FLAGS + 5, whole < 0);
        let size = self.coder.whole(DIGITS + 64 * set, whole.unsigned_abs());
        of_tens(exponent, if below { -(size as i64) } else { size as i64 })
    }

    fn text(&mut self, given: &str) -> String {
        let mut end = given.len().min(MOST_LETTERS);
        while !given.is_char_boundary(end) {
            end -= 1;
        }
        let bytes = self.coder.letters(given.get(..end).unwrap_or("").as_bytes(), 0);
        String::from_utf8(bytes).unwrap_or_else(|_| {
            self.dropped.push(Dropped::Text);
            String::new()
        })
    }

    fn offer(&mut self, job: &mut Job) {
        let offer = &mut job.offer;
        if self.coder.bit(FLAGS + 6, !offer.name.is_empty()) {
            offer.name = crate::job::offer::tidy(&self.text(&offer.name), crate::job::offer::LONGEST_NAME);
        }
        offer.labour = self.price(offer.labour);
        for n in 0..self.length(offer.heaters.len()) {
            let read = self.heater(offer.heaters.get(n));
            if self.coder.reads() {
                match read.filter(|_| n < MOST_HEATERS) {
                    Some(heater) => offer.heaters.push(heater),
                    None => self.dropped.push(Dropped::Offer),
                }
            }
        }
        for n in 0..self.length(offer.adders.len()) {
            let read = self.adder(offer.adders.get(n));
            if self.coder.reads() {
                match read.filter(|_| n < MOST_ADDERS) {
                    Some(adder) => offer.adders.push(adder),
                    None => self.dropped.push(Dropped::Offer),
                }
            }
        }
    }

    fn price(&mut self, given: f64) -> f64 {
        let price = self.number(given, 1);
        if check_price("", price).is_ok() {
            return price;
        }
        self.dropped.push(Dropped::Offer);
        0.0
    }

    fn heater(&mut self, given: Option<&Heater>) -> Option<Heater> {
        let kind = given.map_or("", |h| h.kind.code());
        let kind = self.position(HeaterKind::CODES.iter().position(|c| *c == kind));
        let name = self.text(given.map_or("", |h| &h.name));
        let mut read = HeaterKind::CODES.get(kind).and_then(|c| HeaterKind::from_code(c)).map(Heater::new);
        if let Some(heater) = &mut read {
            heater.call(&name);
        }
        let mut before = false;
        for n in 0..self.length(Figure::ALL.len()) {
            let figure = Figure::ALL.get(n).copied();
            let q = figure.zip(given).and_then(|(figure, h)| h.get(figure));
            before = self.coder.bit(PRESENT + 4 + usize::from(before), q.is_some());
            if !before {
                continue;
            }
            let (value, unit) = q.map_or((0.0, 0), |q| (q.value, numbers::of_unit(q.unit)));
            let unit = self.coder.small(UNITS + 8, 3, unit as u32) as usize;
            let value = self.number(value, 1);
            if let (Some(heater), Some(figure)) = (&mut read, figure) {
                let q = numbers::unit(figure.units().0, unit).map(|unit| Quantity::new(value, unit));
                if q.is_none_or(|q| heater.set(figure, Some(q)).is_err()) {
                    self.dropped.push(Dropped::Offer);
                }
            } else if self.coder.reads() {
                self.dropped.push(Dropped::Unknown);
            }
        }
        read
    }

    fn adder(&mut self, given: Option<&Adder>) -> Option<Adder> {
        let kind = given.and_then(|a| AdderKind::ALL.iter().position(|k| *k == a.kind));
        let kind = AdderKind::ALL.get(self.position(kind)).copied();
        let named = self.coder.bit(FLAGS + 7, given.is_some_and(|a| !a.name.is_empty()));
        let name = if named { self.text(given.map_or("", |a| &a.name)) } else { String::new() };
        let price = self.price(given.map_or(0.0, |a| a.price));
        let always = self.coder.bit(FLAGS + 8, given.is_some_and(|a| a.always));
        let name = crate::job::offer::tidy(&name, crate::job::offer::LONGEST_NAME);
        kind.map(|kind| Adder { kind, name, price, always })
    }

    /// A place in a list of a few.
    fn position(&mut self, given: Option<usize>) -> usize {
        self.coder.small(OPTIONS, 4, given.unwrap_or(0) as u32) as usize
    }
}

fn symbol_of(id: Id, answer: &Answer) -> Option<Symbol> {
    match (&answer.value, Question::get(id).kind) {
        (Value::Number(q), _) => Some(Symbol::Number(q.value, numbers::of_unit(q.unit))),
        (Value::Code(code), Kind::Choice(options)) => {
            options.iter().position(|o| o == code).map(Symbol::Option)
        }
        (Value::Code(code), _) => Some(Symbol::Place(numbers::of_place(code))),
    }
}

fn value_of(id: Id, symbol: Symbol) -> Option<Value> {
    match (symbol, Question::get(id).kind) {
        (Symbol::Number(value, unit), _) => {
            Some(Value::number(value, numbers::unit(numbers::unit_of(id)?, unit)?))
        }
        (Symbol::Option(n), Kind::Choice(options)) => options.get(n).map(|o| Value::code(o)),
        (Symbol::Place(n), Kind::Place) => numbers::place(n).map(Value::code),
        _ => None,
    }
}

/// Powers of ten by exponent: decimals 0 to 5; 6 and 7 stand for tens and hundreds before the point.
const TENS: [f64; 6] = [1.0, 10.0, 100.0, 1e3, 1e4, 1e5];

fn of_tens(exponent: u32, whole: i64) -> f64 {
    match exponent {
        6 => whole as f64 * 10.0,
        7 => whole as f64 * 100.0,
        decimals => whole as f64 / TENS.get(decimals as usize).copied().unwrap_or(1.0),
    }
}

/// A number as a few digits and an exponent, if that gives it back to the last bit.
fn tens_of(value: f64) -> Option<(u32, i64)> {
    // Below 2^53 whole numbers and powers of ten are exact and their quotient is rounded once, as reading
    // the typed decimals is.
    const MOST: f64 = 1e12;
    let whole = |decimals: u32, tens: f64| {
        let whole = (value * tens).round();
        (whole.abs() < MOST && of_tens(decimals, whole as i64).to_bits() == value.to_bits())
            .then_some((decimals, whole as i64))
    };
    let (exponent, digits) = TENS.into_iter().zip(0..).find_map(|(tens, d)| whole(d, tens))?;
    Some(match (exponent, digits) {
        (0, n) if n != 0 && n % 100 == 0 => (7, n / 100),
        (0, n) if n != 0 && n % 10 == 0 => (6, n / 10),
        same => same,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typed_numbers_are_few_digits_and_come_back_to_the_bit() {
        for (value, want) in [
            (2.0, (0, 2)),
            (0.27, (2, 27)),
            (6_200.0, (7, 62)),
            (4_150.0, (6, 415)),
            (-3.5, (1, -35)),
            (0.0, (0, 0)),
            (0.165, (3, 165)),
            (123_456.78, (2, 12_345_678)),
        ] {
            assert_eq!(tens_of(value), Some(want), "{value}");
            assert_eq!(of_tens(want.0, want.1).to_bits(), f64::to_bits(value));
        }
        for odd in [1.0 / 3.0, -0.0, 1e300, f64::MIN_POSITIVE, 1e-7] {
            assert_eq!(tens_of(odd), None, "{odd}");
        }
    }
}
