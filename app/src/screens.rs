//! One module a screen.

mod bike;
mod card;
mod compare;
mod gears;
mod layout;
mod open;
mod plans;
mod practice;
mod review;
mod ride;
mod rider;
mod rules;
mod settings;
mod share;
mod sheet;
mod stand;

pub use bike::BikeScreen;
pub use card::CardScreen;
pub use compare::CompareScreen;
pub use gears::GearsScreen;
pub use layout::LayoutScreen;
pub use open::OpenScreen;
pub use plans::{DemoPlans, PlanList, PlansScreen};
pub use practice::PracticeScreen;
pub use review::ReviewScreen;
pub use ride::{RideDesk, RideScreen};
pub use rider::RiderScreen;
pub use rules::RulesScreen;
pub use settings::SettingsScreen;
pub use share::ShareScreen;
pub use sheet::SheetScreen;
pub use stand::StandScreen;
