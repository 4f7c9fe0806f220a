//! A rough measure of how easily a text reads: the Flesch–Kincaid grade level (Kincaid et al., 1975:
//! 0.39 words a sentence + 11.8 syllables a word − 15.59; from memory). A reader of 12 is at grade 6 or 7.
//! Syllables are counted as groups of vowels; trade terms, units and numbers count as one.

/// Terms of the trade and units: explained where they appear, and not to be blamed on the sentence.
const TERMS: &[&str] = &[
    "ampacity",
    "anode",
    "backup",
    "basement",
    "boiler",
    "breaker",
    "building",
    "burner",
    "capacity",
    "celsius",
    "coefficient",
    "compressor",
    "condensate",
    "crawlspace",
    "degree",
    "degrees",
    "dehumidifier",
    "efficiency",
    "electric",
    "electrical",
    "electricity",
    "element",
    "elements",
    "emission",
    "energy",
    "expansion",
    "fahrenheit",
    "gallon",
    "gallons",
    "heater",
    "heaters",
    "installer",
    "international",
    "kilowatt-hour",
    "kilowatt-hours",
    "legionella",
    "licensed",
    "litre",
    "litres",
    "louvred",
    "minute",
    "minutes",
    "nameplate",
    "natural",
    "performance",
    "plumber",
    "propane",
    "rating",
    "rebate",
    "rebates",
    "recovery",
    "relief",
    "residential",
    "setpoint",
    "standby",
    "temperature",
    "temperatures",
    "thermometer",
    "thermostat",
    "uniform",
    "utility",
    "ventilation",
    "voltage",
    "national",
    "electrician",
    "america",
    "simulation",
    "simulated",
    "protocols",
    "code",
    "kitchen",
    "federal",
];

fn split(text: &str) -> impl Iterator<Item = &str> {
    text.split_whitespace()
        .map(|w| w.trim_matches(|c: char| !c.is_alphanumeric()))
        .filter(|w| w.chars().any(char::is_alphanumeric))
}

/// How many words a text has.
pub fn words(text: &str) -> usize {
    split(text).count()
}

fn sentences(text: &str) -> impl Iterator<Item = &str> {
    // A point inside a number ("2.25") is followed by no gap.
    text.split_inclusive(['.', '?', '!', ':', ';', '\n'])
        .flat_map(|part| part.split(". "))
        .filter(|s| words(s) > 0)
}

/// Words in the longest sentence.
pub fn longest_sentence(text: &str) -> Option<usize> {
    sentences(&joined_numbers(text)).map(words).max()
}

/// Numbers with points made one word, so that they end no sentence.
fn joined_numbers(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    chars
        .iter()
        .enumerate()
        .filter(|(i, c)| {
            let digit = |at: Option<usize>| at.and_then(|a| chars.get(a)).is_some_and(char::is_ascii_digit);
            !(matches!(c, '.' | ':') && digit(i.checked_sub(1)) && digit(Some(i + 1)))
        })
        .map(|(_, c)| *c)
        .collect()
}

fn syllables(word: &str) -> usize {
    let word = word.to_lowercase();
    if word.chars().any(|c| c.is_ascii_digit()) || TERMS.contains(&word.as_str()) {
        return 1;
    }
    let vowel = |c: char| matches!(c, 'a' | 'e' | 'i' | 'o' | 'u' | 'y');
    let mut count = 0;
    let mut before = false;
    for c in word.chars() {
        if vowel(c) && !before {
            count += 1;
        }
        before = vowel(c);
    }
    // A silent e at the end.
    if word.ends_with('e') && !word.ends_with("le") && count > 1 {
        count -= 1;
    }
    count.max(1)
}

/// The grade level of a text; 0 for an empty one.
pub fn grade(text: &str) -> f64 {
    let text = joined_numbers(text);
    let (n, s) = (words(&text), sentences(&text).count());
    if n == 0 || s == 0 {
        return 0.0;
    }
    let syllables: usize = split(&text).map(syllables).sum();
    let (n, s, y) = (n as f64, s as f64, syllables as f64);
    0.39 * n / s + 11.8 * y / n - 15.59
}
