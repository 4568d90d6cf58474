//! A document gives a limited button what it does not take.

use super::{Family, Origin, Rule};
use crate::cockpit::{Button, ButtonId, Freedom};
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::function::Function;
use crate::layout::Hold;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "limited-button-outside-its-set",
    family: Family::Function,
    title: "A limited button is given what it does not take",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "A button that takes only some functions is given one of those, by tap, hold or together with another. Leverwright refuses anything else itself; a file from elsewhere may still say so.",
    why: "The shift maker's own tool does not offer the setting, so the layout cannot be built.",
    remedy: "Take the entry out and put the function on another button.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let mut findings = Vec::new();
    for id in situation.layout.buttons_named() {
        let Some((_, button)) = bike.button(id) else {
            continue;
        };
        let (outside, edits) = outside(situation, id, button);
        if edits.is_empty() {
            continue;
        }
        let place = bike.place_of(id);
        let quoted: Vec<String> = outside.iter().map(|f| format!("“{f}”")).collect();
        let label = format!("Take it off the {place}");
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(id)],
            message: format!("The {place} does not take {}.", quoted.join(" or ")),
            fixes: vec![Fix {
                edit: Edit::Several {
                    label: label.to_ascii_lowercase(),
                    edits,
                },
                label,
            }],
        });
    }
    findings
}

/// What a limited button has but does not take, and the changes that take it
/// off.
fn outside(situation: &Situation<'_>, id: ButtonId, button: &Button) -> (Vec<Function>, Vec<Edit>) {
    let (mut functions, mut edits) = (Vec::new(), Vec::new());
    if !matches!(button.freedom, Freedom::Limited(_)) {
        return (functions, edits);
    }
    let mut take_off = |function: Function, edit: LayoutEdit| {
        if !functions.contains(&function) {
            functions.push(function);
        }
        edits.push(Edit::Layout(edit));
    };
    let layout = situation.layout;
    if let Some(function) = layout.taps.get(&id).filter(|f| !button.takes(**f)) {
        take_off(*function, LayoutEdit::Tap(id, None));
    }
    if let Some(Hold::Does(function)) = layout.holds.get(&id)
        && !button.takes(*function)
    {
        take_off(*function, LayoutEdit::Hold(id, None));
    }
    for chord in layout.chords.iter().filter(|chord| chord.includes(id)) {
        if !button.takes(chord.function) {
            take_off(chord.function, LayoutEdit::RemoveChord(*chord));
        }
    }
    (functions, edits)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::Freedom;
    use crate::function::Function::{FrontToggle, Lights, NextScreen, RearEasier};
    use crate::layout::{Chord, Hold};
    use crate::rules::testing::{check_fixes, drop_bar, fired};

    #[test]
    fn fires_once_for_a_button_with_tap_hold_and_chord_outside() {
        let plan = drop_bar()
            .freedom_of("left hood button", |_| Freedom::Limited(vec![NextScreen]))
            .document(|plan, place| {
                let (here, there) = (place("left hood button"), place("right hood button"));
                let layout = plan.layout_mut();
                layout.taps.insert(here, Lights);
                layout.holds.insert(here, Hold::Does(RearEasier));
                layout.chords.push(Chord {
                    first: here,
                    second: there,
                    function: FrontToggle,
                });
            })
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(
            found[0].message,
            "The left hood button does not take “lights” or “rear easier” or “front toggle”."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_inside_the_set() {
        let plan = drop_bar()
            .freedom_of("left hood button", |_| Freedom::Limited(vec![NextScreen]))
            .tap("left hood button", Some(NextScreen))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
