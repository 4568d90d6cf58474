//! The setup sheet: the paper that the shop hangs on the stand.
//!
//! A document of typed parts, complete in words, so that it can be tested and
//! copied without a browser; the app only sets it on paper. It has three pages,
//! [`Page::OnTheStand`], [`Page::Work`] and [`Page::Proof`], and on request two
//! more, [`Page::Gears`] and [`Page::Hands`]. A page of the sheet may take more than one leaf.

mod brakes;
mod buttons;
mod coverage;
mod gear_card;
mod hands;
mod parts;
mod points;
mod proof;
mod settings;
pub(crate) mod stand_check;
mod text;
mod tick;
mod title;
mod verdict;
mod wires;
mod work;

pub use brakes::{BladeState, BrakeLine, BrakeSheet, LatchState, ThrowTest};
pub use buttons::{ButtonRow, ChordWith, Now, Pressed, PressedBy, Was};
pub use coverage::{CoverageAnswer, CoverageLine, CoverageTable, CoverageWords};
pub use gear_card::GearCard;
pub use hands::{HandLine, HandPage, NOT_ASSESSED};
pub use parts::{PartLine, Quantity};
pub use points::{AcceptedPoint, OpenPoint};
pub use proof::{ABOUT_A_PLAN, CAUTIONS, SIGNATURE_NOTE};
pub use settings::{Setting, SettingsList};
pub use tick::{Field, Tick, TickList};
pub use title::TitleBlock;
pub use verdict::{Readiness, Verdict};
pub use wires::WireLine;

use crate::cockpit::{Bike, Control};
use crate::finding::Finding;
use crate::ordered;
use crate::plan::Plan;
use crate::proof::Proof;
use crate::review;
use crate::rules;
use crate::situation::Situation;
use crate::text::capital;

vocabulary! {
    /// The paper it is printed on.
    pub enum Paper as "paper" {
        /// 210 by 297 mm (ISO 216).
        A4 = "a4", "A4";
        /// 8.5 by 11 inches.
        Letter = "letter", "Letter";
    }
}

impl Paper {
    /// The paper usual where a language is spoken, by its tag such as `en-US`
    /// (*common practice*: Letter in much of the Americas and the Philippines,
    /// A4 elsewhere).
    pub fn usual(language: &str) -> Paper {
        const LETTER: &[&str] = &["US", "CA", "MX", "PH", "CL", "CO", "VE", "GT", "CR", "PR"];
        let region = language.split('-').skip(1).find(|part| part.len() == 2);
        match region {
            Some(region) if LETTER.iter().any(|r| r.eq_ignore_ascii_case(region)) => Paper::Letter,
            _ => Paper::A4,
        }
    }
}

vocabulary! {
    /// A page of the sheet.
    pub enum Page as "page" {
        /// Hangs on the stand: verdict, drawing, buttons, brakes, settings.
        OnTheStand = "on-the-stand", "On the stand";
        /// Parts, wires, order of work, stand check.
        Work = "work", "Parts, work, stand check";
        /// Coverage, findings, first ride, cautions, sign-off.
        Proof = "proof", "Reasons, first ride, sign-off";
        /// Gears, ladder, steps.
        Gears = "gears", "Gear card";
        /// What the hands can do, as answered.
        Hands = "hands", "Hand details";
    }
}

/// How the sheet is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SheetOptions {
    /// The paper.
    pub paper: Paper,
    /// Text at 18 pt with headings at 22 pt, laid out for it.
    pub large_print: bool,
    /// Whether the page with hand details is printed. Left out unless asked
    /// for: the sheet hangs where others see it, and the bench needs no more
    /// than which hand and contact press what.
    pub hand_page: bool,
    /// Whether the page with hand details shows step numbers and the closest ICF
    /// codes.
    pub clinical: bool,
    /// Whether the gear card is printed, once the teeth are entered.
    pub gear_card: bool,
    /// Whether the layout is printed as a code to scan, where one fits.
    pub code: bool,
}

impl Default for SheetOptions {
    fn default() -> Self {
        SheetOptions {
            paper: Paper::A4,
            large_print: false,
            hand_page: false,
            clinical: false,
            gear_card: false,
            code: true,
        }
    }
}

/// The setup sheet of the layout in hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// How it is printed.
    pub options: SheetOptions,
    /// What it is about: repeated on every leaf.
    pub title: TitleBlock,
    /// Ready or not, and why.
    pub verdict: Verdict,
    /// What was proved on the bike, in a sentence each:
    /// [`Proof::words`](crate::proof::Proof::words).
    pub proved: [String; 2],
    /// A clinician's decision that stands, with when to stop.
    pub decided: Option<String>,
    /// Every button once, in balloon order. The drawing with the same balloons
    /// stands above the table; the app draws it.
    pub buttons: Vec<ButtonRow>,
    /// The brakes as plumbing.
    pub brakes: BrakeSheet,
    /// What is typed into the shift system.
    pub settings: SettingsList,
    /// What the work needs.
    pub parts: Vec<PartLine>,
    /// Each control's wire.
    pub wires: Vec<WireLine>,
    /// The work in order.
    pub work: TickList,
    /// The check on the stand, brakes first.
    pub stand_check: Vec<TickList>,
    /// Which button serves what from where.
    pub coverage: CoverageTable,
    /// Findings that somebody accepted with a reason.
    pub accepted: Vec<AcceptedPoint>,
    /// Findings that stand open besides the reasons of the verdict, heaviest
    /// first.
    pub open: Vec<OpenPoint>,
    /// The bike tried by the rider, standing still and then at walking pace.
    pub first_ride: Vec<TickList>,
    /// What every sheet says, [`CAUTIONS`].
    pub cautions: &'static [&'static str],
    /// Who signs: one group of fields for each.
    pub sign_off: Vec<(&'static str, Vec<Field>)>,
    /// The gears, if asked for and known.
    pub gears: Option<GearCard>,
    /// What the hands can do, if asked for.
    pub hands: Option<HandPage>,
}

impl Sheet {
    /// What stands under the open points where the verdict names them all.
    pub fn no_open_points(&self) -> &'static str {
        match self.verdict.reasons.is_empty() {
            true => "None.",
            false => "None besides those on the first page.",
        }
    }

    /// The sheet of a plan.
    pub fn of(plan: &Plan, options: SheetOptions) -> Sheet {
        let situation = Situation::of_layout(plan, plan.layout());
        let findings = rules::findings_in(&situation);
        Sheet::from(&situation, &findings, options)
    }

    /// The sheet of a situation whose findings are already known.
    pub fn from(situation: &Situation<'_>, findings: &[Finding], options: SheetOptions) -> Sheet {
        let plan = situation.plan;
        let (accepted, open) = points::sorted(plan, findings);
        let (verdict, open) = Verdict::of(open, accepted.len());
        Sheet {
            options,
            title: TitleBlock::of(situation),
            verdict,
            proved: Proof::of(plan).words(),
            decided: review::last_decision(plan),
            buttons: buttons::rows(situation),
            brakes: brakes::sheet(situation),
            settings: settings::list(situation),
            parts: parts::lines(plan),
            wires: wires::lines(&plan.bike),
            work: work::list(plan),
            stand_check: stand_check::lists(situation),
            coverage: coverage::table(situation),
            accepted,
            open,
            first_ride: proof::first_ride(situation),
            cautions: CAUTIONS,
            sign_off: proof::sign_off(),
            gears: (options.gear_card.then(|| gear_card::card(situation))).flatten(),
            hands: options
                .hand_page
                .then(|| hands::page(plan, options.clinical)),
        }
    }

    /// The pages in order.
    pub fn pages(&self) -> Vec<Page> {
        let mut pages = vec![Page::OnTheStand, Page::Work, Page::Proof];
        if self.gears.is_some() {
            pages.push(Page::Gears);
        }
        if self.hands.is_some() {
            pages.push(Page::Hands);
        }
        pages
    }
}

/// The controls from left to right.
fn left_to_right(bike: &Bike) -> impl Iterator<Item = &Control> {
    let mut controls: Vec<&Control> = bike.controls.iter().collect();
    ordered::sort_by(&mut controls, |a, b| {
        a.at.x.total_cmp(&b.at.x).then(a.id.cmp(&b.id))
    });
    controls.into_iter()
}

/// The brake levers from left to right, those without their blade too.
fn levers(bike: &Bike) -> impl Iterator<Item = &Control> {
    left_to_right(bike).filter(|control| control.blade.is_some())
}

/// "one", "1 lever", "2 levers".
fn counted(count: usize, one: &str, many: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{count} {many}")
    }
}

/// "a", "a and b", "a, b and c".
fn listed<T: std::fmt::Display>(items: &[T]) -> String {
    let words: Vec<String> = items.iter().map(T::to_string).collect();
    match &words[..] {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

#[cfg(test)]
mod tests;
