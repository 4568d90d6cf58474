//! What travelling costs: the link of the largest demo plan, and the merge of two long histories.

use std::hint::black_box;
use std::time::Instant;

use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, TemplateId, demo, template};
use leverwright_core::document;
use leverwright_core::edit::{Edit, LayoutEdit, PlanEdit, RecordEdit};
use leverwright_core::finding::Role;
use leverwright_core::history::History;
use leverwright_core::merge::{self, Merge};
use leverwright_core::plan::Plan;
use leverwright_core::record::{Desk, Matter, Pin};
use leverwright_core::review::Audience;
use leverwright_core::share::{Along, content, link};
use leverwright_core::text::Text;
use leverwright_tests::number::{Number, quantile};

const REVISIONS: usize = 500;
const RUNS: usize = 40;
/// A long address of the app, so that the link of a real place is no longer.
const ADDRESS: &str = "https://some-rather-long-name-of-a-place.example.org/leverwright/";

fn main() {
    links();
    merges();
}

fn links() {
    let length = |plan: &Plan, along| {
        let link = link(ADDRESS, &content(plan, along)).expect("a demo fits into a link");
        link.len() as f64 / 1000.0
    };
    let plans = || DemoId::ALL.iter().map(|id| demo(*id).plan);
    let largest = |along| plans().map(|plan| length(&plan, along)).fold(0.0, f64::max);
    let with = largest(Along::WithRider);
    let whole = plans().map(|plan| document::write(&plan).len()).max();
    Number {
        name: "link of the largest demo plan, with rider details",
        value: with,
        unit: "KB",
        limit: Some(8.0),
        against: &format!(
            "{:.1} KB without rider details; its file has {:.1} KB",
            largest(Along::WithoutRider),
            whole.unwrap_or_default() as f64 / 1000.0
        ),
    }
    .report();
}

fn merges() {
    let base = template(TemplateId::RoadPods).plan("Numbers");
    let (mine, theirs) = (worked_on(&base, "mine"), worked_on(&base, "theirs"));
    let read = |text: &str| document::read(text).expect("it was just written").plan;
    let [a, b] = [&mine, &theirs].map(|plan| read(&document::write(plan)));
    let joined = median_time(|| drop(black_box(merge::join(&a, &b))));
    let looked_at = median_time(|| {
        let merge = Merge::of(&a, &b);
        drop(black_box(merge.make(&[], &Desk::default())));
    });
    let file = document::write(&theirs);
    let opened = median_time(|| drop(black_box(document::read(&file))));
    Number {
        name: "merge of two histories of 500 revisions",
        value: joined,
        unit: "ms",
        limit: Some(20.0),
        against: &format!(
            "{looked_at:.1} ms with the differences in words; reading one of the files, {:.0} KB, takes {opened:.1} ms",
            file.len() as f64 / 1000.0
        ),
    }
    .report();
}

/// A plan after as many changes, every fourth of which is followed by a comment.
fn worked_on(base: &Plan, by: &str) -> Plan {
    let mut history = History::new(base.clone());
    history.sit_down(Desk {
        by: Text::new(by),
        role: Some(Role::Shop),
        date: base.date,
    });
    for n in 0..REVISIONS {
        let edit = match n % 3 {
            0 => Edit::Layout(LayoutEdit::Mirror),
            1 => Edit::Plan(PlanEdit::Name(Text::new(&format!("{by} {n}")))),
            _ => Edit::Plan(PlanEdit::RenameLayout(Text::new(&format!("{by} {n}")))),
        };
        history.commit(&edit).expect("the edit is possible");
        if n % 4 == 0 {
            let comment = Edit::Record(RecordEdit {
                by: Text::new(by),
                role: Role::Shop,
                date: None,
                layout: None,
                matter: Matter::Comment {
                    on: Pin::Whole,
                    audience: Audience::Everyone,
                    text: Text::new(&format!("{by} looked at {n}")),
                },
            });
            history.commit(&comment).expect("a comment is possible");
        }
    }
    assert_eq!(history.plan().record.revisions.len(), REVISIONS);
    history.plan().clone()
}

/// Median time of one run, in milliseconds.
fn median_time(run: impl Fn()) -> f64 {
    let time = || {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e3
    };
    let times: Vec<f64> = (0..RUNS).map(|_| time()).collect();
    quantile(&times, 0.5)
}
