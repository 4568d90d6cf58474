//! Bytes packed for a link and back.

use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::{TINFLStatus, decompress_to_vec_zlib_with_limit};

use super::{LONGEST_OPENED, ShareError};
use crate::document::MOST_BYTES;

/// How hard to look for repetitions, of 10: beyond it the links of the demo
/// plans get no shorter.
const LEVEL: u8 = 9;

/// zlib (RFC 1950), then base64url without padding (RFC 4648, section 5).
pub(super) fn pack(bytes: &[u8]) -> String {
    BASE64_URL_SAFE_NO_PAD.encode(compress_to_vec_zlib(bytes, LEVEL))
}

/// What [`pack`] packed.
pub(super) fn unpack(packed: &str) -> Result<Vec<u8>, ShareError> {
    if packed.is_empty() {
        return Err(ShareError::Empty);
    }
    if packed.len() > LONGEST_OPENED {
        return Err(ShareError::TooLong {
            length: packed.chars().count(),
            most: LONGEST_OPENED,
        });
    }
    let is_of_links = |c: char| c.is_ascii_alphanumeric() || c == '-' || c == '_';
    if let Some((at, found)) = packed.chars().enumerate().find(|(_, c)| !is_of_links(*c)) {
        return Err(ShareError::Stray { found, at: at + 1 });
    }
    // One character over is half a byte: the rest of it is missing. Bits over
    // at the end are left to the checksum.
    let whole = packed.len() - usize::from(packed.len() % 4 == 1);
    let bytes = decode(&packed[..whole])?;
    decompress_to_vec_zlib_with_limit(&bytes, MOST_BYTES).map_err(|error| match error.status {
        TINFLStatus::HasMoreOutput => ShareError::Swells { most: MOST_BYTES },
        TINFLStatus::NeedsMoreInput | TINFLStatus::FailedCannotMakeProgress => ShareError::CutOff,
        _ => ShareError::Damaged,
    })
}

fn decode(text: &str) -> Result<Vec<u8>, ShareError> {
    use base64::alphabet::URL_SAFE;
    use base64::engine::{DecodePaddingMode, GeneralPurpose, GeneralPurposeConfig};
    const LENIENT: GeneralPurpose = GeneralPurpose::new(
        &URL_SAFE,
        GeneralPurposeConfig::new()
            .with_decode_padding_mode(DecodePaddingMode::RequireNone)
            .with_decode_allow_trailing_bits(true),
    );
    LENIENT.decode(text).map_err(|_| ShareError::Damaged)
}
