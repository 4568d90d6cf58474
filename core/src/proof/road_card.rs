//! The card for the road: how to stop, what each hand does, what to look at
//! when it does not shift, how to get home. No word about health.

use crate::cockpit::BarSide;
use crate::plan::Plan;
use crate::record::Code;
use crate::revision;
use crate::situation::Situation;
use crate::summary;
use crate::text::{capital, list};

vocabulary! {
    /// The size of the card.
    pub enum CardSize as "size of the card" {
        /// 85.6 by 54 mm, the size of a bank card (ISO/IEC 7810, ID-1), without
        /// a fold.
        Wallet = "wallet", "wallet size";
        /// A page in large print.
        LargePrint = "large-print", "large print";
    }
}

/// The card of the layout in hand. Both sizes say the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoadCard {
    /// The bike.
    pub bike: String,
    /// How to stop: each lever and its wheels.
    pub stop: Vec<String>,
    /// For who borrows the bike: "BOTH BRAKES LEFT"; `None` where each side has
    /// a brake.
    pub borrowed: Option<String>,
    /// What each hand presses.
    pub hands: Vec<String>,
    /// When it does not shift, in order.
    pub not_shifting: &'static [&'static str],
    /// What needs two hands: ask somebody.
    pub two_hands: &'static [&'static str],
    /// How to get home.
    pub home: &'static [&'static str],
    /// A line for a telephone number, to fill in by hand.
    pub phone: &'static str,
    /// The revision: number and code.
    pub revision: (u32, Code),
    /// The day of the work; empty to fill in by hand.
    pub date: String,
}

/// In the order of looking (*common practice*).
const NOT_SHIFTING: &[&str] = &[
    "Get off the road first.",
    "Battery: does a light come on? Coin cells: fresh one in?",
    "Lights blink as when adjusting: presses trim. Leave the adjusting state.",
    "After a knock: turn the cranks and press easier, once. It may engage again.",
    "Hanger bent towards the wheel: do not shift to the largest cog.",
];

const TWO_HANDS: &[&str] = &[
    "Changing a coin cell or plugging a wire.",
    "Straightening a hanger, putting a chain back.",
];

const HOME: &[&str] = &[
    "It stays in one gear: ride gently, walk the hills.",
    "A brake is not there: do not ride. Call.",
];

impl RoadCard {
    /// The card of a plan.
    pub fn of(plan: &Plan) -> RoadCard {
        // Nothing is taken from what is known of the rider.
        let bare = plan.without_hand_details(None);
        let situation = Situation::of_layout(&bare, bare.layout());
        let hands = summary::of(&situation);
        let mut lines = vec![hands.left, hands.right];
        lines.extend(hands.centre);
        RoadCard {
            bike: bare.bike.in_short(),
            stop: stop(&situation),
            borrowed: borrowed(&situation),
            hands: lines,
            not_shifting: NOT_SHIFTING,
            two_hands: TWO_HANDS,
            home: HOME,
            phone: "Telephone",
            revision: (plan.revision, revision::code(plan)),
            date: plan.date.map(|date| date.to_string()).unwrap_or_default(),
        }
    }
}

fn stop(situation: &Situation<'_>) -> Vec<String> {
    let runs = situation.live_runs();
    runs.map(|run| {
        let lever = capital(&situation.lever_name(run.lever));
        format!("{lever}: {}", list(&run.wheels, "and"))
    })
    .collect()
}

fn borrowed(situation: &Situation<'_>) -> Option<String> {
    let bike = &situation.plan.bike;
    let mut sides = situation
        .live_runs()
        .filter_map(|run| Some(bike.control(run.lever)?.side));
    let side = sides.next()?;
    let wheels: usize = situation.live_runs().map(|run| run.wheels.len()).sum();
    if wheels < 2 || sides.any(|other| other != side) {
        return None;
    }
    let side = match side {
        BarSide::Left => "LEFT",
        BarSide::Right => "RIGHT",
        BarSide::Centre => return None,
    };
    let both = if wheels == 2 {
        "BOTH BRAKES"
    } else {
        "ALL BRAKES"
    };
    Some(format!("{both} {side}"))
}
