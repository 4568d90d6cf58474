//! Handing a plan on without a server: as a file or as a link whose whole
//! content sits after the `#`, and as a QR code of such a link on the sheet.
//!
//! The content is the plan as a document, compressed: zlib (RFC 1950) in
//! base64url (RFC 4648, section 5, without padding). Any tool that knows these
//! opens it.
//!
//! ```
//! use leverwright_core::catalogue::{TemplateId, template};
//! use leverwright_core::share::{self, Along};
//!
//! let plan = template(TemplateId::Gravel).plan("Over the pass");
//! let sent = share::content(&plan, Along::WithoutRider);
//! let link = share::link("https://example.org/", &sent)?;
//! let opened = share::open(share::fragment_of(&link).expect("it is a link to a plan"))?;
//! assert_eq!(opened.plan.layouts, plan.layouts);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod content;
mod error;
mod packed;
mod qr;
#[cfg(test)]
mod tests;

pub use content::{Along, IMPLIED, LASTING, PracticeLeft, content, practice_left, stays};
pub use error::ShareError;
pub use qr::{LAYOUT_IS_TOO_LARGE, QrMatrix, qr_of};

use crate::document::{self, Opened};
use crate::plan::Plan;

/// The longest link that is made, in characters: mail and chat programs cut
/// longer ones (our judgement).
pub const LONGEST_LINK: usize = 8192;

/// The longest link content that is opened, in characters.
pub const LONGEST_OPENED: usize = 65_536;

/// The address after the `#` that leads to shared content.
pub const OPENS: &str = "/open/";

/// The link to a plan: the app's own address without its `#`, and what
/// [`content()`] gave. Of older revisions it tells less than a file does.
///
/// # Errors
/// When the link would be longer than [`LONGEST_LINK`].
pub fn link(address: &str, content: &Plan) -> Result<String, ShareError> {
    let light = content::light(content);
    let packed = packed::pack(document::compact(&light).as_bytes());
    let link = format!("{address}#{OPENS}{packed}");
    if link.len() > LONGEST_LINK {
        return Err(ShareError::LinkTooLong {
            length: link.len(),
            most: LONGEST_LINK,
        });
    }
    Ok(link)
}

/// What stands after the address in a link to a plan, if the text is one.
pub fn fragment_of(link: &str) -> Option<&str> {
    let (_, after) = link.split_once('#')?;
    after.strip_prefix(OPENS)
}

/// Opens what stands after [`OPENS`] in an address.
///
/// # Errors
/// When it is cut off, too long, damaged or no plan. Never panics, and takes
/// no more memory than the largest plan needs, whatever it is given.
pub fn open(packed: &str) -> Result<Opened, ShareError> {
    Ok(document::read(packed::unpack(packed)?)?)
}

/// Whether two plans are copies of one: they began alike, or one was made from
/// the other.
pub fn are_copies(a: &Plan, b: &Plan) -> bool {
    let shares_a_revision = || {
        let revisions = a.record.revisions.iter();
        let of_b = |id| b.record.revisions.iter().any(|other| other.id == id);
        revisions.into_iter().any(|revision| of_b(revision.id))
    };
    let same_controls = || {
        let key = |plan: &Plan| -> Vec<_> {
            let controls = plan.bike.controls.iter();
            controls.map(|c| (c.id, c.kind, c.side, c.zone)).collect()
        };
        a.bike.bar.kind == b.bike.bar.kind && key(a) == key(b)
    };
    shares_a_revision() || a.name == b.name && same_controls()
}
