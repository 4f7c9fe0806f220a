//! Many records, bad records, and inputs that are no records at all.

use super::{case, codes, command, run, run_with};
use serde_json::{Value as Json, json};
use std::io::{BufRead, BufReader, Read, Write};

const MIB: usize = 1 << 20;

#[test]
fn order_is_kept_and_bad_records_do_not_stop_the_rest() {
    let mut input = String::new();
    for i in 0..24 {
        input.push_str(&match i % 4 {
            0 => case(&json!({ "adults": i / 4 })),
            1 => String::from("this is not JSON\n"),
            2 => case(&json!({ "setpoint": { "value": 999, "unit": "degF" }, "adlts": 2 })),
            _ => String::from("\n"),
        });
    }
    let ran = run(&["advise", "-"], input.as_bytes());
    assert_eq!(ran.code, Some(1));
    let records = ran.json();
    assert_eq!(records.len(), 18);
    for (record, i) in records.iter().zip((0..24).filter(|i| i % 4 != 3)) {
        assert_eq!(record["line"], i + 1, "{record}");
        match i % 4 {
            0 => assert!(record["best"].is_string() && record["error"].is_null(), "{record}"),
            1 => assert_eq!(codes(record), ["not_json"]),
            _ => {
                let mut wrong = codes(record);
                wrong.sort_unstable();
                assert_eq!(wrong, ["out_of_range", "unknown_name"]);
            }
        }
    }
    // More people use more: the records are not mixed up.
    let cost: Vec<f64> =
        records.iter().filter_map(|r| r["candidates"][0]["cost"]["energy_year_usd"].as_f64()).collect();
    assert!(cost.len() == 6 && cost.windows(2).all(|w| w[0] < w[1]), "{cost:?}");
    // Standard error names line and field, what was given and what would do.
    assert!(ran.err.contains("Line 2:") && ran.err.contains("Line 3, answers.setpoint:"), "{}", ran.err);
    assert!(ran.err.contains("999") && ran.err.contains("100") && ran.err.contains("160"), "{}", ran.err);
    assert!(ran.err.contains("\"adults\""), "the near name: {}", ran.err);
    assert!(ran.err.contains("12 records of 18"), "{}", ran.err);
}

#[test]
fn nothing_at_all_is_said_to_be_nothing() {
    for input in [&b""[..], b"\n\n  \n"] {
        let ran = run(&["advise", "-"], input);
        assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""));
        assert!(!ran.err.is_empty());
    }
}

#[test]
fn garbage_is_refused_record_by_record() {
    let ran = run(&["advise", "-"], b"\xff\xfe\x00\x01\n[1,2]\nnull\n{\n");
    assert_eq!(ran.code, Some(1));
    let records = ran.json();
    let got: Vec<_> = records.iter().map(|r| (r["line"].as_u64(), codes(r))).collect();
    let want = ["not_text", "wrong_kind", "wrong_kind", "not_json"];
    assert_eq!(got, (1..).zip(want).map(|(line, code)| (Some(line), vec![code])).collect::<Vec<_>>());
}

#[test]
fn a_case_over_many_lines_is_told_of_with_its_first_line() {
    let ran = run(&["advise", "-"], b"\n{\n  \"tankful\": 1,\n  \"answers\": { \"adults\": 99 }\n}\n");
    assert_eq!(ran.code, Some(1));
    assert_eq!(ran.json()[0]["line"], 2);
    assert!(ran.err.starts_with("Line 2, answers.adults:"), "{}", ran.err);
    // Cut short in the middle.
    let ran = run(&["advise", "-"], b"{\n  \"tankful\": 1,\n  \"answers\": {");
    assert_eq!((ran.code, ran.json().len(), codes(&ran.json()[0])), (Some(1), 1, vec!["not_json"]));
}

#[test]
fn fifty_megabytes_in_one_line_are_skipped() {
    let ran = run_with(&["advise", "-"], |stdin| {
        let block = vec![b'x'; MIB];
        for _ in 0..50 {
            stdin.write_all(&block)?;
        }
        stdin.write_all(b"\n")?;
        stdin.write_all(case(&json!({ "adults": 1 })).as_bytes())
    });
    let records = ran.json();
    assert_eq!((ran.code, records.len()), (Some(1), 2), "{}", ran.err);
    assert_eq!(codes(&records[0]), ["too_long"]);
    assert!(records[1]["best"].is_string() && records[1]["line"] == 2);
}

#[test]
fn fifty_megabytes_that_begin_like_a_case_are_one_bad_record() {
    let ran = run_with(&["advise", "-"], |stdin| {
        stdin.write_all(b"{\n")?;
        let block = "\"a\": [\n".repeat(MIB / 7);
        for _ in 0..50 {
            stdin.write_all(block.as_bytes())?;
        }
        Ok(())
    });
    assert_eq!((ran.code, ran.json().len(), codes(&ran.json()[0])), (Some(1), 1, vec!["too_long"]));
}

/// Peak resident memory of the command while it is fed fifty megabytes of short bad lines.
#[cfg(target_os = "linux")]
#[test]
fn memory_stays_bounded() {
    let mut child = command(&["advise", "-"]).spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("piped");
    let stdout = child.stdout.take().expect("piped");
    let mut stderr = child.stderr.take().expect("piped");
    let status = format!("/proc/{}/status", child.id());
    let (peak, lines, told) = std::thread::scope(|threads| {
        let lines = threads.spawn(move || BufReader::new(stdout).lines().count());
        let told = threads.spawn(move || {
            let mut text = String::new();
            stderr.read_to_string(&mut text).map(|_| text.lines().count())
        });
        let block = "garbage, and no end of it\n".repeat(MIB / 26);
        for _ in 0..50 {
            stdin.write_all(block.as_bytes()).expect("it keeps reading");
        }
        let status = std::fs::read_to_string(status).expect("it still runs");
        drop(stdin);
        let peak: usize = status
            .lines()
            .find_map(|l| l.strip_prefix("VmHWM:")?.trim().strip_suffix("kB")?.trim().parse().ok())
            .expect("the peak");
        (peak, lines.join().expect("lines"), told.join().expect("text").expect("text"))
    });
    assert_eq!(child.wait().expect("it ends").code(), Some(1));
    assert_eq!(lines, 50 * (MIB / 26));
    assert!(peak < 120 * 1024, "{peak} kB");
    assert!(told < 200, "standard error is not flooded: {told} lines");
}

#[test]
fn advice_comes_before_the_stream_ends() {
    let mut child = command(&["advise", "-"]).spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("piped");
    let mut out = BufReader::new(child.stdout.take().expect("piped"));
    for people in 1..=3 {
        stdin.write_all(case(&json!({ "adults": people })).as_bytes()).expect("it reads");
        stdin.flush().expect("it reads");
        // Would wait for ever if advice were held back.
        let mut line = String::new();
        out.read_line(&mut line).expect("a line");
        let record: Json = serde_json::from_str(&line).expect("JSON");
        assert_eq!(record["line"], people);
    }
    drop(stdin);
    assert_eq!(child.wait().expect("it ends").code(), Some(0));
}

#[test]
fn a_closed_pipe_ends_it_quietly() {
    let mut child = command(&["advise", "-"]).spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("piped");
    drop(child.stdout.take());
    // An input without end: only the closed output can stop it.
    let feeding = std::thread::spawn(move || while stdin.write_all(b"nonsense\n").is_ok() {});
    let mut said = String::new();
    child.stderr.take().expect("piped").read_to_string(&mut said).expect("text");
    let status = child.wait().expect("it ends");
    feeding.join().expect("the pipe broke");
    assert_eq!(status.code(), Some(0), "{said}");
    assert!(!said.contains("panick") && !said.contains("roken"), "{said}");
}
