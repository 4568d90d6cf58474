//! Other screens, other preferences, no network.

use super::Browser;
use serde_json::json;

/// What the page is told about its medium and the user's preferences.
#[derive(Debug, Clone, Copy, Default)]
pub struct Media {
    /// The page is laid out for paper.
    pub print: bool,
    /// The user prefers dark colours.
    pub dark: bool,
    /// The user wants little motion.
    pub reduced_motion: bool,
    /// The user's own few colours replace the page's.
    pub forced_colors: bool,
    /// The user wants more contrast.
    pub more_contrast: bool,
}

impl Browser {
    /// Sets the size of the viewport, in CSS pixels.
    #[track_caller]
    pub fn viewport(&self, width: u32, height: u32) {
        self.metrics(width, height, false);
    }

    /// Becomes a touch screen of this size, in CSS pixels.
    #[track_caller]
    pub fn become_phone(&self, (width, height): (u32, u32)) {
        self.metrics(width, height, true);
        self.cdp(
            "Emulation.setTouchEmulationEnabled",
            json!({ "enabled": true, "maxTouchPoints": 5 }),
        );
    }

    #[track_caller]
    fn metrics(&self, width: u32, height: u32, mobile: bool) {
        let metrics = json!({
            "width": width,
            "height": height,
            "screenWidth": width,
            "screenHeight": height,
            "deviceScaleFactor": 1,
            "mobile": mobile,
        });
        self.cdp("Emulation.setDeviceMetricsOverride", metrics);
    }

    /// Sets medium and preferences; those not named are at their defaults again.
    #[track_caller]
    pub fn media(&self, media: Media) {
        let feature = |name: &str, set: bool, value: &str, default: &str| json!({ "name": name, "value": if set { value } else { default } });
        self.cdp(
            "Emulation.setEmulatedMedia",
            json!({
                "media": if media.print { "print" } else { "" },
                "features": [
                    feature("prefers-color-scheme", media.dark, "dark", "light"),
                    feature("prefers-reduced-motion", media.reduced_motion, "reduce", "no-preference"),
                    feature("forced-colors", media.forced_colors, "active", "none"),
                    feature("prefers-contrast", media.more_contrast, "more", "no-preference"),
                ],
            }),
        );
    }

    /// Sets the browser's own text size, in percent of the usual 16 px, as a user would in its
    /// settings. Holds for pages loaded from then on.
    #[track_caller]
    pub fn text_size(&self, percent: u32) {
        let sizes = json!({ "standard": 16 * percent / 100, "fixed": 13 * percent / 100 });
        self.cdp("Page.setFontSizes", json!({ "fontSizes": sizes }));
    }

    /// Cuts the page off from the network, or connects it again.
    #[track_caller]
    pub fn offline(&self, offline: bool) {
        let conditions = json!({
            "offline": offline, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1,
        });
        self.cdp("Network.emulateNetworkConditions", conditions);
    }
}
