//! An entry of the record in format 1.

use crate::document::code::Code;
use crate::document::key::{ButtonKey, Day, Digest};
use crate::document::list::{Item, List, Plain};
use crate::document::number::{Length, Whole};
use crate::document::part::Given;
use crate::finding::{Place, Role};
use crate::layout::LayoutId;
use crate::limits::MEASURED;
use crate::record::{self, Check, Matter, Outcome, Pin};
use crate::review::{self, Audience, Basis, Decision, MarkKind, NotAssessed, ReviewEvent};
use crate::rider::{Ability, Side, Worn, YesNo};
use crate::text::Text;
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

type Count = Whole<0, { u32::MAX }>;
type Measured = Length<{ MEASURED.from }, { MEASURED.to }>;

part! {
    /// Something that somebody wrote into the record: one of the things from
    /// `review` on.
    pub(in crate::document) struct Entry as "an entry" {
        id: Digest,
        turn: Count,
        /// Who wrote it; a typed name is not a signature.
        by: Text,
        role: Code<Role>,
        date (default): Given<Day>,
        /// The revision it is about.
        revision: Count,
        /// The revision code.
        code: Digest,
        /// The digest of what was known of the hands.
        hands: Digest,
        review (default): Given<Review>,
        addendum (default): Given<About>,
        withdrawn (default): Given<About>,
        comment (default): Given<Comment>,
        /// The rider's own words.
        words (default): Given<Text>,
        mark (default): Given<Mark>,
        step (default): Given<Step>,
        /// A check begins again.
        again (default): Given<Code<Check>>,
        practice (default): Given<Practice>,
        /// A practice session is sent along from now on.
        sent (default): Given<Digest>,
    }
}

part! {
    /// A therapist's decision.
    struct Review as "a decision" {
        decision: Code<Decision>,
        basis: Code<Basis>,
        seen: List<Observed, { 2 * Ability::ALL.len() }>,
        worn (default): Option<Code<Worn>>,
        bike: Text,
        conditions: Text,
        changes: List<Change, { review::MOST_CHANGES }>,
        trial (default): Given<Trial>,
        not_assessed: Plain<Code<NotAssessed>>,
        /// Null is not asked.
        rider_agrees (default): Option<Code<YesNo>>,
        again_on (default): Option<Day>,
        again_after: Plain<Code<ReviewEvent>>,
    }
}

part! {
    /// An action that was seen.
    pub(in crate::document) struct Observed as "an action that was seen" {
        hand: Code<Side>,
        action: Code<Ability>,
    }
}

part! {
    /// A change tied to a button.
    pub(in crate::document) struct Change as "a change on a button" {
        button: ButtonKey,
        what: Text,
    }
}

part! {
    /// A supervised trial.
    struct Trial as "a supervised trial" {
        place: Text,
        with: Text,
        stop_if: Text,
        review_by (default): Option<Day>,
    }
}

part! {
    /// Words about an earlier entry.
    struct About as "words about an entry" {
        entry: Digest,
        text: Text,
    }
}

part! {
    /// A comment.
    struct Comment as "a comment" {
        /// What it is about; absent is the whole.
        on (default): Given<Pinned>,
        audience: Code<Audience>,
        text: Text,
    }
}

part! {
    /// What a comment is about: one of the two.
    struct Pinned as "what a comment is about" {
        /// A button or a hand: `button:3.single`, `hand:left`.
        place (default): Given<PlaceKey>,
        /// A finding by its rule and places.
        finding (default): Given<String>,
    }
}

/// A place by its name.
#[derive(Debug, Clone, PartialEq)]
struct PlaceKey(Place);

part! {
    /// The rider's word on a button.
    struct Mark as "a mark" {
        button: ButtonKey,
        kind: Code<MarkKind>,
        text: Text,
    }
}

part! {
    /// A step of a check.
    struct Step as "a step of a check" {
        check: Code<Check>,
        step: String,
        outcome: Code<Outcome>,
        what (default): Text,
        /// In millimetres.
        measured (default): Given<Measured>,
    }
}

part! {
    /// A practice session.
    struct Practice as "a practice session" {
        layout: super::super::Id,
        calls: Count,
        right_first: Count,
        wrong: Count,
        /// Left out where lateness was not asked for.
        late (default): Given<Count>,
        presses: List<Pressed, 256>,
        mixed_up: List<MixUp, 256>,
    }
}

part! {
    /// How often a button was pressed.
    pub(in crate::document) struct Pressed as "presses of a button" {
        button: ButtonKey,
        times: Count,
    }
}

part! {
    /// One button pressed in place of another.
    pub(in crate::document) struct MixUp as "a mix-up" {
        wanted: ButtonKey,
        pressed: ButtonKey,
        times: Count,
    }
}

impl crate::document::part::Part for PlaceKey {
    fn read(
        at: &crate::document::part::Place<'_>,
        reader: &mut crate::document::reader::Reader,
    ) -> Result<Self, crate::document::part::Refused> {
        let place = at.value.as_str().and_then(Place::parse);
        place
            .map(PlaceKey)
            .ok_or_else(|| reader.expected(at, "a place such as button:3.single or hand:left"))
    }

    fn write(&self) -> serde_json::Value {
        self.0.key().into()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for PlaceKey {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Place".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "pattern": "^[a-z-]+:[a-z0-9.-]+$" })
    }
}

macro_rules! named_by {
    ($item:ty, $list:literal, $($field:ident),+) => {
        impl Item for $item {
            const LIST: &'static str = $list;
            const NAMED_BY: &'static [&'static str] = &[$(stringify!($field)),+];

            fn name(&self) -> String {
                use crate::document::part::Part;
                [$(self.$field.write().to_string()),+].join(" and ")
            }
        }
    };
}

named_by!(Observed, "seen", hand, action);
named_by!(Change, "changes", button);
named_by!(Pressed, "presses", button);
named_by!(MixUp, "mixed_up", wanted, pressed);

impl Entry {
    pub(super) fn id(&self) -> String {
        self.id.0.to_string()
    }

    fn blank(entry: &record::Entry) -> Entry {
        Entry {
            id: Digest(entry.id),
            turn: Whole(entry.turn),
            by: entry.by.clone(),
            role: Code(entry.role),
            date: Given(entry.date.map(Day)),
            revision: Whole(entry.revision),
            code: Digest(entry.code),
            hands: Digest(entry.hands),
            review: Given(None),
            addendum: Given(None),
            withdrawn: Given(None),
            comment: Given(None),
            words: Given(None),
            mark: Given(None),
            step: Given(None),
            again: Given(None),
            practice: Given(None),
            sent: Given(None),
        }
    }

    /// What it says; of several things the first.
    fn matter(&mut self) -> Matter {
        let about = |about: About| (about.entry.0, about.text);
        if let Some(review) = self.review.0.take() {
            return Matter::Review(Box::new(review.into()));
        }
        if let Some((to, text)) = self.addendum.0.take().map(about) {
            return Matter::Addendum { to, text };
        }
        if let Some((what, reason)) = self.withdrawn.0.take().map(about) {
            return Matter::Withdrawn { what, reason };
        }
        if let Some(comment) = self.comment.0.take() {
            return comment.into();
        }
        if let Some(words) = self.words.0.take() {
            return Matter::Words(words);
        }
        if let Some(mark) = self.mark.0.take() {
            return Matter::Mark {
                button: mark.button.0,
                kind: mark.kind.0,
                text: mark.text,
            };
        }
        if let Some(step) = self.step.0.take() {
            return Matter::Step(step.into());
        }
        if let Some(check) = self.again.0.take() {
            return Matter::Again(check.0);
        }
        if let Some(practice) = self.practice.0.take() {
            return Matter::Practice(practice.into());
        }
        self.sent
            .0
            .take()
            .map_or(Matter::Other, |id| Matter::Sent(id.0))
    }
}

impl From<&record::Entry> for Entry {
    fn from(entry: &record::Entry) -> Self {
        let mut stored = Entry::blank(entry);
        let about = |id: record::Code, text: &Text| {
            Given(Some(About {
                entry: Digest(id),
                text: text.clone(),
            }))
        };
        match &entry.matter {
            Matter::Review(review) => stored.review = Given(Some(review.as_ref().into())),
            Matter::Addendum { to, text } => stored.addendum = about(*to, text),
            Matter::Withdrawn { what, reason } => stored.withdrawn = about(*what, reason),
            Matter::Comment { on, audience, text } => {
                stored.comment = Given(Some(Comment {
                    on: Given(Pinned::of(on)),
                    audience: Code(*audience),
                    text: text.clone(),
                }));
            }
            Matter::Words(text) => stored.words = Given(Some(text.clone())),
            Matter::Mark { button, kind, text } => {
                stored.mark = Given(Some(Mark {
                    button: ButtonKey(*button),
                    kind: Code(*kind),
                    text: text.clone(),
                }));
            }
            Matter::Step(step) => stored.step = Given(Some(step.into())),
            Matter::Again(check) => stored.again = Given(Some(Code(*check))),
            Matter::Practice(practised) => stored.practice = Given(Some(practised.into())),
            Matter::Sent(id) => stored.sent = Given(Some(Digest(*id))),
            Matter::Other => {}
        }
        stored
    }
}

impl From<Entry> for record::Entry {
    fn from(mut entry: Entry) -> Self {
        record::Entry {
            matter: entry.matter(),
            id: entry.id.0,
            turn: entry.turn.0,
            by: entry.by,
            role: entry.role.0,
            date: entry.date.0.map(|day| day.0),
            revision: entry.revision.0,
            code: entry.code.0,
            hands: entry.hands.0,
        }
    }
}

impl Pinned {
    fn of(pin: &Pin) -> Option<Pinned> {
        let (place, finding) = match pin {
            Pin::Whole => return None,
            Pin::Place(place) => (Some(PlaceKey(*place)), None),
            Pin::Finding(finding) => (None, Some(finding.clone())),
        };
        Some(Pinned {
            place: Given(place),
            finding: Given(finding),
        })
    }
}

impl From<Comment> for Matter {
    fn from(comment: Comment) -> Self {
        let on = comment.on.0.map_or(Pin::Whole, |pinned| {
            match (pinned.place.0, pinned.finding.0) {
                (Some(place), _) => Pin::Place(place.0),
                (None, Some(finding)) => Pin::Finding(finding),
                (None, None) => Pin::Whole,
            }
        });
        Matter::Comment {
            on,
            audience: comment.audience.0,
            text: comment.text,
        }
    }
}

impl From<&review::Review> for Review {
    fn from(review: &review::Review) -> Self {
        let seen = review.seen.iter().map(|(hand, action)| Observed {
            hand: Code(*hand),
            action: Code(*action),
        });
        let changes = review.changes.iter().map(|(button, what)| Change {
            button: ButtonKey(*button),
            what: what.clone(),
        });
        let trial = review.trial.as_ref().map(|trial| Trial {
            place: trial.place.clone(),
            with: trial.with.clone(),
            stop_if: trial.stop_if.clone(),
            review_by: trial.review_by.map(Day),
        });
        Review {
            decision: Code(review.decision),
            basis: Code(review.basis),
            seen: List(seen.collect()),
            worn: review.worn.map(Code),
            bike: review.bike.clone(),
            conditions: review.conditions.clone(),
            changes: List(changes.collect()),
            trial: Given(trial),
            not_assessed: Plain(review.not_assessed.iter().copied().map(Code).collect()),
            rider_agrees: review.rider_agrees.map(Code),
            again_on: review.again_on.map(Day),
            again_after: Plain(review.again_after.iter().copied().map(Code).collect()),
        }
    }
}

impl From<Review> for review::Review {
    fn from(stored: Review) -> Self {
        let seen = stored.seen.0.into_iter();
        let changes = stored.changes.0.into_iter();
        review::Review {
            decision: stored.decision.0,
            basis: stored.basis.0,
            seen: seen.map(|seen| (seen.hand.0, seen.action.0)).collect(),
            worn: stored.worn.map(|worn| worn.0),
            bike: stored.bike,
            conditions: stored.conditions,
            changes: changes
                .map(|change| (change.button.0, change.what))
                .collect(),
            trial: stored.trial.0.map(|trial| review::Trial {
                place: trial.place,
                with: trial.with,
                stop_if: trial.stop_if,
                review_by: trial.review_by.map(|day| day.0),
            }),
            not_assessed: stored
                .not_assessed
                .0
                .into_iter()
                .map(|code| code.0)
                .collect(),
            rider_agrees: stored.rider_agrees.map(|code| code.0),
            again_on: stored.again_on.map(|day| day.0),
            again_after: stored
                .again_after
                .0
                .into_iter()
                .map(|code| code.0)
                .collect(),
        }
    }
}

impl From<&record::Step> for Step {
    fn from(step: &record::Step) -> Self {
        Step {
            check: Code(step.check),
            step: step.step.clone(),
            outcome: Code(step.outcome),
            what: step.what.clone(),
            measured: Given(step.measured.map(Measured::from)),
        }
    }
}

impl From<Step> for record::Step {
    fn from(step: Step) -> Self {
        record::Step {
            check: step.check.0,
            step: step.step,
            outcome: step.outcome.0,
            what: step.what,
            measured: step.measured.0.map(Mm::from),
        }
    }
}

impl From<&record::Practised> for Practice {
    fn from(practised: &record::Practised) -> Self {
        let presses = practised.presses.iter().map(|(button, times)| Pressed {
            button: ButtonKey(*button),
            times: Whole(*times),
        });
        let mixed_up = practised.mixed_up.iter().map(|mix_up| MixUp {
            wanted: ButtonKey(mix_up.wanted),
            pressed: ButtonKey(mix_up.pressed),
            times: Whole(mix_up.times),
        });
        Practice {
            layout: practised.layout.0.into(),
            calls: Whole(practised.calls),
            right_first: Whole(practised.right_first),
            wrong: Whole(practised.wrong),
            late: Given(practised.late.map(Whole)),
            presses: List(presses.collect()),
            mixed_up: List(mixed_up.collect()),
        }
    }
}

impl From<Practice> for record::Practised {
    fn from(stored: Practice) -> Self {
        let presses = stored.presses.0.into_iter();
        let mixed_up = stored.mixed_up.0.into_iter();
        record::Practised {
            layout: LayoutId(stored.layout.into()),
            calls: stored.calls.0,
            right_first: stored.right_first.0,
            wrong: stored.wrong.0,
            late: stored.late.0.map(|late| late.0),
            presses: presses.map(|p| (p.button.0, p.times.0)).collect(),
            mixed_up: mixed_up
                .map(|mix_up| record::MixUp {
                    wanted: mix_up.wanted.0,
                    pressed: mix_up.pressed.0,
                    times: mix_up.times.0,
                })
                .collect(),
        }
    }
}
