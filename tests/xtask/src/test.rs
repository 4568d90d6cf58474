//! Every check, in the order that finds the usual faults soonest.

use crate::setup::{self, For};
use crate::{build, size, step};
use anyhow::{Result, bail};
use std::process::Command;
use xtask::tools;

/// What is checked with cargo alone, in this order: the quickest to fail first.
const CHECKS: [(&str, &str); 8] = [
    ("Formatting", "fmt --all --check"),
    (
        "Lints, native",
        "clippy --workspace --exclude leverwright-app --exclude leverwright-page --all-targets \
         --features leverwright-tests/browser",
    ),
    (
        "Lints, wasm32",
        "clippy -p leverwright-app -p leverwright-page --all-targets --target wasm32-unknown-unknown",
    ),
    (
        "Documentation, native",
        "doc --no-deps --workspace --exclude leverwright-app --exclude leverwright-page \
         --features leverwright-tests/browser",
    ),
    (
        "Documentation, wasm32",
        "doc --no-deps -p leverwright-app -p leverwright-page --target wasm32-unknown-unknown",
    ),
    ("Tests, native", "test"),
    (
        "Tests of the app's logic, native",
        "test -p leverwright-app -p leverwright-page --lib",
    ),
    (
        "Tests of the app's parts in a browser",
        "test -p leverwright-app --target wasm32-unknown-unknown",
    ),
];

/// Sets up, then runs all checks, and names those that failed at the end.
pub fn run() -> Result<()> {
    setup::run(For::Testing)?;
    let deny_warnings = has_own_compiler();
    let mut failed = Vec::new();
    for (what, arguments) in CHECKS {
        let mut command = step::cargo(arguments);
        with_browser(&mut command);
        if deny_warnings {
            deny(&mut command, arguments);
        }
        failed.extend(step::run(what, &mut command).err());
    }
    match build::run() {
        Ok(()) => {
            failed.extend(step::timed("Bundle size", size::check).err());
            failed.extend(walk(&[]).err());
        }
        Err(error) => failed.push(error),
    }

    if failed.is_empty() {
        return Ok(());
    }
    let list: Vec<String> = failed.iter().map(|error| format!("  {error:#}")).collect();
    bail!("{} checks failed:\n{}", failed.len(), list.join("\n"));
}

/// Whether this is the compiler that the workspace names. Newer ones know more lints, which say
/// nothing about whether the project works.
fn has_own_compiler() -> bool {
    let own = concat!("rustc ", env!("CARGO_PKG_RUST_VERSION"), ".");
    let output = step::command("rustc").arg("--version").output();
    let is_own = output.is_ok_and(|output| output.stdout.starts_with(own.as_bytes()));
    if !is_own {
        eprintln!(
            "\n== Note: this is not {own}x, so that warnings are shown but do not fail the checks"
        );
    }
    is_own
}

/// Turns the warnings of lints and documentation into errors.
fn deny(command: &mut Command, arguments: &str) {
    match arguments.split(' ').next() {
        Some("clippy") => command.args(["--", "-D", "warnings"]),
        Some("doc") => command.env("RUSTDOCFLAGS", "-D warnings"),
        _ => command,
    };
}

/// Tells the test runners which driver and which browser.
fn with_browser(command: &mut Command) {
    if let Some(driver) = tools::find("chromedriver") {
        command.env("CHROMEDRIVER", driver);
    }
    if let Some(chromium) = tools::chromium() {
        command.env("CHROMIUM", chromium);
    }
}

/// The walk-throughs, on the build that lies in target/dist. Two at a time.
pub fn walk(filter: &[String]) -> Result<()> {
    build::warn_if_stale();
    let mut command = step::cargo("test -p leverwright-tests --features browser --test browser");
    with_browser(&mut command);
    command.args(["--", "--test-threads=2"]).args(filter);
    step::run("Walk-throughs of the release build", &mut command)
}

/// Pictures of the screens.
pub fn shots(arguments: &[String]) -> Result<()> {
    build::warn_if_stale();
    let mut command = step::cargo("run -p leverwright-tests --features browser --bin shots --");
    with_browser(&mut command);
    step::run("Pictures of the release build", command.args(arguments))
}
