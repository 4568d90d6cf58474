//! Findings on the sheet: accepted ones and open ones.

use crate::finding::{Acceptable, Finding, Place, Role, Severity};
use crate::ordered;
use crate::plan::Plan;
use crate::rules;
use crate::text::Date;

/// A finding that stands open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenPoint {
    /// How much it weighs.
    pub severity: Severity,
    /// Whether it can never be accepted.
    pub never: bool,
    /// The problem in a few words.
    pub title: &'static str,
    /// What it says of this plan.
    pub message: String,
    /// The balloon numbers it is about.
    pub numbers: Vec<usize>,
    /// What to do.
    pub remedy: &'static str,
}

/// A finding that somebody accepted with a reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AcceptedPoint {
    /// How much it weighs.
    pub severity: Severity,
    /// What it says of this plan.
    pub message: String,
    /// The balloon numbers it is about.
    pub numbers: Vec<usize>,
    /// Why it may stand.
    pub reason: String,
    /// Who says so, as typed; empty if nobody is named.
    pub by: String,
    /// In what role.
    pub role: Role,
    /// When.
    pub date: Option<Date>,
}

/// The findings sorted into accepted and open ones. Open ones come heaviest
/// first, those that can never be accepted before all others.
pub(super) fn sorted(plan: &Plan, findings: &[Finding]) -> (Vec<AcceptedPoint>, Vec<OpenPoint>) {
    let mut accepted = Vec::new();
    let mut open = Vec::new();
    for finding in findings {
        match plan.acceptance_of(finding) {
            Some(acceptance) => accepted.push(AcceptedPoint {
                severity: finding.severity,
                message: finding.message.clone(),
                numbers: numbers(plan, finding),
                reason: acceptance.reason.to_string(),
                by: acceptance.by.to_string(),
                role: acceptance.role,
                date: acceptance.date,
            }),
            None => open.push(open_point(plan, finding)),
        }
    }
    ordered::sort_by_key(&mut open, |point| (!point.never, point.severity));
    (accepted, open)
}

fn open_point(plan: &Plan, finding: &Finding) -> OpenPoint {
    let rule = rules::rule(finding.rule);
    OpenPoint {
        severity: finding.severity,
        never: finding.acceptable == Acceptable::Never,
        title: rule.map_or("", |rule| rule.title),
        message: match plan.lapsed_acceptance_of(finding) {
            Some(_) => format!(
                "{} It was accepted; what that rests on has changed since.",
                finding.message
            ),
            None => finding.message.clone(),
        },
        numbers: numbers(plan, finding),
        remedy: rule.map_or("", |rule| rule.remedy),
    }
}

/// Points of one rule about several buttons as one point under all their
/// balloons: paper has no room to say the same of each.
pub(super) fn gathered(points: Vec<OpenPoint>) -> Vec<OpenPoint> {
    let mut gathered: Vec<OpenPoint> = Vec::new();
    for point in points {
        let alike = |first: &&mut OpenPoint| {
            !point.numbers.is_empty()
                && !first.numbers.is_empty()
                && (first.title, first.severity, first.never)
                    == (point.title, point.severity, point.never)
        };
        match gathered.iter_mut().find(alike) {
            Some(first) => {
                first.message = format!("{}.", first.title);
                first.numbers.extend(&point.numbers);
                first.numbers.sort_unstable();
                first.numbers.dedup();
            }
            None => gathered.push(point),
        }
    }
    gathered
}

/// The balloons of the buttons that a finding is about, in order.
fn numbers(plan: &Plan, finding: &Finding) -> Vec<usize> {
    let mut numbers: Vec<usize> = finding
        .places
        .iter()
        .filter_map(|place| match place {
            Place::Button(id) => plan.bike.balloon(*id),
            _ => None,
        })
        .collect();
    ordered::sort(&mut numbers);
    numbers.dedup();
    numbers
}
