//! Runs axe-core on the page.

use super::Browser;
use serde::Deserialize;
use std::fmt;

/// One rule that the page breaks.
#[derive(Debug, Clone, Deserialize)]
pub struct Violation {
    /// The rule's id, such as `color-contrast`.
    pub id: String,
    /// How much it hinders: minor, moderate, serious, critical.
    pub impact: Option<String>,
    /// What the rule asks for.
    pub help: String,
    /// Where.
    pub nodes: Vec<Place>,
}

/// One element that breaks a rule.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "camelCase")]
pub struct Place {
    /// Its markup.
    pub html: String,
    /// What to change.
    pub failure_summary: Option<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(
            out,
            "{} ({}): {}",
            self.id,
            self.impact.as_deref().unwrap_or("no impact given"),
            self.help
        )?;
        for place in &self.nodes {
            writeln!(out, "  at {}", place.html)?;
            for line in place
                .failure_summary
                .iter()
                .flat_map(|summary| summary.lines())
            {
                writeln!(out, "    {line}")?;
            }
        }
        Ok(())
    }
}

impl Browser {
    /// Every rule of axe-core, best practice included, that the page breaks as it is now.
    #[track_caller]
    pub fn violations(&self) -> Vec<Violation> {
        if !self.eval::<bool>("return typeof axe === 'object'") {
            self.eval::<()>(&source());
        }
        self.eval_later(
            "const done = arguments[arguments.length - 1];
             axe.run(document, { resultTypes: ['violations'] })
                .then((result) => done(result.violations), (error) => done(String(error)));",
        )
    }

    /// Fails with the whole report when axe-core objects to anything.
    #[track_caller]
    pub fn assert_accessible(&self) {
        let violations = self.violations();
        let report: String = violations.iter().map(Violation::to_string).collect();
        assert!(
            violations.is_empty(),
            "{}: axe-core objects at {}:\n{report}",
            self.label,
            self.route()
        );
    }
}

fn source() -> String {
    let file = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/web/node_modules/axe-core/axe.min.js"
    );
    std::fs::read_to_string(file).expect("axe-core is there: `cargo xtask setup` sees to it")
}
