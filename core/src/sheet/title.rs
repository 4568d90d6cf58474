//! What the sheet is about.

use super::{Field, capital};
use crate::situation::Situation;

/// The title block, as on a drawing. Every leaf repeats plan and revision.
#[derive(Debug, Clone, PartialEq)]
pub struct TitleBlock {
    /// The plan's name.
    pub plan: String,
    /// The layout's name.
    pub layout: String,
    /// Counts the plan's changes.
    pub revision: u32,
    /// All fields in reading order; one without a value is filled in by hand.
    pub fields: Vec<Field>,
}

impl TitleBlock {
    pub(crate) fn of(situation: &Situation<'_>) -> TitleBlock {
        let plan = situation.plan;
        let bike = &plan.bike;
        let text = |text: &crate::text::Text| (!text.is_empty()).then(|| text.to_string());
        TitleBlock {
            plan: text(&plan.name).unwrap_or_else(|| "Plan without a name".into()),
            layout: situation.layout.name.to_string(),
            revision: plan.revision,
            fields: vec![
                Field::new("Bike", text(&bike.name)),
                Field::new("Job", text(&plan.job)),
                Field::new(
                    "Built as",
                    Some(format!(
                        "{}, {}, {}x{}",
                        capital(&bike.frame.to_string()),
                        bike.bar.kind,
                        bike.rings(),
                        bike.cogs()
                    )),
                ),
                Field::new("Date", plan.date.map(|date| date.to_string())),
                Field::new(
                    "Layout",
                    text(&situation.layout.name).map(|name| marked(situation, name)),
                ),
                Field::new("Rider", text(&plan.rider.nickname)),
            ],
        }
    }

    /// What is known of job, bike, rider and date: what each leaf repeats beside
    /// the running head. A bike named like its plan is not named twice.
    pub fn running_fields(&self) -> impl Iterator<Item = String> + '_ {
        let repeated = ["Job", "Bike", "Rider", "Date"];
        self.fields
            .iter()
            .filter(move |field| repeated.contains(&field.label))
            .filter_map(|field| Some((field.label, field.value.as_ref()?)))
            .filter(|(_, value)| **value != self.plan)
            .map(|(label, value)| format!("{label} {value}"))
    }

    /// "Plan, revision 7": what each leaf repeats.
    pub fn running_head(&self) -> String {
        format!("{}, revision {}", self.plan, self.revision)
    }
}

/// The layout's name, and how it stands to the one that was chosen: the wrong
/// sheet must not hang on the stand.
fn marked(situation: &Situation<'_>, name: String) -> String {
    match situation.plan.not_the_chosen(situation.layout.id) {
        Some(chosen) => format!("{name} (chosen is “{}”)", chosen.name),
        None => name,
    }
}
