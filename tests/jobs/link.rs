//! Links.

use crate::any;
use proptest::prelude::*;
use std::fs;
use std::path::PathBuf;
use tankful::core::case::{HeaterKind, Provenance};
use tankful::core::units::Quantity;
use tankful::job::kept::Reading;
use tankful::job::link::{self, Dropped, LinkError, Opened, With, contents, decode, encode, unpack};
use tankful::job::offer::{AdderKind, Figure, Heater, Offer};
use tankful::job::questions::{self, Id, Kind, Question, Value, Who};
use tankful::job::{Job, JobId, Part};
use tankful::text::{Language, Words};

const ALL: With = With { name: true, place: true, notes: true, offer: true, back: true };
const BARE: With = With { name: false, place: false, notes: false, offer: true, back: false };

/// 2026-01-01, to the minute.
const SENT_MS: f64 = 1_767_225_600_000.0;

/// What of a job a link brings.
fn sent(job: &Job, with: With) -> Job {
    let mut want =
        Job { id: job.id, answers: job.answers.clone(), asked: job.asked.clone(), ..Job::default() };
    (want.created_ms, want.changed_ms) = (SENT_MS, SENT_MS);
    if with.offer {
        want.offer = job.offer.clone();
    }
    for part in Part::ALL.into_iter().filter(|p| with.has(*p)) {
        want.write(part, job.text(part));
    }
    want
}

proptest! {
    /// Whatever a job holds comes back to the last bit, in the units it was typed in.
    #[test]
    fn any_job_comes_back(job in any::job(), with in prop_oneof![Just(ALL), Just(BARE)]) {
        let opened = decode(&encode(&job, with, SENT_MS));
        let want = Opened { job: sent(&job, with), back: with.back, dropped: vec![] };
        prop_assert_eq!(opened, Ok(want));
    }

    /// Any one letter changed is noticed; any end cut off is noticed.
    #[test]
    fn any_damage_is_noticed(job in any::job(), at in any::<prop::sample::Index>(), with in "[A-Za-z0-9_-]") {
        let text = encode(&job, BARE, SENT_MS);
        let at = 3 + at.index(text.len() - 3);
        prop_assert_eq!(decode(&text[..at]), Err(LinkError::CutOff));
        let changed = format!("{}{with}{}", &text[..at], &text[at + 1..]);
        if let Ok(opened) = decode(&changed) {
            // The last letter has bits to spare.
            prop_assert!(changed == text || at == text.len() - 1);
            prop_assert_eq!(opened.job.answers, job.answers);
        }
    }

    #[test]
    fn any_text_is_survived(text in "(j[0-9]{0,3}\\.)?[A-Za-z0-9_=#. -]{0,200}") {
        let _ = decode(&text);
    }

    /// Any bytes are some job, within bounds, that can be kept and sent again.
    #[test]
    fn any_bytes_are_survived(bytes in proptest::collection::vec(any::<u8>(), 0..600)) {
        let Opened { job, .. } = unpack(&bytes);
        let Reading::Job(back, refused) = Job::read(&job.to_text(), job.id) else { panic!("{job:?}") };
        prop_assert_eq!(refused, vec![]);
        prop_assert_eq!(&*back, &job);
        let again = decode(&encode(&job, ALL, job.changed_ms)).expect("its own link");
        prop_assert_eq!(again.job.offer, job.offer);
    }
}

/// Found by fuzzing: a forged time must not make a link the newer one for ever.
#[test]
fn no_link_comes_from_another_age() {
    let mut job = Job::new(JobId::new(7), 0.0);
    for now_ms in [f64::MAX, f64::INFINITY, f64::NAN, -1e300] {
        job.changed_ms = decode(&encode(&job, BARE, now_ms)).expect("a link").job.changed_ms;
        assert!((1.5e12..8e12).contains(&job.changed_ms), "{}", job.changed_ms);
    }
}

#[test]
fn each_failure_has_its_sentence() {
    let text = encode(&Job::new(JobId::new(7), 0.0), BARE, SENT_MS);
    let long = format!("j1.{}", "A".repeat(30_000));
    let mut changed = text.clone();
    changed.replace_range(9..10, if &text[9..10] == "z" { "y" } else { "z" });
    let words = Words::new(Language::ENGLISH, Default::default());
    for (text, want) in [
        ("", LinkError::NotOurs),
        ("?p=result", LinkError::NotOurs),
        ("https://example.org/#top", LinkError::NotOurs),
        ("j0.AAAA", LinkError::NotOurs),
        ("j.AAAA", LinkError::NotOurs),
        ("j2.whatever", LinkError::Newer(2)),
        ("j1.", LinkError::CutOff),
        (&text[..text.len() - 2], LinkError::CutOff),
        (&changed, LinkError::Damaged),
        (&long, LinkError::TooLong),
    ] {
        assert_eq!(decode(text), Err(want), "{text}");
        assert_eq!(words.faults(&want.message()), Vec::<String>::new());
    }
}

#[test]
fn a_link_is_found_in_what_people_paste() {
    let link = encode(&Job::new(JobId::new(7), 0.0), BARE, SENT_MS);
    for text in [
        link.clone(),
        format!("#{link}"),
        format!(" https://example.org/a/?p=start#{link} \n"),
        format!("<https://example.org/#{link}>."),
        format!("Please fill this in: https://example.org/#{link} Thanks"),
    ] {
        assert_eq!(decode(&text).map(|o| o.job.id), Ok(JobId::new(7)), "{text}");
    }
}

/// Answers that people give: the middle of each range as they would type it, one question in five measured.
fn answered(job: &mut Job, which: impl Fn(&Question) -> bool) {
    for (i, q) in questions::all().filter(|q| which(q)).enumerate() {
        let value = match q.kind {
            Kind::Number { low, high, us, step, .. } => {
                let (low, high) = (low.to(us).expect("alike").value, high.to(us).expect("alike").value);
                let steps = ((low + 0.37 * (high - low)) / step).round();
                let typed = format!("{:.2}", steps * step).parse::<f64>().expect("a number");
                Value::number(typed.clamp(low, high), us)
            }
            Kind::Choice(options) => Value::code(options[i % options.len()]),
            Kind::Place => Value::code("us-ma-boston"),
        };
        let from = if i % 5 == 0 { Provenance::Measured } else { Provenance::Answered };
        job.answer(q.id, value, from, 0.0, "").expect("within the range");
    }
}

/// An offer of so many heaters with every figure given, and all kinds of further work.
fn full_offer(heaters: usize) -> Offer {
    let mut offer = Offer { labour: 350.0, ..Offer::default() };
    for (i, name) in
        ["Example series 50 gal hybrid", "Example series 66 gal hybrid", "Example plug-in 50 gal"]
            .into_iter()
            .enumerate()
            .take(heaters)
    {
        let mut h = Heater::new(HeaterKind::HeatPump);
        h.call(name);
        let figures = [50.0, 3.45, 67.0, 4_500.0, 240.0, 30.0, 62.5, 22.25, 198.0, 4_175.0];
        for (figure, value) in Figure::ALL.into_iter().zip(figures) {
            let value = if matches!(figure, Figure::Volume | Figure::Price) {
                value + 16.0 * i as f64
            } else {
                value
            };
            h.set(figure, Some(Quantity::new(value, figure.units().0))).expect("within the range");
        }
        offer.heaters.push(h);
    }
    for (i, kind) in AdderKind::ALL.into_iter().enumerate() {
        let name = if kind == AdderKind::Own { "Attic hoist" } else { "" };
        offer.price_adder(kind, name, 85.0 + 110.0 * i as f64).expect("a price");
    }
    offer
}

/// A typical link: what a householder answered of the first questions, two heaters offered.
pub fn typical() -> Job {
    let mut job = Job::new(JobId::new(0x00c0_ffee_1234), 0.0);
    answered(&mut job, |q| q.first && q.who == Who::Householder);
    job.offer = full_offer(2);
    for h in &mut job.offer.heaters {
        for f in [Figure::Volts, Figure::Breaker, Figure::Weight, Figure::Input] {
            h.set(f, None).expect("taken away");
        }
    }
    job.offer.adders.truncate(3);
    job
}

pub fn full() -> Job {
    let mut job = Job::new(JobId::new(0x00c0_ffee_1234), 0.0);
    answered(&mut job, |_| true);
    job.offer = full_offer(3);
    job.asked = questions::all().filter(|q| q.first).map(|q| q.id).collect();
    job
}

/// The link of a job, without texts.
pub fn sent_link(job: &Job) -> String {
    encode(job, BARE, SENT_MS)
}

#[test]
fn links_are_short() {
    let mut texts = full();
    texts.write(Part::Name, "Example, Ann");
    texts.write(Part::Place, "12 Example Road, Example Town, MA 02100");
    texts.write(Part::Notes, "Key under the mat. The stairs are steep. Call before noon.");
    let mut short = Job::new(JobId::new(1 << 40), 0.0);
    answered(&mut short, |q| q.first && q.who == Who::Householder);
    let lengths = [
        ("answers of a householder", encode(&short, BARE, SENT_MS).len()),
        ("typical", encode(&typical(), BARE, SENT_MS).len()),
        ("full", encode(&full(), BARE, SENT_MS).len()),
        ("full, with texts", encode(&texts, ALL, SENT_MS).len()),
    ];
    println!("{lengths:?} of {} questions", Id::ALL.len());
    assert!(lengths[2].1 <= 900 && lengths[3].1 <= 900, "{lengths:?}");
    assert!(lengths[1].1 <= 400 && lengths[0].1 <= 150, "{lengths:?}");
}

#[test]
fn what_a_link_contains_is_said() {
    let mut job = typical();
    job.write(Part::Name, "Example, Ann");
    job.write(Part::Notes, "Key under the mat");
    job.asked = vec![Id::HeaterAge];
    let words = Words::new(Language::ENGLISH, Default::default());
    let said = contents(&job, With { name: true, ..BARE });
    let told: Vec<String> = said.iter().map(|m| words.say(m)).collect();
    let all = told.join("\n").replace('\u{a0}', " ");
    for part in
        ["Boston", "Example series 50 gal hybrid", "1 question", "Example, Ann", "Not in the link: the notes"]
    {
        assert!(all.contains(part), "{part} is not in:\n{all}");
    }
    assert!(!all.contains("under the mat"), "{all}");
    assert!(said.iter().all(|m| words.faults(m).is_empty()), "{all}");
}

#[test]
fn what_was_left_out_is_said() {
    let words = Words::new(Language::ENGLISH, Default::default());
    for one in [Dropped::Answer(Id::Setpoint), Dropped::Offer, Dropped::Text, Dropped::Unknown] {
        assert_eq!(words.faults(&one.message()), Vec::<String>::new());
    }
}

/// Links of every version, for ever: `<name>.link` and the job it must open to, `<name>.json`.
#[test]
fn golden_links_open_for_ever() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/links");
    let mut opened = 0;
    for entry in fs::read_dir(folder).expect("the folder of links") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|e| e != "link") {
            continue;
        }
        let text = fs::read_to_string(&path).expect("a link");
        let link = decode(&text).expect("a link of ours");
        assert_eq!(link.dropped, [], "{}", path.display());
        let json = fs::read_to_string(path.with_extension("json")).expect("its job");
        let Reading::Job(want, refused) = Job::read(&json, JobId::new(0)) else {
            panic!("{}", path.display())
        };
        assert_eq!(refused, []);
        assert_eq!(link.job, *want, "{}", path.display());
        opened += 1;
    }
    assert!(opened >= 3, "only {opened} links");
}

/// Writes golden links anew while the form is still being made: `cargo test --test jobs write_golden -- --ignored`.
/// Never for a version that has been in anybody's hands.
#[test]
#[ignore = "writes files"]
fn write_golden_links() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/jobs/links");
    let mut texts = full();
    texts.write(Part::Name, "Øst, Ann");
    texts.write(Part::Place, "12 Example Road");
    texts.write(Part::Notes, "Key under the mat.\n„Steep“ stairs");
    for (name, job, with) in [("typical", typical(), BARE), ("full", full(), BARE), ("texts", texts, ALL)] {
        let path = folder.join(format!("v{}-{name}", link::VERSION));
        fs::write(path.with_extension("link"), encode(&job, with, SENT_MS)).expect("written");
        fs::write(path.with_extension("json"), sent(&job, with).to_text()).expect("written");
    }
}
