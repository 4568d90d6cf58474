//! The day, as the browser tells it: the core has no clock.

use leverwright_core::text::Date;

/// Today by the clock and calendar of this device.
pub fn today() -> Option<Date> {
    let now = js_sys::Date::new_0();
    Date::new(
        u16::try_from(now.get_full_year()).ok()?,
        u8::try_from(now.get_month() + 1).ok()?,
        u8::try_from(now.get_date()).ok()?,
    )
}
