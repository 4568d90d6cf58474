//! A function the bike needs is on no button that the rider presses.

use super::{Family, Origin, Rule, fixes};
use crate::coverage::Cell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Day;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "needed-function-missing",
    family: Family::Function,
    title: "A needed function is missing",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Each function that the shift plan needs is on some button that a working hand presses from at least one position in use. A function for which a hand must let go is not missing; another rule looks at that.",
    why: "Without it the rider cannot get to part of the gears: on a hill there is no easier gear, or the chain stays on one ring.",
    remedy: "Put the function on a button that the hand reaches, or choose a shift plan that needs fewer functions.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    situation
        .coverage
        .rows
        .iter()
        .filter(|row| row.needed && situation.best_cell(row.function).is_none())
        .map(|row| {
            let why = match row.cells.first() {
                Some(Cell::No(why)) => format!(": {why}"),
                _ => String::new(),
            };
            let proposals = situation.propose(|| {
                let single = fixes::put(situation, row.function, Day::Usual, |_| true);
                fixes::beside_all_shifting(situation, single)
            });
            Finding {
                rule: RULE.id,
                severity: Severity::MustFix,
                acceptable: Acceptable::ByShop,
                places: vec![Place::Function(row.function)],
                message: format!(
                    "“{}” is needed, but the rider cannot call it up from any position in use{why}.",
                    row.function
                ),
                fixes: proposals,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::function::Function::FrontToggle;
    use crate::rider::{Contact, Difficulty, HandPlace, Side};
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, fixes_of};

    #[test]
    fn fires_on_a_blank_layout_and_is_silent_on_the_usual_one() {
        let plan = drop_bar().blank().plan();
        assert_eq!(fired(&plan, &RULE).len(), 4);
        check_fixes(&plan, &RULE);
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }

    #[test]
    fn one_act_puts_everything_under_the_only_working_hand() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .blank()
            .plan();
        assert_eq!(fixes_of(&plan, &RULE)[0], "Put all shifting on the left");
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_where_no_contact_presses_the_button() {
        let plan = bike(TemplateId::FlatSingle)
            .contact(Side::Right, Contact::Thumb, Difficulty::Complete)
            .contact(Side::Right, Contact::Index, Difficulty::Complete)
            .contact(Side::Left, Contact::Thumb, Difficulty::Complete)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
    }

    #[test]
    fn a_front_toggle_serves_for_both_front_functions() {
        let plan = drop_bar()
            .tap("left outer paddle", None)
            .tap("left inner paddle", Some(FrontToggle))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
