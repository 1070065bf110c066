//! The proof that a response was made with a key: HMAC-SHA-256 (RFC 2104, FIPS 198-1).

use sha2::{Digest as _, Sha256};

/// The size of SHA-256's blocks, in bytes.
const BLOCK: usize = 64;

/// The HMAC-SHA-256 of a message under a key.
pub fn hmac_sha256(key: &[u8], message: &[u8]) -> [u8; 32] {
    let mut block = [0; BLOCK];
    if key.len() > BLOCK {
        fill(&mut block, &Sha256::digest(key));
    } else {
        fill(&mut block, key);
    }
    let inner = Sha256::new().chain_update(block.map(|byte| byte ^ 0x36)).chain_update(message).finalize();
    Sha256::new().chain_update(block.map(|byte| byte ^ 0x5c)).chain_update(inner).finalize().into()
}

/// Lays bytes at the beginning of a block.
fn fill(block: &mut [u8; BLOCK], bytes: &[u8]) {
    block.iter_mut().zip(bytes).for_each(|(at, byte)| *at = *byte);
}

/// Whether two are the same; takes the same time wherever they differ.
pub fn same(one: &[u8; 32], other: &[u8; 32]) -> bool {
    let differ = one.iter().zip(other).fold(0, |differ, (one, other)| std::hint::black_box(differ | (one ^ other)));
    std::hint::black_box(differ) == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hex(bytes: &[u8]) -> String {
        bytes.iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// Source: check values SD-15 (RFC 4231, sections 4.2 to 4.8): test cases 1 to 7,
    /// the fifth by its first 128 bits.
    #[test]
    fn the_vectors_of_the_rfc_come_out() {
        let counting: Vec<u8> = (1..=25).collect();
        let long = b"This is a test using a larger than block-size key and a larger than block-size data. \
                     The key needs to be hashed before being used by the HMAC algorithm.";
        let rows: [(&[u8], &[u8], &str); 7] = [
            (&[0x0b; 20], b"Hi There", "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"),
            (
                b"Jefe",
                b"what do ya want for nothing?",
                "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
            ),
            (&[0xaa; 20], &[0xdd; 50], "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe"),
            (&counting, &[0xcd; 50], "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b"),
            (&[0x0c; 20], b"Test With Truncation", "a3b6167473100ee06e0c796c2955552b"),
            (
                &[0xaa; 131],
                b"Test Using Larger Than Block-Size Key - Hash Key First",
                "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54",
            ),
            (&[0xaa; 131], long, "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2"),
        ];
        for (number, (key, message, expected)) in rows.into_iter().enumerate() {
            assert!(hex(&hmac_sha256(key, message)).starts_with(expected), "test case {}", number + 1);
        }
    }

    #[test]
    fn a_difference_anywhere_is_seen() {
        let one = [7; 32];
        assert!(same(&one, &one));
        for at in 0..32 {
            let mut other = one;
            other[at] ^= 1;
            assert!(!same(&one, &other), "{at}");
        }
    }
}
