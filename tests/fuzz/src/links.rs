//! Any bytes as a packed job, and as the text of a link: read, kept, sent again, with nothing changed.
#![no_main]

use libfuzzer_sys::fuzz_target;
use tankful::job::Job;
use tankful::job::kept::Reading;
use tankful::job::link::{With, decode, encode, unpack};

const ALL: With = With { name: true, place: true, notes: true, offer: true, back: false };

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        let _ = decode(text);
    }
    let job = unpack(bytes).job;
    let Reading::Job(kept, refused) = Job::read(&job.to_text(), job.id) else { panic!("not kept: {job:?}") };
    assert!(refused.is_empty(), "{refused:?}");
    assert_eq!(*kept, job);
    if let Ok(again) = decode(&encode(&job, ALL, job.changed_ms)) {
        assert_eq!((again.job, again.dropped), (job, Vec::new()));
    }
});
