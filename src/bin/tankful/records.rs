//! The input, record by record, within bounded memory: a whole file that is one case, or JSON Lines.

use std::io::{self, BufRead};
use tankful::job::file::MOST_BYTES;

/// One record as it came in.
#[derive(Debug, PartialEq)]
pub struct Record {
    /// The line it begins on, from 1.
    pub line: u64,
    /// Bytes read up to its end.
    pub read: u64,
    /// What stands there.
    pub content: Content,
}

/// What a record holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Content {
    /// Text to read as a case.
    Text(String),
    /// More than is read; the rest was skipped.
    TooLong,
    /// Not UTF-8.
    NotText,
}

/// Reads records one after another.
pub struct Records<R> {
    input: R,
    line: u64,
    read: u64,
    /// Records found while finding out what the input is.
    waiting: std::collections::VecDeque<Record>,
    begun: bool,
    /// What comes is still part of a first record that was too long, and skipped with it.
    rest_of_first: bool,
}

impl<R: BufRead> Records<R> {
    /// Records of an input.
    pub fn new(input: R) -> Self {
        Self {
            input,
            line: 0,
            read: 0,
            waiting: std::collections::VecDeque::new(),
            begun: false,
            rest_of_first: false,
        }
    }

    /// The next record; `None` at the end. Blank lines are passed over.
    ///
    /// # Errors
    /// When the input cannot be read.
    pub fn next(&mut self) -> io::Result<Option<Record>> {
        if !self.begun {
            self.begun = true;
            self.begin()?;
        }
        if let Some(record) = self.waiting.pop_front() {
            return Ok(Some(record));
        }
        loop {
            let next = self.line()?;
            let case = matches!(&next, Some(Record { content: Content::Text(text), .. }) if is_case(text));
            if next.is_none() || case || !self.rest_of_first {
                self.rest_of_first = false;
                return Ok(next);
            }
        }
    }

    /// Decides by content whether the input is one case over many lines or a case a line.
    ///
    /// A first line that is complete, or that no further line could complete, is a record of JSON
    /// Lines. Otherwise lines are gathered, up to the longest record that is read, until they are a
    /// complete value. Lines that never become one are one bad record, unless one of them is a case of
    /// its own: then a first line was cut short, and each line stands for itself.
    fn begin(&mut self) -> io::Result<()> {
        let Some(first) = self.line()? else { return Ok(()) };
        let from = first.line;
        let mut gathered = Gathered::default();
        let mut next = first;
        loop {
            let alone = match &next.content {
                Content::Text(text) if gathered.text.is_empty() => !gathered.add(text),
                Content::Text(text) if is_case(text) => true,
                Content::Text(text) => {
                    gathered.add(text);
                    false
                }
                Content::TooLong | Content::NotText => true,
            };
            self.waiting.push_back(next);
            if alone {
                return Ok(());
            }
            let too_long = gathered.text.len() > MOST_BYTES;
            if too_long || gathered.depth == 0 {
                self.rest_of_first = too_long;
                self.one(from, gathered.text);
                return Ok(());
            }
            next = match self.line()? {
                Some(record) => record,
                None => {
                    self.one(from, gathered.text);
                    return Ok(());
                }
            };
        }
    }

    /// Makes what was gathered one record, in place of its lines.
    fn one(&mut self, line: u64, gathered: String) {
        self.waiting.clear();
        let content = if gathered.len() > MOST_BYTES { Content::TooLong } else { Content::Text(gathered) };
        self.waiting.push_back(Record { line, read: self.read, content });
    }

    /// The next line that is not blank.
    fn line(&mut self) -> io::Result<Option<Record>> {
        let mut bytes = Vec::new();
        loop {
            bytes.clear();
            let Some(whole) = self.bytes(&mut bytes)? else { return Ok(None) };
            self.line += 1;
            if self.line == 1 && bytes.starts_with(b"\xef\xbb\xbf") {
                bytes.drain(..3);
            }
            if whole && bytes.iter().all(u8::is_ascii_whitespace) {
                continue;
            }
            let content = match String::from_utf8(bytes) {
                _ if !whole => Content::TooLong,
                Ok(text) => Content::Text(text),
                Err(_) => Content::NotText,
            };
            return Ok(Some(Record { line: self.line, read: self.read, content }));
        }
    }

    /// Reads to the end of a line, keeping at most [`MOST_BYTES`]; whether all of it was kept. `None` at
    /// the end of the input.
    fn bytes(&mut self, kept: &mut Vec<u8>) -> io::Result<Option<bool>> {
        let (mut any, mut whole) = (false, true);
        loop {
            let chunk = match self.input.fill_buf() {
                Ok(chunk) => chunk,
                Err(e) if e.kind() == io::ErrorKind::Interrupted => continue,
                Err(e) => return Err(e),
            };
            if chunk.is_empty() {
                return Ok(any.then_some(whole));
            }
            any = true;
            let end = chunk.iter().position(|b| *b == b'\n');
            let line = chunk.get(..end.unwrap_or(chunk.len())).unwrap_or(chunk);
            if kept.len() + line.len() > MOST_BYTES {
                // What is beyond is skipped, and what was kept of it is of no use.
                whole = false;
                kept.clear();
            } else if whole {
                kept.extend_from_slice(line);
            }
            let used = line.len() + usize::from(end.is_some());
            self.input.consume(used);
            self.read += used as u64;
            if end.is_some() {
                return Ok(Some(whole));
            }
        }
    }
}

/// Lines put together, and how deep in braces they end. Counted as they come, so that a record of many
/// lines is not read over and over.
#[derive(Default)]
struct Gathered {
    text: String,
    depth: usize,
    in_string: bool,
    escaped: bool,
}

impl Gathered {
    /// Adds a line; whether further lines could complete it to an object.
    fn add(&mut self, line: &str) -> bool {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.text.push_str(line);
        for byte in line.bytes() {
            match byte {
                _ if self.escaped => self.escaped = false,
                b'\\' if self.in_string => self.escaped = true,
                b'"' => self.in_string = !self.in_string,
                b'{' | b'[' if !self.in_string => self.depth += 1,
                b'}' | b']' if !self.in_string => self.depth = self.depth.saturating_sub(1),
                _ => {}
            }
        }
        // No JSON text carries a line break within a string.
        self.depth > 0 && !self.in_string && self.text.trim_start().starts_with('{')
    }
}

/// Whether a line is a whole case of its own: an object that names the form.
fn is_case(text: &str) -> bool {
    text.trim_start().starts_with('{')
        && serde_json::from_str::<serde_json::Map<String, serde_json::Value>>(text)
            .is_ok_and(|m| m.contains_key("tankful"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(input: &[u8]) -> Vec<(u64, Content)> {
        let mut records = Records::new(input);
        let mut out = Vec::new();
        while let Some(r) = records.next().expect("memory can be read") {
            out.push((r.line, r.content));
        }
        out
    }

    fn text(t: &str) -> Content {
        Content::Text(t.to_owned())
    }

    #[test]
    fn lines_are_records() {
        assert_eq!(
            all(b"{\"a\":1}\n\n{\"b\":2}\r\nnonsense\n{\"c\":"),
            [(1, text("{\"a\":1}")), (3, text("{\"b\":2}\r")), (4, text("nonsense")), (5, text("{\"c\":"))]
        );
        assert_eq!(all(b""), []);
        assert_eq!(all(b" \n\n"), []);
    }

    #[test]
    fn one_case_over_many_lines_is_one_record() {
        let pretty = "\n{\n  \"tankful\": 1,\n  \"answers\": {\n    \"a\": {}\n  }\n}\n";
        assert_eq!(
            all(pretty.as_bytes()),
            [(2, text("{\n  \"tankful\": 1,\n  \"answers\": {\n    \"a\": {}\n  }\n}"))]
        );
        // With a mark of byte order, and the brace on its own line.
        assert_eq!(
            all("\u{feff}{\n\"a\":\n{ \"b\": 1 }\n}".as_bytes()),
            [(1, text("{\n\"a\":\n{ \"b\": 1 }\n}"))]
        );
        // What follows is read line by line.
        assert_eq!(all(b"{\n}\nmore\n"), [(1, text("{\n}")), (3, text("more"))]);
    }

    #[test]
    fn a_first_line_cut_short_does_not_swallow_the_rest() {
        let input = "{\"tankful\":1,\"answers\":{\n{\"tankful\":1}\n{\"tankful\":1}\n";
        assert_eq!(
            all(input.as_bytes()),
            [
                (1, text("{\"tankful\":1,\"answers\":{")),
                (2, text("{\"tankful\":1}")),
                (3, text("{\"tankful\":1}"))
            ]
        );
    }

    #[test]
    fn an_unfinished_case_is_one_bad_record() {
        assert_eq!(all(b"{\n\"a\": 1,\n"), [(1, text("{\n\"a\": 1,"))]);
    }

    #[test]
    fn monsters_are_skipped() {
        let mut input = vec![b'x'; 3 * MOST_BYTES];
        input.extend_from_slice(b"\n{\"a\":1}\n\xff\xfe\n");
        assert_eq!(all(&input), [(1, Content::TooLong), (2, text("{\"a\":1}")), (3, Content::NotText)]);
        // A case over many lines that never ends: gathered no further than the longest record.
        let endless = "{\n".to_owned() + &"\"a\": [\n".repeat(MOST_BYTES / 4);
        let records = all(endless.as_bytes());
        assert_eq!(records, [(1, Content::TooLong)]);
        // A case after it is found again.
        let records = all((endless + "{\"tankful\":1}\n").as_bytes());
        assert_eq!(records.last().map(|(_, c)| c.clone()), Some(text("{\"tankful\":1}")));
    }
}
