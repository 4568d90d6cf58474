//! What the layout asks of each contact, against what is known of it.

use crate::finding::Place;
use crate::rider::{Ability, Contact, Day, Difficulty, HandPlace, Side, Standing};
use crate::situation::Situation;
use crate::text::list;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// How a demand meets what is known of the hand, what is to be looked at
    /// first first.
    pub enum Fit as "fit" {
        /// The hand does not do it.
        Beyond = "beyond", "asked for, and the hand does not do it";
        /// It takes great effort, and on a bad day the hand does not do it.
        GreatEffortNotOnBadDay = "great-effort-not-on-bad-day",
            "takes great effort; not at all on a bad day";
        /// It takes great effort.
        GreatEffort = "great-effort", "takes great effort";
        /// It does not hold on a bad day.
        NotOnBadDay = "not-on-bad-day", "not on a bad day";
        /// Nobody asked.
        NotAsked = "not-asked", "not asked yet";
        /// Nobody asked what becomes of it on a bad day.
        BadDayNotAsked = "bad-day-not-asked", "on a usual day; bad day not asked yet";
        /// It is within what was answered.
        Within = "within", "within what was answered";
    }
}

/// What is asked of one contact of one hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demand {
    /// The hand.
    pub hand: Side,
    /// What presses or pulls; `None` for what is asked of the hand as a whole.
    pub contact: Option<Contact>,
    /// What is asked of it: "rung down and rung up, from the hoods".
    pub asked: String,
    /// How hard it is on a usual day; `None`: not asked.
    pub usual: Option<Difficulty>,
    /// How hard it is on a bad day.
    pub bad: Option<Difficulty>,
    /// How the two meet.
    pub fit: Fit,
    /// Where on the drawing.
    pub places: Vec<Place>,
}

/// Every demand of a layout, what is to be looked at first first.
pub(super) fn demands(situation: &Situation<'_>) -> Vec<Demand> {
    let mut found = pressing(situation);
    found.extend(keeping(situation));
    found.extend(braking(situation));
    found.extend(resting(situation));
    found.sort_unstable_by_key(|demand| (demand.fit, demand.hand, demand.contact));
    found
}

/// Grouped by hand and contact: the hardest of what each is asked.
fn pressing(situation: &Situation<'_>) -> Vec<Demand> {
    let mut groups: Vec<Group> = Vec::new();
    for (function, position, way) in situation.coverage.usual_ways() {
        let hand = situation.hand(way.hand);
        let bad = hand.contact_step(way.contact, Day::Bad);
        let bad = hand.told(bad.max(way.step.filter(|_| bad.is_some())), Day::Bad);
        let group = Group::of(&mut groups, way.hand, way.contact);
        group.usual = group.usual.max(way.step);
        group.bad = group.bad.max(bad);
        group.open |= way.step.is_none();
        push(&mut group.functions, function.to_string());
        push(&mut group.positions, position.to_string());
        for button in way.via.buttons() {
            push(&mut group.places, Place::Button(button));
        }
    }
    groups.into_iter().map(Group::demand).collect()
}

struct Group {
    hand: Side,
    contact: Contact,
    functions: Vec<String>,
    positions: Vec<String>,
    places: Vec<Place>,
    usual: Option<Difficulty>,
    bad: Option<Difficulty>,
    open: bool,
}

impl Group {
    fn of(groups: &mut Vec<Group>, hand: Side, contact: Contact) -> &mut Group {
        let is_it = |group: &Group| group.hand == hand && group.contact == contact;
        let at = groups.iter().position(is_it).unwrap_or_else(|| {
            groups.push(Group {
                hand,
                contact,
                functions: Vec::new(),
                positions: Vec::new(),
                places: Vec::new(),
                usual: None,
                bad: None,
                open: false,
            });
            groups.len() - 1
        });
        &mut groups[at]
    }

    fn demand(self) -> Demand {
        let asked = format!(
            "presses {}, from the {}",
            list(&self.functions, "and"),
            list(&self.positions, "and")
        );
        Demand {
            hand: self.hand,
            contact: Some(self.contact),
            fit: fit(self.usual, self.bad, self.open),
            usual: self.usual,
            bad: self.bad,
            places: self.places,
            asked,
        }
    }
}

fn push<T: PartialEq>(all: &mut Vec<T>, item: T) {
    if !all.contains(&item) {
        all.push(item);
    }
}

/// Holds ask a hand to keep pressed and to let go.
fn keeping(situation: &Situation<'_>) -> Vec<Demand> {
    let mut found: Vec<Demand> = Vec::new();
    for button in situation.layout.holds.keys() {
        if !situation.layout.is_live(&situation.plan.bike, *button) {
            continue;
        }
        for hand in situation.hands_on(*button) {
            for ability in [Ability::KeepsPressed, Ability::LetsGo] {
                let place = Place::Button(*button);
                let asked = ability.to_string();
                match found
                    .iter_mut()
                    .find(|d| d.hand == hand && d.asked == asked)
                {
                    Some(demand) => push(&mut demand.places, place),
                    None => found.push(of_hand(situation, hand, ability, vec![place])),
                }
            }
        }
    }
    found
}

/// Braking asks a hand to pull hard, for long, and to let go.
fn braking(situation: &Situation<'_>) -> Vec<Demand> {
    let abilities = [
        Ability::BrakesHard,
        Ability::BrakesLong,
        Ability::ReleasesBrake,
    ];
    let hands = situation.braking_hands().into_iter();
    hands
        .flat_map(|hand| {
            let levers = situation
                .live_runs()
                .filter(move |run| situation.brakes_with(hand, run.lever));
            let places: Vec<Place> = levers.map(|run| Place::Control(run.lever)).collect();
            abilities.map(|ability| of_hand(situation, hand, ability, places.clone()))
        })
        .collect()
}

/// A hand that rests on the bar is asked to stay there.
fn resting(situation: &Situation<'_>) -> impl Iterator<Item = Demand> {
    let rests = |side: &Side| situation.hand(*side).place.value == Some(HandPlace::Rests);
    let sides = Side::ALL.iter().copied().filter(rests);
    sides.map(|side| of_hand(situation, side, Ability::StaysOn, vec![Place::Hand(side)]))
}

fn of_hand(situation: &Situation<'_>, side: Side, ability: Ability, places: Vec<Place>) -> Demand {
    let hand = situation.hand(side);
    let step = |day| hand.told(hand.step(ability, day), day);
    let (usual, bad) = (step(Day::Usual), step(Day::Bad));
    Demand {
        hand: side,
        contact: None,
        asked: ability.to_string(),
        usual,
        bad,
        fit: fit(usual, bad, usual.is_none()),
        places,
    }
}

fn fit(usual: Option<Difficulty>, bad: Option<Difficulty>, open: bool) -> Fit {
    let stands = |step: Option<Difficulty>| step.map(Difficulty::standing);
    match (stands(usual), stands(bad)) {
        (Some(Standing::NotUsable), _) => Fit::Beyond,
        (Some(Standing::OnlyAfterCheck), Some(Standing::NotUsable)) => Fit::GreatEffortNotOnBadDay,
        (Some(Standing::OnlyAfterCheck), _) => Fit::GreatEffort,
        (_, Some(Standing::NotUsable | Standing::OnlyAfterCheck)) => Fit::NotOnBadDay,
        _ if open => Fit::NotAsked,
        (_, None) => Fit::BadDayNotAsked,
        _ => Fit::Within,
    }
}

impl Demand {
    /// "Left thumb", "right hand".
    pub fn who(&self) -> String {
        match self.contact {
            Some(contact) => format!("{} {}", self.hand, contact),
            None => format!("{} hand", self.hand),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Fit, fit};
    use crate::rider::Difficulty::{Complete, Mild, Severe};

    #[test]
    fn what_a_bad_day_takes_away_is_told_beside_what_a_usual_one_asks() {
        let of = |usual, bad| fit(Some(usual), Some(bad), false);
        assert_eq!(of(Severe, Complete), Fit::GreatEffortNotOnBadDay);
        assert_eq!(of(Severe, Severe), Fit::GreatEffort);
        assert_eq!(of(Mild, Complete), Fit::NotOnBadDay);
        assert_eq!(of(Complete, Complete), Fit::Beyond);
        assert_eq!(of(Mild, Mild), Fit::Within);
    }
}
