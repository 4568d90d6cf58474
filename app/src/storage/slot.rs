//! One copy of a plan as it lies in the store.

use crc::{CRC_32_ISO_HDLC, Crc};
use serde::{Deserialize, Serialize};

use super::plan_id::PlanId;

/// One copy of a plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slot {
    /// Grows by one with every save of the plan.
    counter: u64,
    /// The tab that wrote it.
    writer: String,
    /// When it was written, in milliseconds since 1970.
    pub saved: u64,
    /// CRC-32 of everything else: a copy that was torn or tampered with by
    /// accident does not match it.
    sum: u32,
    /// The plan as a document.
    pub document: String,
}

/// Which copy is meant: two tabs may give out the same counter at the same
/// moment, so the writer belongs to it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stamp {
    /// The counter of the copy.
    pub counter: u64,
    /// The tab that wrote it.
    pub writer: String,
}

/// Why a copy cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    /// It is not one of ours, or cut off.
    #[error("it is cut off or not one of this program's")]
    Shape,
    /// Its parts do not belong together.
    #[error("its checksum does not match")]
    Sum,
    /// The document in it cannot be read.
    #[error("{0}")]
    Document(String),
}

impl Slot {
    /// A copy with its checksum.
    pub fn new(stamp: Stamp, saved: u64, document: String) -> Slot {
        let mut slot = Slot {
            counter: stamp.counter,
            writer: stamp.writer,
            saved,
            sum: 0,
            document,
        };
        slot.sum = slot.checksum();
        slot
    }

    /// Reads a copy and checks it.
    pub fn read(raw: &str) -> Result<Slot, Damage> {
        let slot: Slot = serde_json::from_str(raw).map_err(|_| Damage::Shape)?;
        if slot.sum == slot.checksum() {
            Ok(slot)
        } else {
            Err(Damage::Sum)
        }
    }

    /// Which copy it is.
    pub fn stamp(&self) -> Stamp {
        Stamp {
            counter: self.counter,
            writer: self.writer.clone(),
        }
    }

    fn checksum(&self) -> u32 {
        let mut digest = SUM.digest();
        digest.update(&self.counter.to_le_bytes());
        digest.update(&self.saved.to_le_bytes());
        digest.update(self.writer.as_bytes());
        digest.update(&[0]);
        digest.update(self.document.as_bytes());
        digest.finalize()
    }
}

/// The usual CRC-32. Every save sums up what lies there as well: its table of 1 KB is worth it.
static SUM: Crc<u32> = Crc::<u32>::new(&CRC_32_ISO_HDLC);

/// Where a copy lies: the plan and a letter.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct SlotKey {
    /// The plan.
    pub plan: PlanId,
    /// Which of its copies.
    pub letter: char,
}

impl SlotKey {
    const PREFIX: &str = "leverwright/plan/";

    /// Reads the store's key, if it is that of a copy.
    pub fn parse(key: &str) -> Option<SlotKey> {
        let (plan, letter) = key.strip_prefix(Self::PREFIX)?.split_once('/')?;
        let mut letters = letter.chars();
        let letter = letters.next().filter(char::is_ascii_lowercase)?;
        letters.next().is_none().then_some(SlotKey {
            plan: PlanId::parse(plan)?,
            letter,
        })
    }

    /// The store's key.
    pub fn key(&self) -> String {
        format!("{}{}/{}", Self::PREFIX, self.plan, self.letter)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check value that catalogues of checksums give for CRC-32/ISO-HDLC.
    #[test]
    fn the_sum_is_the_usual_crc_32() {
        assert_eq!(SUM.checksum(b"123456789"), 0xcbf4_3926);
    }

    fn slot(document: &str) -> Slot {
        let writer = "tab".to_owned();
        let stamp = Stamp { counter: 7, writer };
        Slot::new(stamp, 1_900_000_000_000, document.to_owned())
    }

    fn raw(slot: &Slot) -> String {
        serde_json::to_string(slot).expect("a slot can be written")
    }

    #[test]
    fn a_copy_is_read_back_as_written() {
        let copy = slot("{\"name\":\"Ärger „x“\"}");
        assert_eq!(Slot::read(&raw(&copy)), Ok(copy));
    }

    #[test]
    fn a_copy_torn_anywhere_is_noticed() {
        let whole = raw(&slot("{\"name\":\"Übung\"}"));
        for cut in (0..whole.len()).filter(|cut| whole.is_char_boundary(*cut)) {
            assert!(Slot::read(&whole[..cut]).is_err(), "cut at {cut}");
        }
    }

    #[test]
    fn a_changed_letter_anywhere_in_the_document_is_noticed() {
        let whole = raw(&slot("abc"));
        let changed = whole.replace("abc", "abd");
        assert_eq!(Slot::read(&changed), Err(Damage::Sum));
        let changed = whole.replace("\"counter\":7", "\"counter\":8");
        assert_eq!(Slot::read(&changed), Err(Damage::Sum));
    }

    #[test]
    fn keys_are_read_back_and_others_are_not_ours() {
        let key = SlotKey {
            plan: PlanId::from_bits(0xBEEF),
            letter: 'b',
        };
        assert_eq!(key.key(), "leverwright/plan/000000000000beef/b");
        assert_eq!(SlotKey::parse(&key.key()), Some(key));
        for other in [
            "leverwright/settings",
            "leverwright/plan/",
            "leverwright/plan/x",
            "leverwright/plan/x/",
            "leverwright/plan/x/ab",
            "leverwright/plan/../a",
            "leverwright/plan/X/a",
        ] {
            assert_eq!(SlotKey::parse(other), None, "{other}");
        }
    }
}
