//! Merging, exchange and the short path.

use crate::any;
use proptest::prelude::*;
use tankful::core::case::Provenance::{self, Answered, Measured};
use tankful::core::units::Unit;
use tankful::job::answers::Answers;
use tankful::job::asking::{USUAL, suggest};
use tankful::job::exchange::{Change, export, import, preview};
use tankful::job::merge::{Difference, Field, Side, apply, beside, differences, tabs};
use tankful::job::offer::Offer;
use tankful::job::questions::{Id, Question, Value, Who};
use tankful::job::{Job, JobId, Part, Why};

fn job(changed_ms: f64, answers: &[(Id, f64, Provenance)]) -> Job {
    let mut job = Job::new(JobId::new(5), changed_ms);
    for (id, value, from) in answers {
        job.answers.set(*id, Value::number(*value, Unit::One), *from).expect("within the range");
    }
    job
}

fn values(job: &Job) -> Vec<(Id, f64)> {
    let number = |v: &Value| if let Value::Number(q) = v { q.value } else { f64::NAN };
    job.answers.iter().map(|(id, a)| (id, number(&a.value))).collect()
}

#[test]
fn measured_beats_answered_and_of_equals_the_newer_wins() {
    let ours = job(
        10.0,
        &[(Id::Adults, 1.0, Measured), (Id::Teenagers, 1.0, Answered), (Id::Children, 1.0, Answered)],
    );
    let theirs = |at| {
        let mut them = job(
            at,
            &[
                (Id::Adults, 2.0, Answered),
                (Id::Teenagers, 2.0, Measured),
                (Id::Children, 2.0, Answered),
                (Id::HotWashes, 2.0, Answered),
            ],
        );
        them.write(Part::Notes, "Theirs");
        them
    };
    for (at, children) in [(20.0, Side::Theirs), (5.0, Side::Ours)] {
        let found = differences(&ours, &theirs(at));
        let want = [
            (Field::Answer(Id::Adults), Side::Ours),
            (Field::Answer(Id::Teenagers), Side::Theirs),
            (Field::Answer(Id::Children), children),
            (Field::Answer(Id::HotWashes), Side::Theirs),
            (Field::Text(Part::Notes), Side::Theirs),
        ];
        assert_eq!(found, want.map(|(field, take)| Difference { field, take }));
    }
    let mut merged = ours.clone();
    apply(&mut merged, &theirs(20.0), &differences(&ours, &theirs(20.0)), 30.0);
    assert_eq!(
        values(&merged),
        [(Id::Adults, 1.0), (Id::Teenagers, 2.0), (Id::Children, 2.0), (Id::HotWashes, 2.0)]
    );
    assert_eq!((merged.notes.as_str(), merged.revision, merged.changed_ms), ("Theirs", 1, 30.0));
    let aside: Vec<_> = merged.aside.iter().map(|a| (a.field.as_str(), a.text.as_str(), a.why)).collect();
    assert_eq!(
        aside,
        [
            ("answers.adults", "2", Why::Merged),
            ("answers.teenagers", "1", Why::Merged),
            ("answers.children", "1", Why::Merged)
        ]
    );
}

/// What both tabs changed is decided by the revision; everything else of both stays.
#[test]
fn two_tabs_keep_both_sides_work() {
    let base = job(
        0.0,
        &[(Id::Adults, 1.0, Answered), (Id::Teenagers, 1.0, Answered), (Id::Children, 1.0, Answered)],
    );
    let mut ours = base.clone();
    let mut theirs = base.clone();
    for (job, ms, v, id) in [(&mut ours, 1.0, 5.0, Id::Adults), (&mut theirs, 2.0, 6.0, Id::Teenagers)] {
        job.answer(id, Value::number(v, Unit::One), Measured, ms, "").expect("in range");
        job.answer(Id::Children, Value::number(v, Unit::One), Answered, ms, "").expect("in range");
        job.touch(ms);
    }
    ours.write(Part::Name, "Ours");
    theirs.archived = true;
    for merged in [tabs(&base, &ours, &theirs, 3.0), tabs(&base, &theirs, &ours, 3.0)] {
        assert_eq!(values(&merged), [(Id::Adults, 5.0), (Id::Teenagers, 6.0), (Id::Children, 6.0)]);
        assert!(merged.archived && merged.name == "Ours" && merged.revision == 2 && merged.log.len() == 2);
        assert_eq!(any::told(&merged.aside), [("answers.children", "5")]);
    }
}

/// Every value of either side is in the merged job or set aside in it.
fn is_lossless(merged: &Job, of: &Job) -> Result<(), TestCaseError> {
    for (id, answer) in of.answers.iter() {
        let there = merged.answers.get(id) == Some(answer);
        let aside = merged.aside.iter().any(|a| a.field == format!("answers.{}", id.code()));
        prop_assert!(there || aside, "{id:?} is lost");
    }
    for part in Part::ALL {
        let text = of.text(part);
        let quoted = serde_json::Value::from(text).to_string();
        let aside = merged.aside.iter().any(|a| a.text == quoted);
        prop_assert!(text.is_empty() || merged.text(part) == text || aside, "{part:?} is lost");
    }
    prop_assert!(
        of.offer.is_empty() || merged.offer == of.offer || merged.aside.iter().any(|a| a.field == "offer")
    );
    prop_assert!(of.log.iter().all(|m| merged.log.contains(m)));
    for entry in of.done.all() {
        let aside = merged.aside.iter().any(|a| {
            a.field == "done" && a.text.contains(&serde_json::Value::from(entry.what.as_str()).to_string())
        });
        prop_assert!(merged.done.all().contains(entry) || aside, "{entry:?} is lost");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn nothing_is_lost(base in any::job(), ours in any::job(), theirs in any::job(), flip in any::<u64>()) {
        let mut all = differences(&ours, &theirs);
        for (i, d) in all.iter_mut().enumerate() {
            if flip >> (i % 64) & 1 == 1 {
                d.take = if d.take == Side::Ours { Side::Theirs } else { Side::Ours };
            }
        }
        let mut merged = ours.clone();
        apply(&mut merged, &theirs, &all, 1.0);
        is_lossless(&merged, &ours)?;
        is_lossless(&merged, &theirs)?;
        prop_assert!(differences(&merged, &merged.clone()).is_empty());
        let mut stands = theirs.clone();
        beside(&mut stands, &ours, 1.0);
        is_lossless(&stands, &ours)?;
        prop_assert_eq!(&stands.answers, &theirs.answers);
        let merged = tabs(&base, &ours, &theirs, 1.0);
        for side in [&ours, &theirs] {
            for entry in side.done.all() {
                let stands = merged.done.all().iter().find(|e| e.what == entry.what);
                prop_assert!(stands.is_some_and(|s| s.at_ms >= entry.at_ms), "{:?}", entry);
            }
            for (id, answer) in side.answers.iter().filter(|(id, a)| base.answers.get(*id) != Some(*a)) {
                let aside = merged.aside.iter().any(|a| a.field == format!("answers.{}", id.code()));
                prop_assert!(merged.answers.get(id) == Some(answer) || aside, "{:?}", id);
            }
        }
    }

    #[test]
    fn any_jobs_go_through_a_file(jobs in proptest::collection::vec(any::job(), 0..4)) {
        let found = import(&export(jobs.iter()), || 0).expect("our own file");
        prop_assert_eq!(found.refused, vec![]);
        prop_assert!(jobs.iter().zip(&found.jobs).all(|(a, b)| preview(a, Some(b)) == Change::Same));
        prop_assert_eq!(found.jobs, jobs);
    }
}

#[test]
fn hostile_files_are_refused_with_a_sentence() {
    let deep = format!("{{\"tankful_jobs\":1,\"jobs\":{}{}}}", "[".repeat(200_000), "]".repeat(200_000));
    let large = " ".repeat(50_000_001);
    let many = format!("{{\"tankful_jobs\":1,\"jobs\":[{}0]}}", "0,".repeat(6_000));
    for (text, code) in [
        ("", "not_json"),
        ("[1", "not_json"),
        (deep.as_str(), "not_json"),
        (&large, "too_long"),
        ("{\"tankful_jobs\":9,\"jobs\":[]}", "unknown_version"),
        ("{\"tankful_jobs\":1}", "wrong_kind"),
        ("[]", "wrong_kind"),
        ("{\"tankful_job\":99}", "unknown_version"),
    ] {
        assert_eq!(
            import(text, || 0).map_err(|e| e.trouble.code()),
            Err(code),
            "{}",
            &text[..text.len().min(60)]
        );
    }
    let found = import(&many, || 0).expect("a file");
    assert_eq!((found.jobs.len(), found.refused.len()), (0, 5_001));
    assert_eq!(preview(&job(0.0, &[]), None), Change::New);
}

#[test]
fn the_short_path_asks_a_householder_what_matters() {
    let usual = suggest(&Answers::new(), &Offer::default(), USUAL);
    assert_eq!(usual.len(), USUAL);
    assert!(usual.iter().all(|id| Question::get(*id).who == Who::Householder));
    for id in [Id::Place, Id::HeaterKind, Id::RoomKind, Id::DrainKind] {
        assert!(usual.contains(&id), "{id:?} is not among {usual:?}");
    }
    let mut answers = Answers::new();
    answers.set(Id::HeaterKind, Value::code("gas"), Answered).expect("an option");
    let fewer = suggest(&answers, &Offer::default(), USUAL);
    assert!(fewer.len() == USUAL && !fewer.contains(&Id::HeaterKind));
    assert!(suggest(&answers, &Offer::default(), 0).is_empty());
}
