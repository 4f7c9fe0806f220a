//! Any text as a kept job and as a file of jobs: what is read can be kept, read and sent again.
#![no_main]

use libfuzzer_sys::fuzz_target;
use tankful::job::kept::Reading;
use tankful::job::link::{With, decode, encode};
use tankful::job::{Job, JobId, exchange, merge};

const ALL: With = With { name: true, place: true, notes: true, offer: true, back: false };

fuzz_target!(|text: &str| {
    let _ = exchange::import(text, || 7);
    let Reading::Job(job, _) = Job::read(text, JobId::new(7)) else { return };
    let Reading::Job(again, refused) = Job::read(&job.to_text(), JobId::new(8)) else { panic!("not kept") };
    assert!(refused.is_empty(), "{refused:?}");
    assert_eq!(again, job);
    assert_eq!(merge::differences(&again, &job), []);
    if let Ok(opened) = decode(&encode(&job, ALL, 0.0)) {
        assert_eq!((opened.job.answers, opened.job.offer.heaters), (job.answers, job.offer.heaters));
    }
});
