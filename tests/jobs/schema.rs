//! The documented forms against what is written.

use crate::any;
use proptest::prelude::*;
use tankful::job::exchange::export;
use tankful::job::file::{CaseFile, parse_case, schema, schema_of_jobs, to_json};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn what_is_written_keeps_to_the_schema(jobs in proptest::collection::vec(any::job(), 1..3)) {
        let validator = jsonschema::validator_for(&schema_of_jobs(&|q| q.id.key())).expect("a schema");
        let json: serde_json::Value = serde_json::from_str(&export(jobs.iter())).expect("JSON");
        let faults: Vec<String> = validator.iter_errors(&json).map(|e| e.to_string()).collect();
        prop_assert_eq!(faults, Vec::<String>::new());
        let mut broken = json.clone();
        broken["jobs"][0]["answers"]["adults"] = "many".into();
        prop_assert!(!validator.is_valid(&broken));
    }

    /// A case with an offer comes back, and keeps to its schema; without what a computation needs it is refused.
    #[test]
    fn a_case_carries_its_offer(offer in any::offer()) {
        let whole = offer.heaters.iter().all(|h| h.wanting().next().is_none());
        let case = CaseFile { offer, ..CaseFile::default() };
        let json = to_json(&case);
        let validator = jsonschema::validator_for(&schema(&|q| q.id.key())).expect("a schema");
        prop_assert_eq!(validator.is_valid(&json), whole);
        match parse_case(&json.to_string()) {
            Ok(back) => prop_assert!(whole && back == case),
            Err(errors) => prop_assert!(!whole && errors.iter().all(|e| e.trouble.code() == "missing")),
        }
    }
}
