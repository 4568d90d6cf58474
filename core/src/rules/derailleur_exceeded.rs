//! Rings or cogs ask more of a derailleur than it takes.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::gears::Exceeded;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "derailleur-exceeded",
    family: Family::Gears,
    title: "More than a derailleur takes",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "The rear derailleur takes up the chain that rings and cogs leave over, and takes the largest cog; the front derailleur takes the difference between the rings. What they take the fitter enters from their manuals.",
    why: "A chain that is not taken up hangs slack and drops, or one that is too short locks the drivetrain in the largest gear and tears the derailleur off: the rear wheel stops.",
    remedy: "Fit rings and cogs that the derailleurs take, or another derailleur; check what was entered.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let asks = situation.plan.bike.drivetrain.asks();
    let mut findings = Vec::new();
    for ask in asks.iter().filter(|ask| ask.is_exceeded()) {
        let Some(takes) = ask.takes else { continue };
        let asked = ask.asked;
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Derailleur(ask.what)],
            message: match ask.what {
                Exceeded::Wrap => format!(
                    "Rings and cogs leave {asked} teeth of chain over; the rear derailleur takes up {takes}."
                ),
                Exceeded::LargestCog => format!(
                    "The largest cog has {asked} teeth; the rear derailleur takes {takes}."
                ),
                Exceeded::FrontDifference => format!(
                    "Between the rings are {asked} teeth; the front derailleur takes {takes}."
                ),
            },
            fixes: Vec::new(),
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::GearEdit;
    use crate::gears::{Derailleurs, Teeth};
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_for_each_thing_that_is_exceeded() {
        let with = |largest_cog, wrap, front_difference| {
            let derailleurs = Derailleurs {
                largest_cog: Some(Teeth(largest_cog)),
                wrap: Some(Teeth(wrap)),
                front_difference: Some(Teeth(front_difference)),
            };
            let plan = drop_bar()
                .gear_edit(GearEdit::Derailleurs(derailleurs))
                .plan();
            let found = fired(&plan, &RULE);
            found.into_iter().map(|f| f.message).collect::<Vec<_>>()
        };
        // 50/34 with 11-34: 16 + 23.
        assert!(with(34, 39, 16).is_empty());
        assert_eq!(
            with(32, 37, 14),
            [
                "Rings and cogs leave 39 teeth of chain over; the rear derailleur takes up 37.",
                "The largest cog has 34 teeth; the rear derailleur takes 32.",
                "Between the rings are 16 teeth; the front derailleur takes 14.",
            ]
        );
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
