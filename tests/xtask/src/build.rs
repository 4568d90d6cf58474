//! The release build: the program put into Trunk's page, the content security policy, a service
//! worker that keeps it, and all of it in one file besides.

use crate::{offline, one_file, program, step};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;
use std::time::SystemTime;
use xtask::tools;

/// Nothing inline, nothing from elsewhere. `style-src` covers the style sheets; styles set from
/// the program go through the style object, which the policy leaves alone.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
    base-uri 'none'; form-action 'none'";

/// The folders that the build is made from.
const SOURCES: [&str; 3] = ["app", "core", "public"];

/// Builds into target/dist.
pub fn run() -> Result<()> {
    // Trunk takes the usual NO_COLOR=1 for an error in its own option of that name.
    let mut trunk = step::command("trunk");
    trunk.args(["build", "--release"]).env_remove("NO_COLOR");
    let program = program::build()?;
    step::run("Page", &mut trunk)?;
    program::put_into(&tools::dist(), &program)?;
    let page = tools::dist().join("index.html");
    let html = fs::read_to_string(&page).context("the build has no index.html")?;
    fs::write(page, with_policy(&html)?).context("cannot write index.html")?;
    one_file::write()?;
    // Last, for it counts what is there.
    offline::write()
}

/// Says so when the build in target/dist was made before the last change to what it is made from.
pub fn warn_if_stale() {
    let built = changed(&tools::dist().join("index.html"));
    let newest = SOURCES
        .iter()
        .filter_map(|folder| newest(&tools::root().join(folder)))
        .max();
    if built < newest {
        eprintln!(
            "\n== Note: app, core or public changed after the build; `cargo xtask build` makes a new one"
        );
    }
}

fn newest(folder: &Path) -> Option<SystemTime> {
    let entries = fs::read_dir(folder).ok()?.filter_map(Result::ok);
    let times = entries.filter_map(|entry| match entry.path() {
        path if path.is_dir() => newest(&path),
        path => changed(&path),
    });
    times.max()
}

fn changed(file: &Path) -> Option<SystemTime> {
    fs::metadata(file).and_then(|facts| facts.modified()).ok()
}

/// The policy goes first in the head: it holds only for what comes after it.
fn with_policy(html: &str) -> Result<String> {
    let Some(at) = html.find("<meta charset") else {
        bail!("index.html has no <meta charset> to put the policy before");
    };
    let (before, after) = html.split_at(at);
    Ok(format!(
        "{before}<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n    {after}"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_policy_stands_before_every_other_element() {
        let html =
            with_policy("<head>\n<meta charset=\"utf-8\"><link rel=stylesheet></head>").unwrap();
        assert!(html.find("Content-Security-Policy").unwrap() < html.find("charset").unwrap());
        assert!(with_policy("<head></head>").is_err());
    }

    #[test]
    fn the_policy_forbids_inline_code_and_styles() {
        assert!(!POLICY.contains("unsafe-inline"));
        assert!(!POLICY.contains("'unsafe-eval'"));
        assert!(!POLICY.contains("http"));
    }
}
