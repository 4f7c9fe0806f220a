//! The kept form.

use crate::any::{self, told};
use proptest::prelude::*;
use tankful::core::case::Provenance;
use tankful::core::units::Unit;
use tankful::job::kept::Reading;
use tankful::job::questions::{Id, Value};
use tankful::job::{Job, JobId, Part, Why};

fn read(text: &str) -> (Job, Vec<(String, &'static str)>) {
    match Job::read(text, JobId::new(9)) {
        Reading::Job(job, refused) => {
            (*job, refused.into_iter().map(|e| (e.field.clone(), e.trouble.code())).collect())
        }
        other => panic!("{other:?}: {text}"),
    }
}

proptest! {
    #[test]
    fn any_job_comes_back(job in any::job()) {
        let (back, refused) = read(&job.to_text());
        prop_assert_eq!(refused, vec![]);
        prop_assert_eq!(back, job);
    }

    /// A text damaged anywhere is a job, another program's, or nobody's; never a panic.
    #[test]
    fn any_damage_is_survived(job in any::job(), at in 0usize..4_000, with in any::<u8>(), cut in any::<bool>()) {
        let mut bytes = job.to_text().into_bytes();
        let at = at % bytes.len();
        if cut { bytes.truncate(at) } else { bytes[at] = with }
        let text = String::from_utf8_lossy(&bytes).into_owned();
        if let Reading::Job(back, _) = Job::read(&text, JobId::new(9)) {
            // What was read can be kept and read again.
            let (again, refused) = read(&back.to_text());
            prop_assert_eq!(refused, vec![]);
            prop_assert_eq!(again, *back);
        }
    }

    #[test]
    fn any_text_is_survived(text in ".{0,300}") {
        let _ = Job::read(&text, JobId::new(9));
    }
}

/// The record that the first version of the page kept, as it wrote it.
const FIRST: &str = r#"{"version":1,"revision":7,"kept_at_ms":1767225600000.0,"answers":{
    "adults":{"value":{"value":2.0,"unit":"1"},"from":"answered"},
    "setpoint":{"value":{"value":122.0,"unit":"degF"},"from":"measured"},
    "heater_kind":{"value":"gas","from":"answered"}}}"#;

#[test]
fn the_first_record_becomes_the_first_job() {
    let (job, refused) = read(FIRST);
    assert_eq!(refused, []);
    assert_eq!((job.id, job.revision, job.created_ms), (JobId::new(9), 7, 1_767_225_600_000.0));
    assert_eq!(job.answers.len(), 3);
    let setpoint = job.answers.get(Id::Setpoint).expect("answered");
    assert_eq!((&setpoint.value, setpoint.from), (&Value::number(122.0, Unit::DegF), Provenance::Measured));
    assert_eq!(read(&job.to_text()).0, job);
}

#[test]
fn what_cannot_be_read_is_set_aside_and_told() {
    let text = r#"{"tankful_job":2,"id":"00c0ffee1234","revision":1,"created":1,"changed":2,
        "name":7,"colour":"red","offer":{"labour":-5},"asked":["adults","hat_size"],
        "answers":{"adults":2,"setpoint":{"value":999,"unit":"degF"},"hat_size":3},
        "log":[{"question":"adults","value":2,"at":5},{"question":"adults","value":"many","at":6}]}"#;
    let (job, mut refused) = read(text);
    refused.sort();
    let want = [
        ("answers.hat_size", "unknown_name"),
        ("answers.setpoint", "out_of_range"),
        ("asked[1]", "unknown_name"),
        ("colour", "unknown_name"),
        ("log[1]", "wrong_kind"),
        ("name", "wrong_kind"),
        ("offer.labour", "out_of_range"),
    ];
    assert_eq!(refused, want.map(|(field, code)| (field.to_owned(), code)));
    let mut aside = told(&job.aside);
    aside.sort_unstable();
    assert_eq!(
        aside,
        [
            ("answers.hat_size", "3"),
            ("answers.setpoint", r#"{"unit":"degF","value":999}"#),
            ("asked", r#"["adults","hat_size"]"#),
            ("colour", r#""red""#),
            (
                "log",
                r#"[{"at":5,"question":"adults","value":2},{"at":6,"question":"adults","value":"many"}]"#
            ),
            ("name", "7"),
            ("offer", r#"{"labour":-5}"#),
        ]
    );
    assert!(job.aside.iter().all(|a| a.why == Why::Unreadable));
    assert_eq!((job.answers.len(), job.log.len(), job.asked.as_slice()), (1, 1, &[Id::Adults][..]));
    // Kept and read again, nothing is told twice and nothing is lost.
    assert_eq!(read(&job.to_text()), (job, vec![]));
}

#[test]
fn other_texts_are_told_apart() {
    for text in [
        "",
        "{",
        "null",
        "[]",
        "42",
        "{\"tankful_job\":2}",
        "{\"version\":1,\"revision\":1}",
        "{\"version\":3}",
    ] {
        assert_eq!(Job::read(text, JobId::new(1)), Reading::Foreign, "{text}");
    }
    assert_eq!(Job::read("{\"tankful_job\":4}", JobId::new(1)), Reading::Newer);
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert_eq!(Job::read(&deep, JobId::new(1)), Reading::Foreign);
}

#[test]
fn keys_name_their_job() {
    let id = JobId::new(0xc0ffee);
    assert_eq!(JobId::of_key(&id.key()), Some(id));
    for key in ["tankful.job.1", "tankful.job.2.", "tankful.settings.1", "x"] {
        assert_eq!(JobId::of_key(key), None);
    }
}

#[test]
fn texts_longer_than_their_bound_are_cut_and_set_aside_whole() {
    let mut job = Job::new(JobId::new(3), 1.0);
    job.write(Part::Name, "short");
    let long = "x".repeat(500);
    let (back, refused) = read(&job.to_text().replace("short", &long));
    assert_eq!((back.name.len(), refused), (80, vec![(String::from("name"), "long_text")]));
    assert_eq!(back.aside[0].text, format!("\"{long}\""));
}
