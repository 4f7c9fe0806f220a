//! The task runner: `cargo xtask serve`, `build`, `test`, `measure`, `shots`.
//!
//! It installs what is missing, builds and finishes the page, serves it, and runs every check. It may
//! use the file system, processes and the network; nothing of it reaches the page.
#![forbid(unsafe_code)]

mod browser;
mod check;
mod chunks;
mod finish;
mod futures;
mod fuzz;
mod measure;
mod page;
mod precache;
mod run;
mod shots;
mod single;
mod site;
mod sizes;
#[cfg(target_os = "linux")]
mod slow;
mod tools;
mod years;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

/// Builds, serves and checks Tankful.
#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Cli {
    #[command(subcommand)]
    task: Task,
}

#[derive(Subcommand)]
enum Task {
    /// Build the release page and serve it on 127.0.0.1.
    Serve {
        /// The first port to try; the next free one is taken when it is busy.
        #[arg(long, default_value_t = 8080)]
        port: u16,
        /// A page that builds fast and runs slower, for work on its looks.
        #[arg(long)]
        quick: bool,
        /// Serve dist/ as it is.
        #[arg(long, conflicts_with = "quick")]
        no_build: bool,
    },
    /// Build the release page into dist/, ready for any static host.
    Build {
        /// A page that builds fast and runs slower, for work on its looks.
        #[arg(long)]
        quick: bool,
        /// Also the whole page as one HTML file, dist-single/tankful.html, to be opened from a disk.
        #[arg(long)]
        single: bool,
    },
    /// Run every check: format, lints, tests, reference figures, release page, browser.
    Test {
        /// Only what needs neither the page nor anything to be installed.
        #[arg(long, conflicts_with = "steps")]
        fast: bool,
        /// Only these steps.
        steps: Vec<check::Step>,
    },
    /// Print the figures to report with a change, of the page in dist/.
    Measure {
        /// Only these.
        figures: Vec<measure::Figures>,
    },
    /// Throw bytes at what reads links and kept jobs.
    Fuzz {
        /// Minutes for each of the two targets.
        #[arg(long, default_value_t = 5)]
        minutes: u64,
    },
    /// Take pictures of the page at three sizes, light and dark.
    Shots(shots::Options),
}

fn main() -> ExitCode {
    match work(Cli::parse().task) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn work(task: Task) -> Result<()> {
    match task {
        Task::Serve { port, quick, no_build } => {
            if !no_build {
                page::build(quick)?;
            }
            let site = site::Site::open(dist(), "/", port)?.with_long_lives();
            println!("Tankful is at {} (Ctrl-C ends it)", site.address());
            site.serve(|_| ());
            Ok(())
        }
        Task::Build { quick, single } => {
            page::build(quick)?;
            if single { single::build() } else { Ok(()) }
        }
        Task::Test { fast, steps } => check::test(fast, &steps),
        Task::Measure { figures } => measure::measure(&figures),
        Task::Fuzz { minutes } => fuzz::fuzz(minutes),
        Task::Shots(options) => shots::take(&options),
    }
}

/// The package's top folder.
fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The finished page.
fn dist() -> PathBuf {
    root().join("dist")
}
