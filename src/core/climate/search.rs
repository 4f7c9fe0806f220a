//! Finding a place by what somebody types: no matter how it is capitalised, accented or hyphenated.

use super::places::{Place, all};
use crate::core::letters::{is_of_word, small};

/// The listed places that fit what was typed so far: those whose name starts with it first, then those with a
/// later word that does, or whose state or province does ("boston", "paul", "new ham", "QC", "Boston MA",
/// "québec" and "quebec"). Sorted by identity within each; every place when nothing but blanks was typed.
pub fn search(typed: &str) -> Vec<&'static Place> {
    let wanted = fold(typed);
    let ranked: Vec<(u8, &'static Place)> =
        all().filter_map(|place| rank(place, &wanted).map(|rank| (rank, place))).collect();
    (0..RANKS)
        .flat_map(|of| ranked.iter().filter(move |(rank, _)| *rank == of).map(|(_, place)| *place))
        .collect()
}

/// How many ways there are to fit.
const RANKS: u8 = 3;

/// How well a place fits folded text, 0 best, below [`RANKS`]; `None` when it does not.
fn rank(place: &Place, wanted: &str) -> Option<u8> {
    let city = fold(place.name);
    let region_code = fold(place.region.code());
    let region_name = fold(place.region.name());
    // People write "Saint" where the map has "St.".
    let long_city = city.strip_prefix("st ").map(|rest| format!("saint {rest}"));
    let names = [Some(format!("{city} {region_code}")), Some(format!("{city} {region_name}")), long_city];
    if names.iter().flatten().any(|name| name.starts_with(wanted)) {
        return Some(0);
    }
    if region_name.starts_with(wanted) || region_code == wanted {
        return Some(1);
    }
    let later_word = |name: &String| name.match_indices(' ').any(|(i, _)| name[i + 1..].starts_with(wanted));
    names.iter().flatten().any(later_word).then_some(2)
}

/// Lower case without accents, apostrophes and points; any other run of marks or blanks is one blank.
fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.chars().map(small) {
        match c {
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => folded.push('a'),
            'ç' => folded.push('c'),
            'è' | 'é' | 'ê' | 'ë' => folded.push('e'),
            'ì' | 'í' | 'î' | 'ï' => folded.push('i'),
            'ñ' => folded.push('n'),
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' => folded.push('o'),
            'ù' | 'ú' | 'û' | 'ü' => folded.push('u'),
            'ý' | 'ÿ' => folded.push('y'),
            'æ' => folded.push_str("ae"),
            'œ' => folded.push_str("oe"),
            // Accents that stand as characters of their own, and marks that people leave out.
            '\u{300}'..='\u{36f}' | '\'' | '’' | 'ʻ' | '.' => {}
            c if is_of_word(c) => folded.push(c),
            _ if folded.is_empty() || folded.ends_with(' ') => {}
            _ => folded.push(' '),
        }
    }
    folded.truncate(folded.trim_end().len());
    folded
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(typed: &str) -> Vec<&'static str> {
        search(typed).iter().map(|p| p.id).collect()
    }

    #[test]
    fn accents_case_and_marks_do_not_matter() {
        for typed in
            ["Montréal", "montreal", "MONTRÉAL", "Montre\u{301}al", "  montréal, QC ", "montreal quebec"]
        {
            assert_eq!(found(typed), ["ca-qc-montreal"], "{typed}");
        }
        for typed in ["St. John's", "st johns", "Saint John’s", "ST. JOHNS, newfoundland"] {
            assert_eq!(found(typed), ["ca-nl-st-johns"], "{typed}");
        }
        assert_eq!(found("saint l"), ["us-mo-st-louis"]);
        assert_eq!(found("happy valley-goose"), found("happy valley goose"));
    }

    #[test]
    fn city_of_the_name_comes_before_places_of_the_province() {
        let quebec = found("queb");
        assert_eq!(quebec.first(), Some(&"ca-qc-quebec"));
        assert!(quebec.contains(&"ca-qc-montreal") && quebec.contains(&"ca-qc-saguenay"));
        let new_york = found("new york");
        assert_eq!(new_york.first(), Some(&"us-ny-new-york"));
        assert!(new_york.contains(&"us-ny-buffalo"));
    }

    #[test]
    fn a_city_of_two_states_is_told_apart_by_the_state() {
        assert_eq!(found("portland"), ["us-me-portland", "us-or-portland"]);
        assert_eq!(found("Portland, Maine"), ["us-me-portland"]);
        assert_eq!(found("portland or"), ["us-or-portland"]);
        assert_eq!(found("goose"), ["ca-nl-goose-bay"]);
    }

    #[test]
    fn nothing_typed_lists_all_and_nonsense_lists_none() {
        assert_eq!(found("  ").len(), all().count());
        assert!(found("zzz").is_empty());
        assert!(found("🚿").len() == all().count(), "marks alone are nothing typed");
        assert!(found(&"a".repeat(1 << 20)).is_empty());
    }
}
