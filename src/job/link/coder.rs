//! An adaptive binary range coder (Martin 1979; as commonly built, with carry kept back; from memory): the
//! likelier a bit has been so far in its place, the less it costs. One set of operations both ways: writing,
//! each returns what it was given; reading, what it found. So a form is walked through by one function, and
//! what is written is what is read.
//!
//! Reading never fails and never reads beyond its bytes: past the end there are zeros. Whether what was
//! read is what was written is the checksum's business.

/// Odds of a zero, of 65,536, and how often they were used.
#[derive(Clone, Copy)]
struct Odds(u16, u8);

/// Which way.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// Only the odds move.
    Learning,
    Writing,
    Reading,
}

/// The coder.
pub(super) struct Coder<'a> {
    way: Way,
    odds: Vec<Odds>,
    range: u32,
    // Writing.
    out: Vec<u8>,
    low: u64,
    cache: u8,
    pending: usize,
    // Reading.
    input: &'a [u8],
    code: u32,
    /// Bits that may still be read.
    left: u32,
}

/// Most bits read of one link. The fullest one of ours takes about a tenth of it; five bytes made up for it could else
/// stand for a thousand heaters with thousands of letters each, since likely letters cost next to nothing.
const MOST_BITS: u32 = 1_000_000;

impl<'a> Coder<'a> {
    /// A coder with this many places for odds, which has learnt from a text how people write.
    fn new(places: usize, learn: &str) -> Coder<'a> {
        let mut coder = Coder {
            way: Way::Learning,
            odds: vec![Odds(1 << 15, 0); places],
            range: u32::MAX,
            out: Vec::new(),
            low: 0,
            cache: 0,
            pending: 1,
            input: &[],
            code: 0,
            left: MOST_BITS,
        };
        coder.letters(learn.as_bytes(), 0);
        coder
    }

    /// Begins to write.
    pub(super) fn writing(places: usize, learn: &str) -> Coder<'a> {
        Coder { way: Way::Writing, ..Coder::new(places, learn) }
    }

    /// Begins to read.
    pub(super) fn reading(places: usize, learn: &str, input: &'a [u8]) -> Coder<'a> {
        let mut coder = Coder { way: Way::Reading, input, ..Coder::new(places, learn) };
        for _ in 0..4 {
            coder.code = coder.code << 8 | coder.next();
        }
        coder
    }

    /// Whether it reads.
    pub(super) fn reads(&self) -> bool {
        self.way == Way::Reading
    }

    /// Whether it has read as much as it may; from there on it finds nothing but zeros, so every list and text ends.
    pub(super) fn is_spent(&self) -> bool {
        self.left == 0
    }

    fn next(&mut self) -> u32 {
        let Some((first, rest)) = self.input.split_first() else { return 0 };
        self.input = rest;
        u32::from(*first)
    }

    /// A bit of which a zero has these odds, of 65,536.
    fn code(&mut self, zero: u32, bit: bool) -> bool {
        let bound = (self.range >> 16) * zero;
        let bit = match self.way {
            Way::Learning => return bit,
            Way::Writing => bit,
            Way::Reading if self.left == 0 => return false,
            Way::Reading => {
                self.left -= 1;
                self.code >= bound
            }
        };
        if bit {
            self.low += u64::from(bound);
            self.code = self.code.wrapping_sub(bound);
            self.range -= bound;
        } else {
            self.range = bound;
        }
        while self.range < 1 << 24 {
            self.range <<= 8;
            if self.way == Way::Reading {
                self.code = self.code << 8 | self.next();
            } else {
                self.shift();
            }
        }
        bit
    }

    /// Moves the top byte out, once no carry can reach it any more.
    fn shift(&mut self) {
        if self.low >> 24 == 0xff {
            self.pending += 1;
        } else {
            let carry = (self.low >> 32) as u8;
            let first = self.cache;
            for i in 0..self.pending {
                self.out.push(if i == 0 { first } else { 0xff }.wrapping_add(carry));
            }
            self.pending = 1;
            self.cache = (self.low >> 24) as u8;
        }
        self.low = (self.low & 0x00ff_ffff) << 8;
    }

    /// The bytes written: as few as tell the reader everything.
    pub(super) fn finish(mut self) -> Vec<u8> {
        // Any number from `low` up to `low + range` does: the one with the most zeros at its end.
        for kept in 0..=4 {
            let grain = (1u64 << (32 - 8 * kept)) - 1;
            let rounded = (self.low + grain) & !grain;
            if rounded < self.low + u64::from(self.range) {
                self.low = rounded;
                break;
            }
        }
        for _ in 0..5 {
            self.shift();
        }
        // The first byte is always a zero; those at the end are put back by the reader.
        let end = self.out.iter().rposition(|b| *b != 0).map_or(0, |at| at + 1);
        self.out.truncate(end);
        self.out.drain(..1.min(end));
        self.out
    }

    /// A bit with odds of its own place.
    pub(super) fn bit(&mut self, place: usize, bit: bool) -> bool {
        let Some(&Odds(zero, used)) = self.odds.get(place) else { return bit };
        let bit = self.code(u32::from(zero), bit);
        // Quick to learn at first; never so sure that the rare bit could not be told.
        let rate = 1 + used.min(4);
        let zero = if bit { zero - (zero >> rate) } else { zero + ((u16::MAX - zero) >> rate) };
        if let Some(odds) = self.odds.get_mut(place) {
            *odds = Odds(zero.clamp(1 << 9, u16::MAX - (1 << 9)), used.saturating_add(1));
        }
        bit
    }

    /// A number of so many bits whose values have odds: places from `at`, two to the power of `bits`.
    pub(super) fn small(&mut self, at: usize, bits: u32, value: u32) -> u32 {
        let mut node = 1;
        for i in (0..bits).rev() {
            node = node << 1 | usize::from(self.bit(at + node, value >> i & 1 == 1));
        }
        (node as u32).wrapping_sub(1 << bits)
    }

    /// A number of so many bits, each as likely as not.
    pub(super) fn plain(&mut self, bits: u32, value: u64) -> u64 {
        (0..bits).rev().fold(0, |got, i| got << 1 | u64::from(self.code(1 << 15, value >> i & 1 == 1)))
    }

    /// A whole number below 2^63: how many bits it has, with odds (64 places from `at`), then those bits.
    pub(super) fn whole(&mut self, at: usize, value: u64) -> u64 {
        let bits = self.small(at, 6, u64::BITS - value.leading_zeros());
        if bits == 0 {
            return 0;
        }
        // The first bit of it is a one.
        1 << (bits - 1) | self.plain(bits - 1, value)
    }

    /// Text, at most `most` bytes of it.
    pub(super) fn letters(&mut self, text: &[u8], at: usize) -> Vec<u8> {
        let mut before = 0u8;
        let mut out = Vec::new();
        for i in 0..=MOST_LETTERS {
            let given = text.get(i).copied().unwrap_or(0);
            let class = match before {
                0 | b' ' => 0,
                b'a'..=b'z' => 1,
                b'A'..=b'Z' => 2,
                _ => 3,
            };
            before = self.small(at + 256 * class, 8, u32::from(given)) as u8;
            if before == 0 {
                break;
            }
            out.push(before);
        }
        out
    }
}

/// Longest text, bytes.
pub(super) const MOST_LETTERS: usize = 8_000;
/// Places that texts take.
pub(super) const LETTER_PLACES: usize = 4 * 256;

/// The check sum of ISO 3309 (CRC-32, from memory), bit by bit: links are short.
pub(super) fn crc(bytes: impl Iterator<Item = u8>) -> u32 {
    !bytes.fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| sum >> 1 ^ if sum & 1 == 1 { 0xedb8_8320 } else { 0 })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The sum's usual check value, of "123456789" (from memory).
    #[test]
    fn the_check_sum_is_the_usual_one() {
        assert_eq!(crc(b"123456789".iter().copied()), 0xcbf4_3926);
    }

    fn walk(c: &mut Coder, steps: &[(u8, u64)]) -> Vec<u64> {
        let step = |c: &mut Coder, (kind, v): (u8, u64)| match kind % 4 {
            0 => u64::from(c.bit(LETTER_PLACES, v & 1 == 1)),
            1 => u64::from(c.small(LETTER_PLACES + 8, 3, (v & 7) as u32)),
            2 => c.plain(13, v & 0x1fff),
            _ => c.whole(LETTER_PLACES + 16, v >> 1),
        };
        steps.iter().map(|s| step(c, *s)).collect()
    }

    proptest! {
        #[test]
        fn what_is_written_is_read(
            steps in proptest::collection::vec((any::<u8>(), any::<u64>()), 0..300),
            text in "[^\u{0}]{0,80}",
        ) {
            let places = LETTER_PLACES + 100;
            let mut c = Coder::writing(places, "learnt");
            let wrote = walk(&mut c, &steps);
            c.letters(text.as_bytes(), 0);
            let bytes = c.finish();
            let mut c = Coder::reading(places, "learnt", &bytes);
            prop_assert_eq!(walk(&mut c, &steps.iter().map(|(k, _)| (*k, 0)).collect::<Vec<_>>()), wrote);
            prop_assert_eq!(c.letters(&[], 0), text.as_bytes());
        }

        #[test]
        fn any_bytes_are_read(bytes in proptest::collection::vec(any::<u8>(), 0..200), kinds in proptest::collection::vec(any::<u8>(), 0..400)) {
            let mut c = Coder::reading(LETTER_PLACES + 100, "learnt", &bytes);
            walk(&mut c, &kinds.iter().map(|k| (*k, 0)).collect::<Vec<_>>());
            c.letters(&[], 0);
        }
    }

    /// A run of likely bits costs next to nothing: the entropy of 1,000 bits of which 10 are ones is 81 bits.
    #[test]
    fn the_likely_is_cheap() {
        let mut c = Coder::writing(1, "");
        for i in 0..1_000 {
            c.bit(0, i % 100 == 99);
        }
        let bytes = c.finish().len();
        assert!(bytes < 24, "{bytes} bytes");
    }
}
