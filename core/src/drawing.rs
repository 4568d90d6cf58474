//! The drawing of the cockpit: an engineering drawing seen from the rider's eye.
pub mod bars;
pub mod cockpit;
pub mod curve;
pub mod eye;
pub mod parts;
pub mod pen;
pub mod seat;
pub mod tube;
