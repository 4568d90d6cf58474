//! Something about the rider was not asked yet.

use super::{Family, Origin, Rule};
use crate::cockpit::{HandPosition, Press};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::plan::Plan;
use crate::rider::{QUESTIONS, Question, QuestionId, Side, Subject};
use crate::situation::Situation;
use crate::text::list;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "not-asked-yet",
    family: Family::Reach,
    title: "Not asked yet",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Every question of the interview that matters for this hand and this bike has an answer. What was not asked is taken as possible, which is not the same as no difficulty.",
    why: "The layout rests on the answers. A hand that was not asked about may turn out on the road not to do what the plan asks of it.",
    remedy: "Ask, or try it with the fitter, bike still. Whoever is not sure leaves “not asked” and comes back to it.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let sides = Side::ALL.iter();
    sides
        .filter_map(|side| about_hand(situation, *side))
        .chain(about_positions(situation))
        .collect()
}

fn about_hand(situation: &Situation<'_>, side: Side) -> Option<Finding> {
    let rider = &situation.plan.rider;
    let asked: Vec<&Question> = QUESTIONS
        .iter()
        .filter(|q| q.subject == Subject::EachHand && matters(situation, side, q))
        .collect();
    let open: Vec<QuestionId> = asked
        .iter()
        .filter(|question| question.is_open_for(rider, side))
        .map(|question| question.id)
        .collect();
    if open.is_empty() {
        return None;
    }
    let what = if open.len() == asked.len() {
        String::new()
    } else {
        format!(": {}", list(&open, "and"))
    };
    Some(finding(
        vec![Place::Hand(side)],
        format!(
            "Not asked yet about the {side} hand{what}. Not asked does not mean no difficulty."
        ),
    ))
}

fn matters(situation: &Situation<'_>, side: Side, question: &Question) -> bool {
    // What lies live under a hand that does no work is a finding by itself.
    let works = question.id == QuestionId::Place || situation.hand(side).works();
    works && is_asked(situation.plan, question.id)
}

/// Whether a question is asked for this bike: a long paddle only where there is
/// one.
pub(super) fn is_asked(plan: &Plan, question: QuestionId) -> bool {
    let mut buttons = plan.bike.controls.iter().flat_map(|c| &c.buttons);
    question != QuestionId::Paddle || buttons.any(|b| b.press == Press::Sweep)
}

fn about_positions(situation: &Situation<'_>) -> Option<Finding> {
    let rider = &situation.plan.rider;
    let of_bar = situation.plan.bike.bar.kind.positions();
    let is_open = |p: &&HandPosition| rider.positions.value(**p).is_none();
    let open: Vec<HandPosition> = match of_bar {
        // Where there is only one, the rider uses it.
        [_] => Vec::new(),
        several => several.iter().filter(is_open).copied().collect(),
    };
    let mounting = (!rider.mounts_from.is_known()).then_some("from which side the rider mounts");
    let message = match (&open[..], mounting) {
        ([], None) => return None,
        ([], Some(mounting)) => format!("Not asked yet {mounting}."),
        (open, mounting) => format!(
            "Not asked yet whether the rider uses the {}{}. For now the {} are taken as used.",
            list(open, "or"),
            mounting.map_or_else(String::new, |mounting| format!(", and {mounting}")),
            list(situation.positions(), "and")
        ),
    };
    let places = situation.positions().iter().copied();
    Some(finding(places.map(Place::Position).collect(), message))
}

fn finding(places: Vec<Place>, message: String) -> Finding {
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places,
        message,
        fixes: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::{FlatSingle, RoadOnePaddle, RoadPlain};
    use crate::catalogue::template;
    use crate::cockpit::HandPosition::{Drops, Hoods, Tops};
    use crate::edit::{Edit, RiderEdit};
    use crate::rider::{Ability, Answer, HandPlace, Side, Use};
    use crate::rules::testing::{bike, drop_bar, fired};

    fn messages(plan: &crate::plan::Plan) -> Vec<String> {
        fired(plan, &RULE).into_iter().map(|f| f.message).collect()
    }

    #[test]
    fn a_new_plan_gives_one_finding_a_hand_and_one_for_positions() {
        let plan = template(RoadPlain).plan("Test");
        assert_eq!(
            messages(&plan),
            [
                "Not asked yet about the left hand. Not asked does not mean no difficulty.",
                "Not asked yet about the right hand. Not asked does not mean no difficulty.",
                "Not asked yet whether the rider uses the tops, hoods or drops, and from which side the rider mounts. For now the hoods and drops are taken as used.",
            ]
        );
    }

    #[test]
    fn names_what_is_open() {
        let plan = drop_bar()
            .edit(&Edit::Rider(RiderEdit::Ability(
                Side::Left,
                Ability::SteersAlone,
                Answer::NOT_ASKED,
            )))
            .edit(&Edit::Rider(RiderEdit::Later(
                Side::Left,
                Answer::NOT_ASKED,
            )))
            .edit(&Edit::Rider(RiderEdit::MountsFrom(Answer::of(Side::Left))))
            .rides(Hoods, Use::Mostly)
            .rides(Drops, Use::Never)
            .plan();
        assert_eq!(
            messages(&plan),
            [
                "Not asked yet about the left hand: steering and effort, startle, cold. Not asked does not mean no difficulty.",
                "Not asked yet whether the rider uses the tops. For now the hoods are taken as used.",
            ]
        );
    }

    #[test]
    fn asks_a_hand_that_does_no_work_nothing_but_that() {
        let rests = |place| Edit::Rider(RiderEdit::Place(Side::Right, Answer::of(place)));
        let forget = Edit::Rider(RiderEdit::ForgetHand(Side::Right));
        for place in [HandPlace::Rests, HandPlace::OffBar, HandPlace::Works] {
            let plan = drop_bar().edit(&forget).edit(&rests(place)).plan();
            let asked = messages(&plan).iter().any(|m| m.contains("right hand"));
            assert_eq!(asked, place == HandPlace::Works, "{place}");
        }
    }

    #[test]
    fn one_tap_leaves_open_what_it_does_not_say() {
        let edit = |edit| Edit::Rider(edit);
        let plan = drop_bar()
            .edit(&edit(RiderEdit::HandDoesAll(Side::Left, None)))
            .edit(&edit(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )))
            .plan();
        assert_eq!(
            messages(&plan)[0],
            "Not asked yet about the left hand: pain and effort, startle, cold. Not asked does not mean no difficulty."
        );
        assert!(!messages(&plan)[1].contains("right hand"));
    }

    #[test]
    fn asks_about_a_long_paddle_only_where_there_is_one() {
        let swing = Edit::Rider(RiderEdit::Ability(
            Side::Left,
            Ability::SwingsPaddle,
            Answer::NOT_ASKED,
        ));
        let about_left = |setup: crate::rules::testing::Setup| {
            let plan = setup.edit(&swing).plan();
            messages(&plan).iter().any(|m| m.contains("left hand"))
        };
        assert!(about_left(bike(RoadOnePaddle)));
        assert!(!about_left(drop_bar()));
    }

    #[test]
    fn is_silent_once_everything_is_answered() {
        let mounts = Edit::Rider(RiderEdit::MountsFrom(Answer::of(Side::Left)));
        let plan = bike(FlatSingle).edit(&mounts).plan();
        assert!(fired(&plan, &RULE).is_empty());
        let plan = drop_bar()
            .edit(&mounts)
            .rides(Tops, Use::Never)
            .rides(Hoods, Use::Mostly)
            .rides(Drops, Use::Sometimes)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
