//! What changes from one outcome to another, and against a ride that was fine,
//! in sentences.

use super::kept::KnownRide;
use super::measure::{Measure, Who, rounded};
use super::study::{Outcome, Span};
use crate::rider::{Contact, Side};
use crate::vocabulary::Vocabulary;

/// What changes from one outcome to another over the same road on the same day:
/// a sentence each, hands first. Differences inside the ranges are told as
/// none.
pub fn differences(from: &Outcome, to: &Outcome) -> Vec<String> {
    let mut sentences = changes(from, to);
    for side in Side::ALL {
        still_clashes(*side, from, to, &mut sentences);
    }
    missing(to, &mut sentences);
    if sentences.is_empty() {
        sentences.push("No difference that stands out: one ride varies more than that.".into());
    }
    sentences
}

/// Whether nothing changes from one outcome to another beyond what varies from
/// ride to ride.
pub(super) fn are_alike(from: &Outcome, to: &Outcome) -> bool {
    changes(from, to).is_empty()
}

fn changes(from: &Outcome, to: &Outcome) -> Vec<String> {
    let mut sentences = Vec::new();
    for side in Side::ALL {
        let who = Who::Hand(*side);
        presses(who, from, to, &mut sentences);
        for contact in contacts(*side, from, to) {
            presses(Who::Contact(*side, contact), from, to, &mut sentences);
        }
    }
    moved(from, to, &mut sentences);
    for side in Side::ALL {
        let who = Who::Hand(*side);
        for measure in [
            Measure::WorstTenMinutes,
            Measure::Pulls,
            Measure::Clashes,
            Measure::Delays,
            Measure::Offs,
            Measure::Wanted,
        ] {
            changed(measure, who, from, to, &mut sentences);
        }
    }
    sentences
}

/// The contacts of a hand that press in either, where the hand has more than
/// one: with one, the hand says it all.
fn contacts(side: Side, from: &Outcome, to: &Outcome) -> Vec<Contact> {
    let mut all: Vec<Contact> = Vec::new();
    for outcome in [from, to] {
        for (hand, contact, work) in &outcome.ride.load.contacts {
            if *hand == side && work.presses > 0 && !all.contains(contact) {
                all.push(*contact);
            }
        }
    }
    if all.len() < 2 {
        all.clear();
    }
    all
}

/// "about 180–240", "about 80", "none".
pub(super) fn words(span: Span) -> String {
    let (low, high) = (rounded(span.low), rounded(span.high));
    match (low.as_str(), high.as_str()) {
        ("0", "0") => "none".into(),
        (low, high) if low == high => format!("about {low}"),
        (low, high) => format!("about {low}–{high}"),
    }
}

/// Whether one range lies apart from another, or its middle does by a quarter
/// (our judgement of what a person would feel).
fn apart(a: Span, b: Span) -> bool {
    let gap = b.low > a.high || b.high < a.low;
    let (least, most) = (a.told.min(b.told), a.told.max(b.told));
    (gap || most > 1.25 * least) && most - least >= 1.0
}

fn presses(who: Who, from: &Outcome, to: &Outcome, sentences: &mut Vec<String>) {
    let measure = Measure::PressesPerHour;
    let (a, b) = (measure.span(who, from), measure.span(who, to));
    if apart(a, b) {
        let way = if b.told < a.told { "fall" } else { "rise" };
        let (a, b) = (words(a), words(b));
        let who = capital(who);
        sentences.push(format!("{who}: presses {way} from {a} to {b} an hour."));
    }
}

/// Load that only moved to the other hand is said, not left to be seen.
fn moved(from: &Outcome, to: &Outcome, sentences: &mut Vec<String>) {
    let of = |side, outcome| Measure::PressesPerHour.span(Who::Hand(side), outcome);
    for side in Side::ALL {
        let (less, more) = (*side, side.other());
        let falls = apart(of(less, from), of(less, to)) && of(less, to).told < of(less, from).told;
        let rises = apart(of(more, from), of(more, to)) && of(more, to).told > of(more, from).told;
        if falls && rises {
            sentences.push(format!(
                "Work moves from the {less} hand to the {more} hand."
            ));
        }
    }
}

fn changed(measure: Measure, who: Who, from: &Outcome, to: &Outcome, sentences: &mut Vec<String>) {
    let (a, b) = (measure.span(who, from), measure.span(who, to));
    if apart(a, b) {
        let (a, b, who) = (words(a), words(b), capital(who));
        sentences.push(format!("{who}: {measure} go from {a} to {b}."));
    }
}

/// Presses while braking that are neither more nor fewer are not passed over.
fn still_clashes(side: Side, from: &Outcome, to: &Outcome, sentences: &mut Vec<String>) {
    let who = Who::Hand(side);
    let of = |outcome| Measure::Clashes.span(who, outcome);
    let (a, b) = (of(from), of(to));
    if b.told > 0.0 && !apart(a, b) {
        let (b, who) = (words(b), capital(who));
        sentences.push(format!(
            "{who}: some shifts still come while braking, {b} on this road."
        ));
    }
}

fn missing(to: &Outcome, sentences: &mut Vec<String>) {
    let name = &to.subject.name;
    if to.ride.load.missing > 0 {
        sentences.push(format!(
            "{name}: some shifts cannot be reached where they are needed. So fewer presses are counted than the road asks for."
        ));
    }
    if to.ride.load.unbraked > 0 {
        sentences.push(format!(
            "{name}: no hand can pull a brake where one is needed."
        ));
    }
}

fn capital(who: Who) -> String {
    let words = who.to_string();
    let (first, rest) = words.split_at(1);
    first.to_uppercase() + rest
}

/// What an outcome asks of each hand, as multiples of the ride that was fine.
pub fn against_known(known: &KnownRide, outcome: &Outcome) -> Vec<String> {
    let mut sentences = Vec::new();
    for side in Side::ALL {
        let fine = known.hand(*side);
        let who = Who::Hand(*side);
        for (measure, fine) in [
            (Measure::PressesPerHour, fine.presses_per_hour),
            (Measure::WorstTenMinutes, fine.worst_ten_minutes),
            (Measure::PulledPerHour, fine.pulled_per_hour),
        ] {
            let span = measure.span(who, outcome);
            if let Some(sentence) = multiple(measure, who, span, f64::from(fine)) {
                sentences.push(sentence);
            }
        }
    }
    sentences
}

fn multiple(measure: Measure, who: Who, span: Span, fine: f64) -> Option<String> {
    let who = capital(who);
    if fine < 1.0 {
        return (span.high >= 1.0).then(|| {
            let words = words(span);
            format!("{who}: {measure} {words}, where the ride that was fine had none.")
        });
    }
    let times = |value: f64| format!("{:.1}", value / fine);
    let (low, high) = (times(span.low), times(span.high));
    let times = if low == high {
        low
    } else {
        format!("{low}–{high}")
    };
    Some(format!(
        "{who}: {measure} {times} times those of the ride that was fine."
    ))
}
