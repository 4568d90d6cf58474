//! One module a screen.

mod bike;
mod layout;
mod plans;
mod practice;
mod ride;
mod rider;
mod rules;
mod settings;
mod sheet;

pub use bike::BikeScreen;
pub use layout::LayoutScreen;
pub use plans::PlansScreen;
pub use practice::PracticeScreen;
pub use ride::{RideDesk, RideScreen};
pub use rider::RiderScreen;
pub use rules::RulesScreen;
pub use settings::SettingsScreen;
pub use sheet::SheetScreen;
