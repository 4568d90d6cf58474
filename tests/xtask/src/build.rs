//! The release build: Trunk's, with the content security policy put in.

use crate::{step, tools};
use anyhow::{Context, Result, bail};
use std::fs;

/// Nothing inline, nothing from elsewhere. `style-src` covers the style sheets; styles set from
/// the program go through the style object, which the policy leaves alone.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
    base-uri 'none'; form-action 'none'";

/// Builds into target/dist.
pub fn run() -> Result<()> {
    step::run(
        "Release build",
        step::command("trunk")
            .args(["build", "--release"])
            .env_remove("NO_COLOR"),
    )?;
    let page = tools::dist().join("index.html");
    let html = fs::read_to_string(&page).context("the build has no index.html")?;
    fs::write(page, with_policy(&html)?).context("cannot write index.html")
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
