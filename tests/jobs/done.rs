//! What was done on a job: kept, joined, bounded.

use crate::any;
use proptest::prelude::*;
use tankful::core::units::Unit;
use tankful::job::done::{Done, LONGEST_IS, LONGEST_WHAT, MOST};
use tankful::job::exchange::{Change, preview};
use tankful::job::kept::Reading;
use tankful::job::merge::{Difference, Field, Side, apply, differences, tabs};
use tankful::job::questions::Value;
use tankful::job::{Job, JobId, Why};

fn yes() -> Value {
    Value::code("yes")
}

fn read(text: &str) -> (Job, usize) {
    match Job::read(text, JobId::new(9)) {
        Reading::Job(job, refused) => (*job, refused.len()),
        other => panic!("{other:?}: {text}"),
    }
}

/// A kept job with a record of the work, as written by the first release that has one. Never to be changed.
const GOLDEN: &str = r#"{"answers":{},"changed":5,"created":1,"done":[{"at":2,"is":"heat_pump_50","what":"heater"},{"at":3,"is":{"unit":"degF","value":68.5},"what":"reading.air_in","who":"Ann"},{"at":4,"is":"","what":"step.not_known_yet"}],"id":"00c0ffee1234","revision":7,"tankful_job":3}"#;

#[test]
fn the_golden_record_opens_and_is_written_the_same() {
    let (job, refused) = read(GOLDEN);
    assert_eq!(refused, 0);
    assert_eq!(job.done.get("heater"), Some(&Value::code("heat_pump_50")));
    assert_eq!(job.done.get("reading.air_in"), Some(&Value::number(68.5, Unit::DegF)));
    assert_eq!(job.done.entry("reading.air_in").map(|e| e.who.as_str()), Some("Ann"));
    // Taken back: there, so that other copies learn of it, and yet nothing.
    assert_eq!((job.done.get("step.not_known_yet"), job.done.all().len()), (None, 3));
    assert_eq!(job.done.under("step.").count(), 0);
    assert_eq!(job.to_text(), GOLDEN);
}

/// Older releases read version 2 and no newer one: a job that has nothing new in it is still theirs to read.
#[test]
fn a_job_with_nothing_done_is_written_as_before() {
    let mut job = Job::new(JobId::new(1), 1.0);
    assert!(job.to_text().contains(r#""tankful_job":2"#) && !job.to_text().contains("done"));
    job.done.note("part.union", yes(), 2.0, "Ann");
    assert!(job.to_text().contains(r#""tankful_job":3"#));
}

#[test]
fn entries_are_bounded_and_junk_is_refused() {
    let mut done = Done::default();
    done.note("", yes(), 1.0, "");
    done.note(&"x".repeat(LONGEST_WHAT + 1), yes(), 1.0, "");
    done.note("two\nlines", yes(), 1.0, "");
    done.note("x", Value::number(f64::NAN, Unit::Volt), 1.0, "");
    assert!(done.is_empty());
    done.note("long", Value::code(&"x".repeat(1_000)), f64::INFINITY, &"y".repeat(99));
    let long = done.entry("long").expect("entered");
    assert_eq!((long.at_ms, long.who.len()), (0.0, 40));
    assert_eq!(long.is, Value::code(&"x".repeat(LONGEST_IS)));
    for i in 0..MOST + 9 {
        done.note(&format!("part.{i}"), yes(), 10.0 + i as f64, "");
    }
    // The oldest made room.
    assert_eq!((done.all().len(), done.get("part.8"), done.get("part.9")), (MOST, None, Some(&yes())));
    let text = r#"{"tankful_job":3,"id":"00c0ffee1234","revision":1,"created":1,"changed":2,"answers":{},
        "done":[7,{"what":"a"},{"is":"yes"},{"what":"b","is":{"value":1,"unit":"parsec"}},{"what":"c","is":5},
        {"what":"fine","is":"yes","at":-4,"who":"Ann\u0000"},{"what":"fine","is":"no","at":9}]}"#;
    let (job, refused) = read(text);
    assert_eq!((refused, job.done.all().len(), job.done.get("fine")), (5, 1, Some(&Value::code("no"))));
    assert_eq!((job.aside[0].field.as_str(), job.aside[0].why), ("done", Why::Unreadable));
    assert_eq!(read(&job.to_text()), (job, 0));
}

/// What was entered last stands, even where the clock was set back in between.
#[test]
fn the_clock_may_go_backwards() {
    let mut done = Done::default();
    done.note("step.level", yes(), 100.0, "");
    done.note("step.level", Value::code("no"), 50.0, "");
    assert_eq!(done.entry("step.level").map(|e| (&e.is, e.at_ms)), Some((&Value::code("no"), 101.0)));
    done.take_back("step.level", 20.0, "");
    assert_eq!((done.get("step.level"), done.all()[0].at_ms), (None, 102.0));
}

#[test]
fn a_file_with_more_done_is_told_apart_and_joined() {
    let mut ours = Job::new(JobId::new(1), 1.0);
    ours.done.note("part.union", Value::code("buy"), 5.0, "Ann");
    let mut theirs = ours.clone();
    theirs.done.note("part.union", Value::code("have"), 9.0, "Bo");
    theirs.done.note("step.level", yes(), 9.0, "Bo");
    // An older copy brings nothing.
    assert_eq!(preview(&ours, Some(&theirs)), Change::Same);
    let all = [Difference { field: Field::Done, take: Side::Theirs }];
    assert_eq!(preview(&theirs, Some(&ours)), Change::Differs(all.to_vec()));
    let mut merged = ours.clone();
    apply(&mut merged, &theirs, &all, 20.0);
    assert_eq!(merged.done, theirs.done);
    assert_eq!(merged.aside.len(), 1, "what gave way is set aside");
    let refused = [Difference { field: Field::Done, take: Side::Ours }];
    let mut merged = ours.clone();
    apply(&mut merged, &theirs, &refused, 20.0);
    assert_eq!((&merged.done, merged.aside.len()), (&ours.done, 1));
    assert!(merged.aside[0].text.contains("step.level"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]
    /// Joined in any order, any number of times, two tabs come to the same record.
    #[test]
    fn tabs_agree(base in any::done(), more in any::done(), other in any::done()) {
        let mut start = Job::new(JobId::new(1), 1.0);
        start.done = base;
        let side = |more: &Done, at: f64| {
            let mut job = start.clone();
            for e in more.all() {
                job.done.note(&e.what, e.is.clone(), 200.0 + e.at_ms, &e.who);
            }
            job.touch(at);
            job
        };
        let (ours, theirs) = (side(&more, 2.0), side(&other, 3.0));
        let merged = tabs(&start, &ours, &theirs, 4.0);
        prop_assert_eq!(&merged.done, &tabs(&start, &theirs, &ours, 4.0).done);
        prop_assert_eq!(&merged.done, &tabs(&start, &merged, &ours, 5.0).done);
        // What only one side touched stands as it left it, and nothing is set aside for it.
        for e in ours.done.all().iter().filter(|e| other.all().iter().all(|o| o.what != e.what)) {
            prop_assert!(merged.done.all().contains(e));
        }
        if other.is_empty() {
            prop_assert_eq!(merged.aside.len(), 0);
        }
        let found = differences(&ours, &theirs);
        prop_assert_eq!(found.is_empty(), ours.done == merged.done);
    }
}
