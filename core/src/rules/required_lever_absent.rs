//! A lever without which the shift system does not start is not there.

use super::{Family, Origin, Rule};
use crate::catalogue::parts;
use crate::cockpit::{BarSide, Control, ControlKind, Zone};
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "required-lever-absent",
    family: Family::Function,
    title: "A lever that the shift system needs is absent",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Each lever that must be plugged in for the system to run, as its profile says, is on its side of the bar and plugged in, whether the rider uses it or not. A flat bar's thumb pods count as its levers; “middle” means a lever on either side.",
    why: "The system may stop with an error or not wake up at all, although every button that the rider uses is there.",
    remedy: "Plug the lever in, or fit one whose blade is removed and whose buttons are left blank.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let levers = || bike.controls.iter().filter(|c| is_shift_lever(c));
    let mut findings = Vec::new();
    for required in &bike.system.required_levers {
        let there = |c: &&Control| *required == BarSide::Centre || c.side == *required;
        if levers().filter(there).any(|c| c.connected) {
            continue;
        }
        let place = match required.hand() {
            Some(side) => format!("on the {side}"),
            None => "on the bar".into(),
        };
        let unplugged = levers().find(there);
        let places = match (unplugged, required.hand()) {
            (Some(control), _) => vec![Place::Control(control.id)],
            (None, Some(side)) => vec![Place::Hand(side)],
            (None, None) => Vec::new(),
        };
        // One lever may be missing as any and as that of its side: said once.
        if findings
            .iter()
            .any(|found: &Finding| found.places == places)
        {
            continue;
        }
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places,
            message: format!(
                "The shift system runs only with a lever {place} plugged in, and there is none."
            ),
            fixes: match unplugged {
                Some(control) => vec![Fix {
                    label: format!("Plug in the {}", control.place()),
                    edit: Edit::Bike(BikeEdit::Connect(control.id, true)),
                }],
                None => add_one(situation, required.hand().unwrap_or(Side::Left)),
            },
        });
    }
    findings
}

/// Whether the system takes a control for one of its levers.
fn is_shift_lever(control: &Control) -> bool {
    match control.kind {
        ControlKind::BrakeShiftLever | ControlKind::OnePaddleLever | ControlKind::BaseBarLever => {
            true
        }
        ControlKind::Pod | ControlKind::SinglePod => {
            matches!(control.zone, Zone::Grip | Zone::SideGrip)
        }
        ControlKind::BrakeLever | ControlKind::SprintButton => false,
    }
}

/// A blank lever like the one on the other side, else the bar's usual one; its
/// blade is removed, because it pulls nothing.
fn add_one(situation: &Situation<'_>, side: Side) -> Vec<Fix> {
    let bike = &situation.plan.bike;
    let like = bike.controls.iter().find(|c| is_shift_lever(c));
    let usual = ControlKind::ALL.iter().find_map(|kind| {
        let zone = parts::zones_for(bike.bar.kind, *kind).first()?;
        let id = bike.free_control_id();
        parts::control(&bike.bar, id, *kind, side, *zone).filter(is_shift_lever)
    });
    let Some((kind, zone)) = like.or(usual.as_ref()).map(|c| (c.kind, c.zone)) else {
        return Vec::new();
    };
    // Two levers do not fit one place.
    let taken = |c: &Control| c.side == BarSide::from(side) && c.zone == zone && c.has_blade();
    if bike.controls.iter().any(taken) && zone != Zone::Grip && zone != Zone::SideGrip {
        return Vec::new();
    }
    let id = bike.free_control_id();
    let mut edits = vec![Edit::Bike(BikeEdit::Add(kind, side, zone))];
    let new = parts::control(&bike.bar, id, kind, side, zone);
    if new.is_some_and(|c| c.has_blade()) {
        edits.push(Edit::Bike(BikeEdit::BladeFitted(id, false)));
    }
    vec![Fix {
        label: format!("Add a blank {kind} on the {side}"),
        edit: Edit::Several {
            label: format!("add a blank {side} {kind}"),
            edits,
        },
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::{FlatSingle, SingleSidedLeft};
    use crate::cockpit::BarSide;
    use crate::edit::{BikeEdit, Edit};
    use crate::rules::testing::{bike, button, check_fixes, drop_bar, fired, fixes_of};

    #[test]
    fn is_silent_where_both_levers_are_plugged_in_or_none_is_required() {
        let both = [BarSide::Left, BarSide::Right];
        let plan = drop_bar()
            .system(|system| system.required_levers = both.into())
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        assert!(fired(&bike(SingleSidedLeft).plan(), &RULE).is_empty());
    }

    #[test]
    fn an_absent_lever_is_added_blank_and_without_blade() {
        for (template, label) in [
            (
                SingleSidedLeft,
                "Add a blank brake-shift lever on the right",
            ),
            (FlatSingle, "Add a blank pod on the left"),
        ] {
            let plan = bike(template)
                .system(|system| {
                    system.required_levers = [BarSide::Left, BarSide::Right].into();
                })
                .plan();
            assert_eq!(fixes_of(&plan, &RULE), [label]);
            check_fixes(&plan, &RULE);
        }
    }

    #[test]
    fn an_unplugged_lever_is_plugged_in() {
        let right = button(&drop_bar(), "right outer paddle").control;
        let plan = drop_bar()
            .edit(&Edit::Bike(BikeEdit::Connect(right, false)))
            .system(|system| system.required_levers = [BarSide::Right].into())
            .plan();
        assert_eq!(
            fixes_of(&plan, &RULE),
            ["Plug in the right brake-shift lever"]
        );
        check_fixes(&plan, &RULE);
    }
}
