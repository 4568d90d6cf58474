//! Runs one program as one step, says what it does and how long it took.
//!
//! Everything said here goes to the error stream, so that the output stream carries only what
//! the programs themselves report.

use anyhow::{Context, Result, bail};
use std::process::Command;
use std::time::{Duration, Instant};
use xtask::tools;

/// A command with the project's own tools first on its path, started in the project's folder.
pub fn command(program: &str) -> Command {
    let mut command = Command::new(tools::resolve(program));
    command
        .current_dir(tools::root())
        .env("PATH", tools::path());
    command
}

/// `cargo` with these words as arguments.
pub fn cargo(arguments: &str) -> Command {
    let mut command = command("cargo");
    command.args(arguments.split_whitespace());
    command
}

/// Runs the command and waits for it. An exit status other than zero is an error.
pub fn run(what: &str, command: &mut Command) -> Result<()> {
    timed(what, || {
        let status = command
            .status()
            .with_context(|| format!("cannot start {}", command.get_program().display()))?;
        if !status.success() {
            bail!(
                "{what}: {} ended with {status}",
                command.get_program().display()
            );
        }
        Ok(())
    })
}

/// Says what happens, does it, and says how long it took.
pub fn timed<T>(what: &str, act: impl FnOnce() -> Result<T>) -> Result<T> {
    eprintln!("\n== {what}");
    let start = Instant::now();
    let result = act();
    let outcome = if result.is_ok() { "done" } else { "FAILED" };
    eprintln!("== {what}: {outcome} in {}", spoken(start.elapsed()));
    result
}

/// `3 min 20 s`, `12 s`, `0.4 s`.
pub fn spoken(time: Duration) -> String {
    let seconds = time.as_secs_f64();
    match seconds {
        ..10.0 => format!("{seconds:.1} s"),
        ..60.0 => format!("{seconds:.0} s"),
        _ => format!(
            "{:.0} min {:02.0} s",
            (seconds / 60.0).floor(),
            seconds % 60.0
        ),
    }
}
