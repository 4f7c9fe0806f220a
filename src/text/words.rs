//! Finding words by key, with figures put in.

use super::fluent::{Args, Bundle, Value};
use super::language::{FIRST, File, Group, Language};
use super::numbers::{Marks, decimals_as_typed, decimals_of, unsigned};
use crate::core::letters::is_of_word;
use crate::core::message::{Arg, Message};
use crate::core::numeric::number;
use crate::core::units::{Quantity, Unit, UnitSystem};
use std::sync::{Arc, PoisonError, RwLock, RwLockReadGuard};

/// The minus sign of print, as wide as a figure.
const MINUS: char = '\u{2212}';

/// The words of one language, with figures in one system of units. Cheap to clone; may be shared
/// between threads.
#[derive(Clone)]
pub struct Words {
    shared: Arc<Shared>,
    units: UnitSystem,
}

struct Shared {
    language: Language,
    /// The language's own words, then English for what it lacks. Locked only while words are looked up or added.
    bundles: RwLock<Vec<(Language, Bundle)>>,
    marks: Marks,
}

impl Words {
    /// All words of a language. Never fails: what a file gets wrong is missing, and a test says so.
    pub fn new(language: Language, units: UnitSystem) -> Words {
        Words::of(language, units, Language::files)
    }

    /// The words of a language that the page needs up to its first verdict.
    pub fn first(language: Language, units: UnitSystem) -> Words {
        Words::of(language, units, |language| language.group(&FIRST).to_vec())
    }

    fn of(language: Language, units: UnitSystem, files: fn(Language) -> Vec<File>) -> Words {
        let mut bundles = Vec::new();
        for language in [language, Language::ENGLISH] {
            if bundles.iter().all(|(there, _)| *there != language) {
                let mut bundle = Bundle::new(language.plural());
                bundle.add(&files(language));
                bundles.push((language, bundle));
            }
        }
        let marks = Marks { group: String::new(), decimal: String::from(".") };
        let mut shared = Shared { language, bundles: RwLock::new(bundles), marks };
        let mark = |key| shared.find(key, None, &Args::new(), &mut Vec::new());
        let marks = Marks {
            group: mark("number-group").unwrap_or_default(),
            decimal: mark("number-decimal").unwrap_or_else(|| String::from(".")),
        };
        shared.marks = marks;
        Words { shared: Arc::new(shared), units }
    }

    /// Adds the words of a group, for everyone who shares these words.
    pub fn add(&self, group: &Group) {
        let mut bundles = self.shared.bundles.write().unwrap_or_else(PoisonError::into_inner);
        for (language, bundle) in bundles.iter_mut() {
            bundle.add(language.group(group));
        }
    }

    /// The same words with figures in another system of units.
    #[must_use]
    pub fn with_units(&self, units: UnitSystem) -> Words {
        Words { shared: Arc::clone(&self.shared), units }
    }

    /// The language.
    pub fn language(&self) -> Language {
        self.shared.language
    }

    /// The system of units figures are shown in.
    pub fn units(&self) -> UnitSystem {
        self.units
    }

    /// Whether there are words for a key.
    pub fn has(&self, key: &str) -> bool {
        self.shared.bundles().iter().any(|(_, b)| b.has(key))
    }

    /// The words of a key that takes no figures. A key without words shows itself: `⟨key⟩`.
    pub fn key(&self, key: &str) -> String {
        self.shared.find(key, None, &Args::new(), &mut Vec::new()).unwrap_or_else(|| missing(key))
    }

    /// An attribute of a key, if it has that attribute.
    pub fn attr(&self, key: &str, attr: &str) -> Option<String> {
        self.shared.find(key, Some(attr), &Args::new(), &mut Vec::new())
    }

    /// A message in words, its figures in the reader's units.
    pub fn say(&self, message: &Message) -> String {
        self.say_noting(message, &mut Vec::new())
    }

    /// An attribute of a message's key, with the message's figures, if it has that attribute.
    pub fn say_attr(&self, message: &Message, attr: &str) -> Option<String> {
        let mut faults = Vec::new();
        let args = self.args(message, &mut faults);
        self.shared.find(&message.id, Some(attr), &args, &mut faults)
    }

    /// What is wrong with the words of a message: no words, or figures they ask for and do not get.
    /// Empty when all is well; for tests.
    pub fn faults(&self, message: &Message) -> Vec<String> {
        let mut faults = Vec::new();
        self.say_noting(message, &mut faults);
        faults
    }

    fn say_noting(&self, message: &Message, faults: &mut Vec<String>) -> String {
        let args = self.args(message, faults);
        self.shared.find(&message.id, None, &args, faults).unwrap_or_else(|| {
            faults.push(format!("no words for {}", message.id));
            missing(&message.id)
        })
    }

    fn args(&self, message: &Message, faults: &mut Vec<String>) -> Args {
        // Refusals repeat what was typed; rounding it could put it back inside the limits.
        let exact = message.id.starts_with("refusal-");
        let value = |arg: &Arg, faults: &mut Vec<String>| match arg {
            // Wholes read alike with or without decimals; 2^53 is far beyond any count here.
            Arg::Count(n) => Value::Number(*n as f64, 0, self.number(*n as f64, 0)),
            Arg::Quantity(q) if exact => Value::Text(self.exact(*q)),
            Arg::Message(inner) => Value::Text(self.say_noting(inner, faults)),
            other => Value::Text(self.arg(other)),
        };
        message.args.iter().map(|(name, arg)| (name.to_string(), value(arg, faults))).collect()
    }

    /// One figure in words.
    pub fn arg(&self, arg: &Arg) -> String {
        match arg {
            Arg::Count(n) => self.number(*n as f64, 0),
            Arg::Number(value, decimals) => self.number(*value, usize::from(*decimals)),
            Arg::Quantity(q) => self.quantity(*q),
            Arg::Message(m) => self.say(m),
            Arg::Verbatim(text) => text.clone(),
        }
    }

    /// A number with this many decimals (nine at most), thousands marked.
    pub fn number(&self, value: f64, decimals: usize) -> String {
        let (text, below) = unsigned(value, decimals, &self.shared.marks);
        if below { format!("{MINUS}{text}") } else { text }
    }

    /// A quantity in the reader's units, rounded as its unit deserves, with the unit.
    pub fn quantity(&self, q: Quantity) -> String {
        let shown = q.displayed(self.units);
        self.with_unit(shown, decimals_of(shown))
    }

    /// A quantity in the reader's units, to this many decimals, with the unit.
    pub fn quantity_to(&self, q: Quantity, decimals: usize) -> String {
        self.with_unit(q.displayed(self.units), decimals)
    }

    /// A quantity in the unit it was written in and as it was written, with the unit.
    pub fn exact(&self, q: Quantity) -> String {
        self.with_unit(q, decimals_as_typed(q.value))
    }

    fn with_unit(&self, q: Quantity, decimals: usize) -> String {
        let (text, below) = unsigned(q.value, decimals, &self.shared.marks);
        // The plural follows the number as shown: "1.0 years", but "1 year".
        let shown: f64 = number(&format!("{:.*}", decimals.min(9), q.value.abs())).unwrap_or(0.0);
        let args = Args::from_iter([
            (String::from("n"), Value::Number(shown, decimals, text.clone())),
            (String::from("value"), Value::Text(text)),
        ]);
        let key = unit_key(q.unit);
        let said = self.shared.find(&key, None, &args, &mut Vec::new()).unwrap_or_else(|| missing(&key));
        if below { format!("{MINUS}{said}") } else { said }
    }

    /// The sign of a unit, as it stands beside a field: `°F`.
    pub fn unit_sign(&self, unit: Unit) -> String {
        self.attr(&unit_key(unit), "sign").unwrap_or_default()
    }

    /// The name of a unit in full: `degrees Fahrenheit`.
    pub fn unit_name(&self, unit: Unit) -> String {
        let key = unit_key(unit);
        self.attr(&key, "name").unwrap_or_else(|| missing(&key))
    }
}

impl Shared {
    /// The language's own words, then English for what it lacks.
    fn bundles(&self) -> RwLockReadGuard<'_, Vec<(Language, Bundle)>> {
        // Words that were being added when a thread stopped are whole or not there.
        self.bundles.read().unwrap_or_else(PoisonError::into_inner)
    }

    fn find(&self, key: &str, attr: Option<&str>, args: &Args, faults: &mut Vec<String>) -> Option<String> {
        let before = faults.len();
        let said = self.bundles().iter().find_map(|(_, b)| b.say(key, attr, args, faults));
        for fault in faults.iter_mut().skip(before) {
            *fault = format!("{key}: {fault}");
        }
        said.map(hold_units)
    }
}

/// Signs that belong to the number before them.
const SIGNS: [&str; 16] =
    ["°F", "°C", "V", "A", "W", "kW", "kWh", "gal", "L", "ft", "ft³", "m³", "in", "cm", "m", "Btu"];

/// Numbers in sentences ("240 V") hold on to their units: the gap between them never breaks.
fn hold_units(text: String) -> String {
    let mut out = String::new();
    let mut done = 0;
    for (at, _) in text.match_indices(' ') {
        let (before, after) = (text.get(..at).unwrap_or(""), text.get(at + 1..).unwrap_or(""));
        let end =
            after.find(|c: char| !(is_of_word(c) || matches!(c, '°' | '²' | '³'))).unwrap_or(after.len());
        let sign = after.get(..end).unwrap_or("");
        if before.ends_with(|c: char| c.is_ascii_digit()) && SIGNS.contains(&sign) {
            out.push_str(text.get(done..at).unwrap_or(""));
            out.push('\u{a0}');
            done = at + 1;
        }
    }
    if done == 0 {
        return text;
    }
    out.push_str(text.get(done..).unwrap_or(""));
    out
}

/// The key of a unit: its code with signs spelt out (`$/kWh` is `unit-dollar-per-kWh`).
pub fn unit_key(unit: Unit) -> String {
    if unit == Unit::One {
        return String::from("unit-number");
    }
    format!("unit-{}", unit.code().replace('$', "dollar").replace('/', "-per-"))
}

/// What stands where words are missing: visible, never a panic.
fn missing(key: &str) -> String {
    format!("\u{27e8}{key}\u{27e9}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn us() -> Words {
        Words::new(Language::ENGLISH, UnitSystem::Us)
    }

    #[test]
    fn every_unit_has_its_words() {
        for &unit in Unit::ALL {
            assert!(us().has(&unit_key(unit)), "{unit:?}");
            assert!(us().attr(&unit_key(unit), "sign").is_some(), "{unit:?}");
            assert!(!us().unit_name(unit).contains('\u{27e8}'), "{unit:?}");
        }
    }

    #[test]
    fn quantities_read_as_people_write_them() {
        let si = us().with_units(UnitSystem::Si);
        for (value, unit, in_us, in_si) in [
            (120.0, Unit::DegF, "120\u{a0}°F", "49\u{a0}°C"),
            (-40.0, Unit::DegC, "\u{2212}40\u{a0}°F", "\u{2212}40\u{a0}°C"),
            (4_200.0, Unit::Dollar, "$4,200", "$4,200"),
            (-1_234.6, Unit::Dollar, "\u{2212}$1,235", "\u{2212}$1,235"),
            (0.165, Unit::DollarPerKwh, "$0.165/kWh", "$0.165/kWh"),
            (1_000.0, Unit::CubicFoot, "1,000\u{a0}ft³", "28.3\u{a0}m³"),
            (50.0, Unit::Gallon, "50\u{a0}gal", "189\u{a0}L"),
            (1.0, Unit::Year, "1\u{a0}year", "1\u{a0}year"),
            (15.0, Unit::Year, "15\u{a0}years", "15\u{a0}years"),
            (2.0, Unit::Percent, "2%", "2%"),
            (3.0, Unit::One, "3", "3"),
        ] {
            let q = Quantity::new(value, unit);
            assert_eq!((us().quantity(q).as_str(), si.quantity(q).as_str()), (in_us, in_si), "{q:?}");
        }
        assert_eq!(us().exact(Quantity::new(160.4, Unit::DegF)), "160.4\u{a0}°F");
        assert_eq!(us().number(-1_234.56, 1), "\u{2212}1,234.6");
    }

    #[test]
    fn missing_words_are_seen_and_never_a_panic() {
        let m = Message::new("no-such-key").with("n", Arg::Count(3));
        assert_eq!(us().say(&m), "⟨no-such-key⟩");
        assert_eq!(us().faults(&m).len(), 1);
        assert_eq!(us().attr("no-such-key", "find"), None);
        // Words that ask for figures and get none are seen too.
        assert!(!us().faults(&Message::new("refusal-out-of-range")).is_empty());
    }

    #[test]
    fn numbers_hold_on_to_their_units() {
        for (text, want) in [
            ("at 120 °F (49 °C), 240 V.", "at 120\u{a0}°F (49\u{a0}°C), 240\u{a0}V."),
            ("4 rooms, 10 CFR 430", "4 rooms, 10 CFR 430"),
            ("ends with 5 ", "ends with 5 "),
            ("", ""),
        ] {
            assert_eq!(hold_units(text.to_owned()), want);
        }
    }

    #[test]
    fn no_isolation_marks() {
        let m = Message::new("refusal-out-of-range")
            .with("question", Message::new("q-setpoint"))
            .quantity("given", 160.4, Unit::DegF)
            .quantity("low", 100.0, Unit::DegF)
            .quantity("high", 160.0, Unit::DegF);
        let said = us().say(&m);
        assert!(us().faults(&m).is_empty() && said.contains("160.4\u{a0}°F"), "{said}");
        assert!(!said.chars().any(|c| ('\u{2066}'..='\u{2069}').contains(&c)));
    }
}
