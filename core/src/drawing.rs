//! The drawing of the cockpit: an engineering drawing seen from the rider's eye.
pub mod balloons;
pub mod bars;
pub mod cockpit;
pub mod curve;
pub mod eye;
pub mod hands;
pub mod hit;
pub mod icons;
pub mod parts;
pub mod pen;
pub mod picture;
pub mod seat;
pub mod tube;
