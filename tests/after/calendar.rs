//! The calendar file against the standard: parsed by libraries that share no code with what writes it, a Rust crate
//! here, and Python's `icalendar` with `dateutil`, which also work out every date (`tests/reference/calendar_file.py`).

use super::NORTH;
use ical::IcalParser;
use ical::parser::ical::component::IcalEvent;
use serde_json::Value as Json;
use tankful::core::after::Date;
use tankful::core::after::care::{Due, schedule};
use tankful::core::after::icalendar::{EventWords, calendar};
use tankful::core::candidates::CandidateId;
use tankful::core::units::UnitSystem;
use tankful::text::{Language, Words};

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/fixtures/calendar_file.ics");

/// Installed on a last day of a month, so that shorter months matter.
fn installed() -> Date {
    Date::parse("2026-08-31").expect("a day")
}

fn dues() -> Vec<Due> {
    schedule(&NORTH.fitted(CandidateId::HeatPump50), installed())
}

fn file() -> String {
    let words = Words::new(Language::ENGLISH, UnitSystem::Us);
    calendar("00c0ffee1234", installed(), &dues(), &|due| EventWords {
        summary: words.key(due.task.key()),
        description: words.say(&due.how),
    })
}

fn value(event: &IcalEvent, name: &str) -> String {
    let found = event.properties.iter().find(|p| p.name == name);
    found.and_then(|p| p.value.clone()).unwrap_or_else(|| panic!("no {name}: {event:?}"))
}

/// Lines end in CR LF and have at most 75 octets (RFC 5545, 3.1); the file is the same each time.
#[test]
fn lines_are_as_the_standard_asks() {
    let text = file();
    assert!(text.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n") && text.ends_with("END:VCALENDAR\r\n"));
    assert!(!text.replace("\r\n", "").contains(['\r', '\n']));
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "a line is longer than 75 octets");
    assert!(text.split("\r\n").any(|line| line.starts_with(' ')), "nothing was long enough to fold");
    assert_eq!(text, file());
}

#[test]
fn another_parser_reads_every_event() {
    let text = file();
    let calendars: Vec<_> = IcalParser::new(text.as_bytes()).collect::<Result<_, _>>().expect("iCalendar");
    let [calendar] = calendars.as_slice() else { panic!("one calendar") };
    let dues = dues();
    assert_eq!(calendar.events.len(), dues.len());
    let words = Words::new(Language::ENGLISH, UnitSystem::Us);
    for (event, due) in calendar.events.iter().zip(&dues) {
        assert_eq!(value(event, "DTSTART"), due.first.iso().replace('-', ""));
        assert_eq!(value(event, "DTSTAMP"), "20260831T000000Z");
        assert_eq!(value(event, "SUMMARY"), words.key(due.task.key()));
        let plain = value(event, "DESCRIPTION").replace("\\,", ",").replace("\\;", ";").replace("\\n", "\n");
        assert_eq!(plain, words.say(&due.how));
        assert!(value(event, "UID").starts_with("00c0ffee1234-") && value(event, "UID").contains('@'));
    }
    let mut uids: Vec<_> = calendar.events.iter().map(|e| value(e, "UID")).collect();
    uids.sort();
    uids.dedup();
    assert_eq!(uids.len(), dues.len());
}

/// The committed file is what is written now, and Python's libraries find the same dates in it as we do.
#[test]
fn every_date_is_found_by_another_library() {
    let committed = std::fs::read_to_string(FILE).expect("the committed file");
    assert_eq!(committed, file(), "write it anew: cargo test --test after write_calendar -- --ignored");
    let path = FILE.replace(".ics", ".json");
    let found: Json =
        serde_json::from_str(&std::fs::read_to_string(path).expect("the fixture")).expect("JSON");
    let until = Date::parse("2041-08-31").expect("a day");
    let events = found["events"].as_array().expect("events");
    assert_eq!(events.len(), dues().len());
    for (event, due) in events.iter().zip(dues()) {
        let theirs: Vec<&str> =
            event["dates"].as_array().expect("dates").iter().filter_map(Json::as_str).collect();
        let ours: Vec<String> = due.dates(until).into_iter().map(Date::iso).collect();
        assert_eq!(theirs, ours, "{:?}", due.task);
    }
}

#[test]
#[ignore = "writes a file"]
fn write_calendar() {
    std::fs::write(FILE, file()).expect("written");
}
