//! Short digests that people read to each other.

use std::fmt;

/// A short digest, written as `K7PF-3QXM`: the same for the same content on any
/// device and in any version.
///
/// It tells plans and records apart; it is no seal. Made with FNV-1a (Fowler,
/// Noll, Vo: 64 bits, RFC 9923, *from memory*), of which forty bits are kept,
/// and written in the digits of Crockford's base 32, which has no letters that
/// look like figures (*common practice*).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Code(u64);

/// Crockford's digits: no I, L, O, U.
const DIGITS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// Figures of a code, without the hyphen.
const LENGTH: u32 = 8;

impl Code {
    /// The digest of a text.
    pub fn of(text: &str) -> Code {
        let hash = fnv1a(text.as_bytes());
        // Folded rather than cut, so that every bit counts.
        Code((hash ^ (hash >> 40)) & ((1 << (5 * LENGTH)) - 1))
    }

    /// Reads what a code prints. Small letters, blanks for the hyphen and the
    /// look-alikes O, I and L are taken too: people type codes from paper.
    pub fn parse(text: &str) -> Option<Code> {
        let mut code = 0;
        let mut found = 0;
        for letter in text.bytes().filter(|b| !matches!(b, b'-' | b' ')) {
            let letter = match letter.to_ascii_uppercase() {
                b'O' => b'0',
                b'I' | b'L' => b'1',
                other => other,
            };
            let digit = DIGITS.iter().position(|digit| *digit == letter)?;
            found += 1;
            if found > LENGTH {
                return None;
            }
            code = code << 5 | digit as u64;
        }
        (found == LENGTH).then_some(Code(code))
    }
}

fn fnv1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for at in (0..LENGTH).rev() {
            let digit = DIGITS[(self.0 >> (5 * at)) as usize & 31];
            write!(f, "{}", char::from(digit))?;
            if at == LENGTH / 2 {
                f.write_str("-")?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::{Code, fnv1a};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_code_reads_what_it_prints(text in any::<String>()) {
            let code = Code::of(&text);
            prop_assert_eq!(Code::parse(&code.to_string()), Some(code));
            prop_assert_eq!(Code::parse(&code.to_string().to_lowercase()), Some(code));
        }

        #[test]
        fn no_text_panics_as_a_code(text in any::<String>()) {
            let _ = Code::parse(&text);
        }
    }

    /// The test vectors of RFC 9923, appendix C (*from memory*).
    #[test]
    fn the_digest_is_fnv_1a() {
        assert_eq!(fnv1a(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a(b"foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn codes_are_typed_as_people_type() {
        let code = Code::of("some plan");
        let typed = code.to_string().replace('-', " ").replace('0', "o");
        assert_eq!(Code::parse(&typed), Some(code));
        for wrong in ["", "K7PF-3QX", "K7PF-3QXMM", "K7PF-3QX!", "K7PF-3QXU"] {
            assert_eq!(Code::parse(wrong), None, "{wrong}");
        }
    }
}
