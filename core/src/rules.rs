//! The rules: each in its own file, listed here once.

use crate::finding::{Finding, Severity};
use crate::plan::Plan;
use crate::situation::Situation;

vocabulary! {
    /// What a rule watches over.
    pub enum Family as "family" {
        /// Functions and the buttons they are on.
        Function = "function", "functions";
        /// What hands reach.
        Reach = "reach", "reach";
        /// What lies under resting hands.
        Rest = "rest", "resting hands";
        /// Keeping buttons pressed.
        Hold = "hold", "holds";
        /// Things that get in each other's way.
        Clash = "clash", "clashes";
        /// Brakes.
        Brake = "brake", "brakes";
    }
}

/// Where a rule comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// Usual among fitters.
    CommonPractice,
    /// Our own judgement.
    OurJudgement,
    /// A published text: title and clause.
    Published(&'static str),
}

/// A rule: what people read about it, and how it looks at a situation.
#[derive(Debug)]
pub struct Rule {
    /// Its stable name, which states the problem.
    pub id: &'static str,
    /// What it watches over.
    pub family: Family,
    /// The problem in a few words.
    pub title: &'static str,
    /// The heaviest it can weigh.
    pub severity: Severity,
    /// What it looks at.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// What to do.
    pub remedy: &'static str,
    /// Where it comes from.
    pub origin: Origin,
    /// Looks at a situation; one finding for each place.
    pub check: fn(&Situation<'_>) -> Vec<Finding>,
}

#[cfg(test)]
mod testing;

mod live_button_under_resting_hand;
mod needed_function_missing;

/// All rules, in the order of their families.
pub const ALL: &[&Rule] = &[
    &needed_function_missing::RULE,
    &live_button_under_resting_hand::RULE,
];

/// The rule with this name.
pub fn rule(id: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.id == id)
}

/// What all rules say about the layout in hand, heaviest first, in the order of
/// the rules.
pub fn findings(plan: &Plan) -> Vec<Finding> {
    findings_in(&Situation::of(plan))
}

/// What all rules say about a situation, heaviest first.
pub fn findings_in(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings: Vec<Finding> = ALL
        .iter()
        .flat_map(|rule| (rule.check)(situation))
        .collect();
    findings.sort_by_key(|finding| finding.severity);
    findings
}
