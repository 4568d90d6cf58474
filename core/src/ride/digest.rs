//! A number that tells two texts apart: not a secret, only a mark of change.

/// FNV-1a, 64 bits (Fowler, Noll, Vo; constants as published in RFC 9923,
/// *from memory*).
pub(crate) fn digest(bytes: &[u8]) -> u64 {
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    for byte in bytes {
        hash = (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
    }
    hash
}

#[cfg(test)]
mod tests {
    use super::digest;

    /// Test vectors of the authors of FNV (*from memory*).
    #[test]
    fn published_vectors() {
        assert_eq!(digest(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(digest(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(digest(b"foobar"), 0x8594_4171_f739_67e8);
    }
}
