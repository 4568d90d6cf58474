//! The same as the plots, in a table for screen readers and paper.

use super::{CadenceBand, View};
use crate::gears::{Direction, Gear, ShiftingError};
use crate::plan::Plan;

/// All gears in a table, from the easiest to the hardest.
#[derive(Debug, Clone, PartialEq)]
pub struct GearTable {
    /// Heads of the columns, in the order of the cells; the first names the row.
    pub heads: Vec<String>,
    /// A row for each gear, by ratio.
    pub rows: Vec<TableRow>,
}

/// A row of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct TableRow {
    /// The gear.
    pub gear: Gear,
    /// Its cells; nothing known is a dash.
    pub cells: Vec<String>,
}

impl GearTable {
    /// The gears of a plan, with speeds at a band of cadences.
    ///
    /// # Errors
    /// When the teeth are not entered.
    pub fn of(plan: &Plan, band: CadenceBand) -> Result<GearTable, ShiftingError> {
        let view = View::of(plan)?;
        let gears = view.gears.by_ratio();
        let ladder = view.ladder().is_some();
        let mut heads: Vec<String> = ["gear", "ratio", "gear inches", "development (m)"]
            .map(String::from)
            .into();
        heads.push(format!("km/h at {:.0} to {}", band.from.0, band.to));
        if ladder {
            heads.extend(["rung up", "rung down"].map(String::from));
        }
        heads.extend(["step (%)", "notes"].map(String::from));
        let mut rows = Vec::new();
        for gear in gears {
            rows.push(TableRow {
                gear,
                cells: view.cells(gear, band),
            });
        }
        Ok(GearTable { heads, rows })
    }
}

fn or_dash(value: Option<String>) -> String {
    value.unwrap_or_else(|| "–".into())
}

impl View<'_> {
    fn cells(&self, gear: Gear, band: CadenceBand) -> Vec<String> {
        let gears = &self.gears;
        let speed = |rpm| gears.speed(gear, rpm).map(|kmh| format!("{:.1}", kmh.0));
        let mut cells = vec![
            gears.words(gear),
            gears.ratio(gear).to_string(),
            or_dash(gears.gear_inches(gear).map(|v| format!("{:.1}", v.0))),
            or_dash(gears.development(gear).map(|v| format!("{:.2}", v.0))),
            or_dash(
                speed(band.from)
                    .zip(speed(band.to))
                    .map(|(from, to)| format!("{from} to {to}")),
            ),
        ];
        if let Some(ladder) = self.ladder() {
            for way in [Direction::Up, Direction::Down] {
                let at = ladder.path(way).iter().position(|rung| *rung == gear);
                cells.push(or_dash(at.map(|at| (at + 1).to_string())));
            }
        }
        let before = self.before(gear);
        cells.push(or_dash(
            before.map(|before| format!("{:.0}", gears.step(before, gear).0)),
        ));
        cells.push(self.notes(gear).join(", "));
        cells
    }

    /// The gear before on the way up: of the ladder where it is a rung, else on
    /// the same ring.
    pub(super) fn before(&self, gear: Gear) -> Option<Gear> {
        if let Some(ladder) = self.ladder()
            && let Some(at) = ladder.up.iter().position(|rung| *rung == gear)
        {
            return at.checked_sub(1).map(|at| ladder.up[at]);
        }
        gear.harder_by(-1)
    }
}
