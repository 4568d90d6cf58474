//! The layout as a QR code (ISO/IEC 18004) for the sheet.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

use super::{Along, ShareError, content, link};
use crate::plan::Plan;

/// A QR code as its modules, without the quiet zone around it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QrMatrix {
    /// Modules along one side.
    pub side: usize,
    /// Row by row from the top left; true is dark.
    pub dark: Vec<bool>,
}

/// Blank modules that must stay around a code (ISO/IEC 18004, 9.1 in the
/// edition of 2015: four modules; *from memory*).
const QUIET_ZONE: usize = 4;

/// What is said where the code is left out.
pub const LAYOUT_IS_TOO_LARGE: &str = "The layout is too large for a code that a telephone reads from paper. Send the link or the file.";

impl QrMatrix {
    /// The largest code that is printed: on a square of 60 mm a module is then
    /// 0.4 mm, quiet zone and all (*common practice*: what a telephone reads from
    /// paper in the hand).
    pub const LARGEST: usize = 141;

    /// Whether a module is dark, by column and row; outside the code nothing
    /// is.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        x < self.side && y < self.side && self.dark[y * self.side + x]
    }

    /// Blank modules to leave on each side.
    pub const fn quiet_zone(&self) -> usize {
        QUIET_ZONE
    }
}

/// The code of a link to the layout in hand, where one fits; `None` where the
/// code would be too fine to read from paper.
pub fn qr_of(address: &str, plan: &Plan) -> Option<QrMatrix> {
    let link: Result<String, ShareError> = link(address, &content(plan, Along::Layout));
    encode(link.ok()?.as_bytes())
}

fn encode(text: &[u8]) -> Option<QrMatrix> {
    // The version whose side is the largest that is printed.
    let largest = Version::new(((QrMatrix::LARGEST - 17) / 4) as u8);
    let segments = [QrSegment::make_bytes(text)];
    // More correction where it costs no larger code.
    let code = QrCode::encode_segments_advanced(
        &segments,
        QrCodeEcc::Low,
        Version::MIN,
        largest,
        None,
        true,
    )
    .ok()?;
    let side = code.size();
    let places = (0..side).flat_map(|y| (0..side).map(move |x| (x, y)));
    Some(QrMatrix {
        side: side as usize,
        dark: places.map(|(x, y)| code.get_module(x, y)).collect(),
    })
}
