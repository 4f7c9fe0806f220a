//! A job in a link: what stands after the `#` of an address, which browsers never send to a server.
//!
//! `j1.` and letters of base64url (RFC 4648 section 5, from memory) of: the length of what follows in LEB128;
//! the packed job ([`walk`]); its check sum. It is bounded both ways, and reading never fails in another way
//! than by a plain sentence. Name, place and notes go along only when asked for.
//!
//! Numbers come back to the last bit in the unit they were typed in. The log of measured values, what was set
//! aside, the revision and whether the job is put away stay at home.

mod coder;
mod contents;
mod numbers;
mod walk;

pub use contents::contents;

use super::questions::Id;
use super::sheet::{Job, Part};
use crate::core::message::{Arg, Message};
use coder::{Coder, crc};
use walk::Walk;

/// Version of the form.
pub const VERSION: u32 = 1;
/// Longest link that is read, characters of the part after the `#`.
pub const MOST_CHARACTERS: usize = 20_000;

/// What goes along besides answers, offer and asked questions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct With {
    /// What the job is called.
    pub name: bool,
    /// Where it is.
    pub place: bool,
    /// The notes.
    pub notes: bool,
    /// The installer's offer; it goes back with the answers anyway.
    pub offer: bool,
    /// On its way back to who asked.
    pub back: bool,
}

impl With {
    /// Whether a text goes along.
    pub const fn has(self, part: Part) -> bool {
        match part {
            Part::Name => self.name,
            Part::Place => self.place,
            Part::Notes => self.notes,
        }
    }
}

/// What a link held.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The job, with the identity it was sent under; its times are the sending's.
    pub job: Job,
    /// It comes back to who asked.
    pub back: bool,
    /// What it held that this program cannot take.
    pub dropped: Vec<Dropped>,
}

/// Something in a link that is left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dropped {
    /// An answer out of range, or an option nobody knows.
    Answer(Id),
    /// Something of the offer.
    Offer,
    /// A text that is none.
    Text,
    /// Something that only a newer program knows.
    Unknown,
}

impl Dropped {
    /// What to tell a person.
    pub fn message(self) -> Message {
        match self {
            Dropped::Answer(id) => {
                Message::new("link-dropped-answer").with("question", Message::new(id.key()))
            }
            Dropped::Offer => Message::new("link-dropped-offer"),
            Dropped::Text => Message::new("link-dropped-text"),
            Dropped::Unknown => Message::new("link-dropped-unknown"),
        }
    }
}

/// Why a link cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// There is no job in it.
    NotOurs,
    /// Made by a newer program.
    Newer(u32),
    /// Its end is missing.
    CutOff,
    /// Some of its letters are not the ones that were sent.
    Damaged,
    /// Longer than is read.
    TooLong,
}

impl LinkError {
    /// What to tell a person.
    pub fn message(self) -> Message {
        match self {
            LinkError::NotOurs => Message::new("link-not-ours"),
            LinkError::Newer(version) => {
                Message::new("link-newer").with("version", Arg::Count(version.into()))
            }
            LinkError::CutOff => Message::new("link-cut-off"),
            LinkError::Damaged => Message::new("link-damaged"),
            LinkError::TooLong => Message::new("link-too-long"),
        }
    }
}

/// The part of an address after the `#`, for a job and whatever is to go along.
pub fn encode(job: &Job, with: With, now_ms: f64) -> String {
    let mut sent = parcel(job, with);
    sent.changed_ms = now_ms;
    let mut walk = Walk { coder: Coder::writing(walk::PLACES, walk::LEARN), dropped: Vec::new() };
    walk.job(&mut sent, &mut with.back.clone());
    let packed = walk.coder.finish();
    let mut bytes = Vec::with_capacity(packed.len() + 6);
    let mut length = packed.len();
    while length > 0x7f {
        bytes.push(length as u8 | 0x80);
        length >>= 7;
    }
    bytes.push(length as u8);
    bytes.extend(packed);
    bytes.extend(crc(bytes.iter().copied()).to_le_bytes());
    format!("j{VERSION}.{}", letters_of(&bytes))
}

/// What of a job goes along.
fn parcel(job: &Job, with: With) -> Job {
    let mut sent =
        Job { id: job.id, answers: job.answers.clone(), asked: job.asked.clone(), ..Job::default() };
    if with.offer {
        sent.offer = job.offer.clone();
    }
    for part in Part::ALL {
        if with.has(part) {
            sent.write(part, job.text(part));
        }
    }
    sent
}

/// Opens a link: the part after the `#`, or a whole address or a line of a message with it in.
///
/// # Errors
/// Says why there is no job to be had.
pub fn decode(text: &str) -> Result<Opened, LinkError> {
    let (version, letters) = find(text).ok_or(LinkError::NotOurs)?;
    if version != VERSION {
        return Err(if version > VERSION { LinkError::Newer(version) } else { LinkError::NotOurs });
    }
    if letters.len() > MOST_CHARACTERS {
        return Err(LinkError::TooLong);
    }
    let bytes = bytes_of(letters);
    let (length, head) = length_of(&bytes).ok_or(LinkError::CutOff)?;
    let end = head.saturating_add(length);
    let (Some(packed), Some(sum)) = (bytes.get(head..end), bytes.get(end..end.saturating_add(4))) else {
        // A damaged length looks like a missing end; nobody can tell them apart.
        return Err(LinkError::CutOff);
    };
    if crc(bytes.iter().copied().take(end)).to_le_bytes() != sum {
        return Err(LinkError::Damaged);
    }
    Ok(unpack(packed))
}

/// Reads a packed job; any bytes are some job. Apart from [`decode`] for tests that throw bytes at it.
pub fn unpack(packed: &[u8]) -> Opened {
    let coder = Coder::reading(walk::PLACES, walk::LEARN, packed);
    let mut walk = Walk { coder, dropped: Vec::new() };
    let (mut job, mut back) = (Job::default(), false);
    walk.job(&mut job, &mut back);
    job.created_ms = job.changed_ms;
    if walk.coder.is_spent() {
        walk.dropped.push(Dropped::Unknown);
    }
    // Many faults of one kind are one sentence.
    let mut dropped = Vec::new();
    for one in walk.dropped {
        if !dropped.contains(&one) {
            dropped.push(one);
        }
    }
    Opened { job, back, dropped }
}

/// The version and the letters in a text that may have an address before them and more words after.
fn find(text: &str) -> Option<(u32, &[u8])> {
    let text = text.rsplit('#').next().unwrap_or(text).trim().strip_prefix('j')?;
    let (version, letters) = text.split_once('.')?;
    let plain = !version.is_empty() && version.len() < 6 && version.bytes().all(|b| b.is_ascii_digit());
    let end = letters.bytes().position(|b| value_of(b).is_none()).unwrap_or(letters.len());
    Some((version.parse().ok().filter(|_| plain)?, letters.as_bytes().get(..end)?))
}

/// The length at the head, and how many bytes it takes.
fn length_of(bytes: &[u8]) -> Option<(usize, usize)> {
    let mut length = 0;
    for (i, byte) in bytes.iter().take(3).enumerate() {
        length |= usize::from(byte & 0x7f) << (7 * i);
        if byte & 0x80 == 0 {
            return Some((length, i + 1));
        }
    }
    None
}

/// Base64url of bytes, unpadded.
fn letters_of(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let mut out = String::new();
    for three in bytes.chunks(3) {
        let word = three.iter().fold(0, |word, b| word << 8 | usize::from(*b)) << (8 * (3 - three.len()));
        for i in 0..=three.len() {
            out.push(char::from(LETTERS[word >> (18 - 6 * i) & 63]));
        }
    }
    out
}

/// The value of a letter of base64url.
const fn value_of(letter: u8) -> Option<u32> {
    let value = match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    };
    Some(value as u32)
}

/// Bytes of base64url; bits left over at the end are dropped.
fn bytes_of(letters: &[u8]) -> Vec<u8> {
    let (mut word, mut bits, mut out) = (0u32, 0, Vec::new());
    for value in letters.iter().filter_map(|l| value_of(*l)) {
        word = word << 6 | value;
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            out.push((word >> bits) as u8);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Found by fuzzing: a few bytes that stood for many millions of letters, and took seconds to read.
    #[test]
    fn a_few_bytes_cannot_keep_the_reader_busy() {
        let bytes = [0xff, 0xff, 0xff, 0xff, 0x2e];
        let mut walk = Walk { coder: Coder::reading(walk::PLACES, walk::LEARN, &bytes), dropped: Vec::new() };
        walk.job(&mut Job::default(), &mut false);
        assert!(walk.coder.is_spent(), "it stands for more than may be read");
        assert!(walk.dropped.len() < 10_000, "{} things left out", walk.dropped.len());
        assert!(unpack(&bytes).dropped.contains(&Dropped::Unknown));
    }
}
