//! The headless command as people run it: the real binary, real files and pipes.

mod after;
mod bounds;
mod good;
mod heaters;
mod plan;
mod streams;

use serde_json::Value as Json;
use std::io::Write;
use std::process::{Command, Stdio};

/// What a run of the command left behind.
pub struct Ran {
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
    /// Exit code.
    pub code: Option<i32>,
}

impl Ran {
    /// Every line of output as JSON.
    pub fn json(&self) -> Vec<Json> {
        self.out
            .lines()
            .map(|l| serde_json::from_str(l).unwrap_or_else(|e| panic!("{e}: {l}\n{}", self.err)))
            .collect()
    }
}

/// The command with these arguments.
pub fn command(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tankful"));
    command.args(arguments).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs it with this on standard input.
pub fn run(arguments: &[&str], input: &[u8]) -> Ran {
    run_with(arguments, |stdin| stdin.write_all(input))
}

/// Runs it with whatever `feed` writes on standard input.
pub fn run_with(arguments: &[&str], feed: impl FnOnce(&mut dyn Write) -> std::io::Result<()> + Send) -> Ran {
    let mut child = command(arguments).spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("piped");
    let output = std::thread::scope(|threads| {
        // A command that stops reading closes the pipe: no failure of the test.
        threads.spawn(move || drop(feed(&mut stdin)));
        child.wait_with_output().expect("the command ends")
    });
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    Ran { out: text(output.stdout), err: text(output.stderr), code: output.status.code() }
}

/// A case a line, with these answers.
pub fn case(answers: &Json) -> String {
    serde_json::json!({ "tankful": 1, "answers": answers }).to_string() + "\n"
}

/// The codes of what is wrong with a record of the output.
pub fn codes(record: &Json) -> Vec<&str> {
    record["error"]
        .as_array()
        .map_or_else(Vec::new, |all| all.iter().filter_map(|e| e["code"].as_str()).collect())
}
