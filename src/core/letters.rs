//! Small letters, without the standard library's tables of every script: they are a twentieth of what the
//! page downloads, and here letters are only compared with letters.

/// A text in small letters: Latin with its accents, Greek and Cyrillic; other letters stay as they are.
pub fn lower(text: &str) -> String {
    text.chars().map(small).collect()
}

/// A small letter for a capital.
pub fn small(c: char) -> char {
    let code = u32::from(c);
    let small = match c {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' | 'Α'..='Ρ' | 'Σ'..='Ϋ' | 'А'..='Я' => code + 32,
        'Ѐ'..='Џ' => code + 80,
        'Ӏ' => 'ӏ' as u32,
        'Ÿ' => 'ÿ' as u32,
        // Pairs, the capital at the even place; dotless and long letters aside.
        'Ā'..='Į' | 'Ĳ'..='Ķ' | 'Ŋ'..='Ŷ' | 'Ѡ'..='Ҁ' | 'Ҋ'..='Ҿ' | 'Ӑ'..='Ӿ' => code | 1,
        // Pairs, the capital at the odd place.
        'Ĺ'..='Ň' | 'Ź'..='Ž' | 'Ӂ'..='Ӎ' => code + (code & 1),
        _ => code,
    };
    char::from_u32(small).unwrap_or(c)
}

/// Whether a character belongs to a word: figures, and letters of whatever script.
pub fn is_of_word(c: char) -> bool {
    if c.is_ascii() {
        c.is_ascii_alphanumeric()
    } else {
        c >= 'À'
            && !matches!(c, '×' | '÷' | '\u{2000}'..='\u{2bff}' | '\u{3000}'..='\u{303f}' | '\u{1f000}'..)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard library, over all that is promised: Latin, its accents, Greek and Cyrillic.
    #[test]
    fn letters_are_the_standard_librarys() {
        for c in ('\0'..='\u{17f}').chain('Α'..='ώ').chain('Ѐ'..='ӿ') {
            let theirs: String = c.to_lowercase().collect();
            // A dot of its own, which no comparison here needs.
            let want = if c == 'İ' { String::from("İ") } else { theirs };
            assert_eq!(small(c).to_string(), want, "{c} U+{:04X}", c as u32);
        }
        for c in ('Ā'..='\u{52f}').chain('가'..='기').filter(|c| c.is_alphabetic()) {
            assert!(is_of_word(c), "{c}");
        }
    }

    #[test]
    fn marks_and_blanks_are_of_no_word() {
        for c in " .,;'’\"-–—/()[]{}\u{a0}«»¿×÷→€\u{3000}、。".chars() {
            assert!(!is_of_word(c), "{c}");
        }
    }
}
