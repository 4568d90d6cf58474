//! A port that carries no wire is open to water.

use super::{Family, Origin, Rule};
use crate::cockpit::UnusedPort;
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "open-port",
    family: Family::Function,
    title: "An unused port is open",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Every port that carries no wire has a blank in it, also on a lever that the rider does not use.",
    why: "Water gets in, the contacts corrode, and shifting stops on the road, weeks later and without warning.",
    remedy: "Put a blank into the port.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let controls = situation.plan.bike.controls.iter();
    controls
        .filter(|control| control.unused_port == UnusedPort::Open)
        .map(|control| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Control(control.id)],
            message: format!(
                "The unused port of the {} is open to water.",
                control.place()
            ),
            fixes: vec![Fix {
                label: "Put a blank into the port".into(),
                edit: Edit::Bike(BikeEdit::UnusedPort(control.id, UnusedPort::Blanked)),
            }],
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::UnusedPort::{Blanked, Open};
    use crate::edit::{BikeEdit, Edit};
    use crate::rules::testing::{button, check_fixes, drop_bar, fired};

    #[test]
    fn fires_for_an_open_port_and_is_silent_for_a_blanked_one() {
        let left = button(&drop_bar(), "left hood button").control;
        let with = |port| {
            drop_bar()
                .edit(&Edit::Bike(BikeEdit::UnusedPort(left, port)))
                .plan()
        };
        assert_eq!(
            fired(&with(Open), &RULE)[0].message,
            "The unused port of the left brake-shift lever is open to water."
        );
        check_fixes(&with(Open), &RULE);
        assert!(fired(&with(Blanked), &RULE).is_empty());
    }
}
