//! A slow machine: a browser whose processes are stopped for most of every few milliseconds.
//!
//! Chromium's own throttling slows the page's main thread only, not its workers, where the simulations run.
use std::collections::BTreeMap;
use std::fs;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;
use std::time::Duration;

use rustix::process::{Pid, Signal, kill_process};

/// How long the processes run in each turn.
const TURN: Duration = Duration::from_millis(2);

/// Slows a process's descendants until dropped.
pub struct Slowed {
    done: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

impl Slowed {
    /// Lets every descendant of `ancestor` run one `times`-th of the time.
    pub fn children_of(ancestor: u32, times: u32) -> Self {
        let done = Arc::new(AtomicBool::new(false));
        let told = done.clone();
        let thread = std::thread::spawn(move || {
            while !told.load(Ordering::Relaxed) {
                let victims = descendants(ancestor, &parents());
                signal(&victims, Signal::STOP);
                std::thread::sleep(TURN * times.saturating_sub(1));
                signal(&victims, Signal::CONT);
                std::thread::sleep(TURN);
            }
        });
        Self { done, thread: Some(thread) }
    }
}

impl Drop for Slowed {
    fn drop(&mut self) {
        self.done.store(true, Ordering::Relaxed);
        if let Some(thread) = self.thread.take() {
            // It ends with everything running again.
            let _ = thread.join();
        }
    }
}

fn signal(processes: &[u32], signal: Signal) {
    for pid in processes.iter().filter_map(|pid| Pid::from_raw(i32::try_from(*pid).ok()?)) {
        // One that has ended meanwhile needs no signal.
        let _ = kill_process(pid, signal);
    }
}

/// Every process with its parent.
fn parents() -> BTreeMap<u32, u32> {
    let Ok(all) = fs::read_dir("/proc") else { return BTreeMap::new() };
    all.filter_map(|entry| {
        let pid = entry.ok()?.file_name().to_str()?.parse().ok()?;
        Some((pid, parent(&fs::read_to_string(format!("/proc/{pid}/stat")).ok()?)?))
    })
    .collect()
}

/// The parent in a process's line of figures; its name, in brackets, may hold anything.
fn parent(stat: &str) -> Option<u32> {
    stat.rsplit_once(')')?.1.split_whitespace().nth(1)?.parse().ok()
}

/// All that descend from a process, itself left out.
fn descendants(ancestor: u32, parents: &BTreeMap<u32, u32>) -> Vec<u32> {
    let descends = |mut pid: u32| {
        // Bounded, should two snapshots of the tree ever make a circle.
        for _ in 0..64 {
            match parents.get(&pid) {
                Some(parent) if *parent == ancestor => return true,
                Some(parent) => pid = *parent,
                None => return false,
            }
        }
        false
    };
    parents.keys().copied().filter(|pid| descends(*pid)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_descendants_are_found() {
        let tree = BTreeMap::from([(1, 0), (10, 1), (11, 10), (12, 11), (20, 1), (5, 12)]);
        assert_eq!(descendants(10, &tree), [5, 11, 12]);
        assert_eq!(descendants(20, &tree), [] as [u32; 0]);
    }

    #[test]
    fn a_parent_is_read_behind_any_name() {
        assert_eq!(parent("42 (a (strange) name 7) S 17 42 42 0"), Some(17));
        assert_eq!(parent("nonsense"), None);
    }
}
