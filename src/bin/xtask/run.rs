//! Running other programs, with errors that say what was run.
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

/// Runs a command with this terminal as its own.
pub fn run(command: &mut Command) -> Result<()> {
    let name = describe(command);
    let status = command.status().with_context(|| format!("could not start `{name}`"))?;
    if !status.success() {
        bail!("`{name}` failed ({status})");
    }
    Ok(())
}

/// Runs a command silently; what it said is shown only when it fails.
pub fn quietly(command: &mut Command) -> Result<()> {
    let name = describe(command);
    let output =
        command.stdin(Stdio::null()).output().with_context(|| format!("could not start `{name}`"))?;
    if !output.status.success() {
        let said = [output.stdout, output.stderr].concat();
        bail!("`{name}` failed ({})\n{}", output.status, String::from_utf8_lossy(&said).trim());
    }
    Ok(())
}

/// What a command prints, or none when it is missing or fails.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Where a program is found, looking in `first` before the PATH.
pub fn find(program: &str, first: &[PathBuf]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    first
        .iter()
        .cloned()
        .chain(std::env::split_paths(&path))
        .map(|dir| dir.join(program))
        .find(|p| p.is_file())
}

/// The PATH with these folders in front.
pub fn path_with(first: &[PathBuf]) -> OsString {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let dirs: Vec<PathBuf> = first.iter().cloned().chain(std::env::split_paths(&path)).collect();
    std::env::join_paths(dirs).unwrap_or(path)
}

/// The cargo that runs this, in the package's folder.
pub fn cargo(root: &Path) -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root);
    command
}

fn describe(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(command.get_args().map(|word| word.to_string_lossy().into_owned()));
    words.join(" ")
}
