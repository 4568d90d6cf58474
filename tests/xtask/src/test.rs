//! Every check, in the order that finds the usual faults soonest.

use crate::setup::{self, For};
use crate::{build, size, step, tools};
use anyhow::{Result, bail};
use std::process::Command;

/// Sets up, then runs all checks, and names those that failed at the end.
pub fn run() -> Result<()> {
    setup::run(For::Testing)?;
    let mut failed = Vec::new();
    let mut note = |result: Result<()>| {
        let passed = result.is_ok();
        if let Err(error) = result {
            eprintln!("{error:#}");
            failed.push(error);
        }
        passed
    };

    note(step::run(
        "Formatting",
        &mut step::cargo("fmt --all --check"),
    ));
    note(step::run(
        "Lints, native",
        &mut step::cargo(
            "clippy --workspace --exclude leverwright-app --all-targets --features leverwright-tests/browser -- -D warnings",
        ),
    ));
    note(step::run(
        "Lints, wasm32",
        &mut step::cargo(
            "clippy -p leverwright-app --all-targets --target wasm32-unknown-unknown -- -D warnings",
        ),
    ));
    note(step::run(
        "Documentation, native",
        documented(&mut step::cargo(
            "doc --no-deps --workspace --exclude leverwright-app --features leverwright-tests/browser",
        )),
    ));
    note(step::run(
        "Documentation, wasm32",
        documented(&mut step::cargo(
            "doc --no-deps -p leverwright-app --target wasm32-unknown-unknown",
        )),
    ));
    note(step::run("Tests, native", &mut step::cargo("test")));
    note(step::run(
        "Tests of the app's parts in a browser",
        app_tests().env_remove("RUSTFLAGS"),
    ));
    if note(build::run()) {
        note(step::timed("Bundle size", size::check));
        note(walk(&[]));
    }

    if failed.is_empty() {
        return Ok(());
    }
    let list: Vec<String> = failed.iter().map(|error| format!("  {error:#}")).collect();
    bail!("{} checks failed:\n{}", failed.len(), list.join("\n"));
}

fn documented(command: &mut Command) -> &mut Command {
    command.env("RUSTDOCFLAGS", "-D warnings")
}

fn app_tests() -> Command {
    let mut command = step::cargo("test -p leverwright-app --target wasm32-unknown-unknown");
    with_browser(&mut command);
    command
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
    let mut command = step::cargo("test -p leverwright-tests --features browser --test browser");
    with_browser(&mut command);
    command.args(["--", "--test-threads=2"]).args(filter);
    step::run("Walk-throughs of the release build", &mut command)
}

/// Pictures of the screens.
pub fn shots(arguments: &[String]) -> Result<()> {
    let mut command = step::cargo("run -p leverwright-tests --features browser --bin shots --");
    with_browser(&mut command);
    step::run("Pictures of the release build", command.args(arguments))
}
