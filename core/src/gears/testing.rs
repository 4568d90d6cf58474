//! What the tests of gears share.

use super::{Gears, Rolling, Sprockets, Tyre};
use crate::units::Mm;

/// Gears by their teeth, with a 28-622 tyre and cranks of 170 mm.
#[track_caller]
pub(crate) fn gears(rings: &str, cogs: &str) -> Gears {
    let rings = Sprockets::read_rings(rings).and_then(|teeth| Sprockets::rings(&teeth));
    let cogs = Sprockets::read_cogs(cogs).and_then(|teeth| Sprockets::cogs(&teeth));
    Gears {
        rings: rings.expect("rings").teeth().expect("counted").to_vec(),
        cogs: cogs.expect("cogs").teeth().expect("counted").to_vec(),
        wheel: Tyre::parse("28-622").ok().map(Rolling::Tyre),
        crank: Some(Mm(170.0)),
    }
}

/// Twelve cogs as on many road bikes.
pub(crate) const ROAD_12: &str = "11 12 13 14 15 17 19 21 24 27 30 34";
